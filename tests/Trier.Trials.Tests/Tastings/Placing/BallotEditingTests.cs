using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Placing;

namespace Trier.Trials.Tests.Tastings.Placing;

public class BallotEditingTests
{
    private static readonly BlindCode One = BlindCode.Of(417);

    private static readonly BlindCode[] Plate = [One, BlindCode.Of(593)];

    [Fact]
    public void A_liking_is_locked_until_a_slip_is_corrected_once_and_the_first_answer_stays()
    {
        var given = BallotEditing.Answer(Ballot.Empty, Plate, One, 3, null, slip: false).Value;
        Assert.Equal(3, BallotEditing.Answer(given, Plate, One, 8, null, slip: false).Value.Answers[One].Liking);
        var corrected = BallotEditing.Answer(given, Plate, One, 8, null, slip: true).Value;
        Assert.Equal((8, 3), (corrected.Answers[One].Liking, corrected.Answers[One].FirstLiking));
        var again = BallotEditing.Answer(corrected, Plate, One, 1, null, slip: true).Value;
        Assert.Equal((8, 3), (again.Answers[One].Liking, again.Answers[One].FirstLiking));
    }

    [Fact]
    public void A_slip_corrected_to_the_same_answer_is_no_correction() =>
        Assert.Null(BallotEditing.Answer(BallotEditing.Answer(Ballot.Empty, Plate, One, 3, null, slip: false).Value, Plate, One, 3, null, slip: true).Value.Answers[One].FirstLiking);

    [Fact]
    public void A_liking_may_be_left_out_and_given_later()
    {
        var skipped = BallotEditing.Answer(Ballot.Empty, Plate, One, null, "  of   hay ", slip: false).Value;
        Assert.Equal((null, "of hay"), (skipped.Answers[One].Liking, skipped.Answers[One].Remark));
        Assert.Equal(6, BallotEditing.Answer(skipped, Plate, One, 6, "hay", slip: false).Value.Answers[One].Liking);
    }

    [Fact]
    public void An_answer_changes_no_place_and_places_change_no_answer()
    {
        var answered = BallotEditing.Answer(Ballot.Empty, Plate, One, 3, null, slip: false).Value;
        var placed = BallotEditing.Place(answered, Plate, Placement.Read(Plate, Plate, ["593", "417"], []).Value).Value;
        Assert.Equal(3, placed.Answers[One].Liking);
        Assert.Equal(placed.Places, BallotEditing.Answer(placed, Plate, One, null, "salt", slip: false).Value.Places);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    public void A_liking_outside_the_scale_is_a_fault(int liking) => Assert.Equal("liking", Assert.Single(BallotEditing.Answer(Ballot.Empty, Plate, One, liking, null, slip: false).Problems).Field);

    [Fact]
    public void A_long_remark_is_a_fault() => Assert.Equal("remark", Assert.Single(BallotEditing.Answer(Ballot.Empty, Plate, One, 5, new string('a', 201), slip: false).Problems).Field);
}
