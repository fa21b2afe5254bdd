using CsCheck;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.Tests.Rankings;

public sealed class RankingTests
{
    [Fact]
    public void Places_are_used_as_order_only()
    {
        var ranking = Ranking.FromPlaces([3, 10, null, 3, 0.5]);
        Assert.Equal("4 > 0=3 > 1", ranking.ToString());
        Assert.Equal([2.5, 4, null, 2.5, 1], ranking.Midranks());
        Assert.Equal([5, 8, 0, 5, 2], ranking.DoubledMidranks());
        Assert.Equal([0, 1, 3, 4], ranking.Served);
        Assert.False(ranking.IsComplete);
    }

    [Fact]
    public void Items_below_share_the_last_midplace()
    {
        var ranking = Ranking.Create(5, [[2], [0]], [4, 1]);
        Assert.Equal([2, 3.5, 1, null, 3.5], ranking.Midranks());
        Assert.Equal("1 > 0 | 2=3", ranking.Restrict([0, 2, 1, 4]).ToString());
    }

    [Theory]
    [InlineData(new[] { 0, 3 }, "Item 3 is not among the 3 items.")]
    [InlineData(new[] { 1, 1 }, "Item 1 stands twice in the ranking.")]
    public void A_wrong_item_is_named(int[] group, string sentence) =>
        Assert.StartsWith(sentence, Assert.Throws<ArgumentException>(() => Ranking.Create(3, [group])).Message, StringComparison.Ordinal);

    [Fact]
    public void A_row_with_a_voice_counts_one_ballot()
    {
        var ranking = Ranking.FromPlaces([1, 2]);
        Assert.Throws<ArgumentException>(() => RankingSet.Create(2, [new RankingRow(ranking, 2, 1)]));
        Assert.Throws<ArgumentException>(() => RankingSet.Create(3, [new RankingRow(ranking)]));
        var set = RankingSet.Create(2, [new RankingRow(ranking, 3), new RankingRow(ranking, 1, 9), new RankingRow(ranking, 1, 9)]);
        Assert.Equal(5, set.Ballots);
        Assert.Equal(4, set.Voices);
    }

    [Fact]
    public void Midplaces_always_add_up_and_restricting_keeps_the_order() =>
        Gen.Int[1, 4].Array[2, 7].Sample(places =>
        {
            var ranking = Ranking.FromPlaces([.. places.Select(place => (double?)place)]);
            var m = places.Length;
            Assert.Equal(m * (m + 1), ranking.DoubledMidranks().Sum());
            var fewer = ranking.Restrict([m - 1, 0]).DoubledMidranks();
            Assert.Equal(Math.Sign(places[m - 1] - places[0]), Math.Sign(fewer[0] - fewer[1]));
            Assert.Equal(ranking, ranking.Restrict([.. Enumerable.Range(0, m)]));
        });
}
