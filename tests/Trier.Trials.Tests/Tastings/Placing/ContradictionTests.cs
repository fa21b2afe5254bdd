using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Placing;

namespace Trier.Trials.Tests.Tastings.Placing;

public class ContradictionTests
{
    private static readonly BlindCode[] Plate = [BlindCode.Of(417), BlindCode.Of(593), BlindCode.Of(751), BlindCode.Of(862)];

    [Fact]
    public void Liking_turned_round_against_places_correlates_at_minus_one_and_names_the_best_liked()
    {
        var found = Contradiction.Of(Given([1, 2, 3, 4], [[0], [1], [2], [3]]), Plate)!;
        Assert.Equal((BlindCode.Of(862), 4, true), (found.LikedBest, found.Place, found.Last));
        Assert.Equal(-1, found.Correlation, 12);
    }

    // By hand: likings 9 8 2 1 rank 4 3 2 1; places 2 4 1 3. Without ties rho = 1 - 6 * sum(d^2) / (4 * 15), d between rank of liking (best 1) 1 2 3 4 and place:
    // d^2 = 1 + 4 + 4 + 1 = 10, rho = 0.
    [Fact]
    public void A_ballot_without_a_clear_contradiction_is_not_asked_about() => Assert.Null(Contradiction.Of(Given([9, 8, 2, 1], [[2], [0], [3], [1]]), Plate));

    // By hand: best-first ranks of liking 1 2 3 4 (417 to 862), places 3 4 2 1: d^2 = 4 + 4 + 1 + 9 = 18, rho = 1 - 108/60 = -0.8.
    [Fact]
    public void A_best_liked_sample_that_is_not_last_is_told_with_its_place()
    {
        var found = Contradiction.Of(Given([9, 8, 7, 6], [[3], [2], [0], [1]]), Plate)!;
        Assert.Equal((BlindCode.Of(417), 3, false), (found.LikedBest, found.Place, found.Last));
        Assert.Equal(-0.8, found.Correlation, 12);
    }

    // By hand: midranks of liking 3.5 3.5 1.5 1.5, of places (turned) with the pairs tied the other way round: -3.5 -3.5 -1.5 -1.5, so -1.
    [Fact]
    public void Ties_share_the_middle_of_their_places()
    {
        var found = Contradiction.Of(Given([8, 8, 2, 2], [[2, 3], [0, 1]]), Plate)!;
        Assert.Equal((3, true), (found.Place, found.Last));
        Assert.Equal(-1, found.Correlation, 12);
    }

    [Fact]
    public void What_is_incomplete_or_all_the_same_is_not_asked_about()
    {
        Assert.Null(Contradiction.Of(Given([1, 2, 3], [[0], [1], [2], [3]]), Plate));
        Assert.Null(Contradiction.Of(Given([1, 2, 3, 4], [[0], [1], [2]]), Plate));
        Assert.Null(Contradiction.Of(Given([5, 5, 5, 5], [[0], [1], [2], [3]]), Plate));
        Assert.Null(Contradiction.Of(Given([1, 2, 3, 4], [[0, 1, 2, 3]]), Plate));
    }

    private static Ballot Given(int[] likings, int[][] places) => Ballot.Of(
        Plate,
        [.. places.Select(group => (IReadOnlyCollection<BlindCode>)[.. group.Select(index => Plate[index])])],
        likings.Select((liking, index) => KeyValuePair.Create(Plate[index], new SampleAnswer { Liking = liking }))).Value;
}
