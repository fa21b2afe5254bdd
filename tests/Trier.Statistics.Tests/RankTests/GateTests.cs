using CsCheck;
using Trier.Statistics.Counting;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;
using Trier.Statistics.Tests.Checks;
using Trier.Statistics.Tests.Reference;

namespace Trier.Statistics.Tests.RankTests;

public sealed class GateTests
{
    private static readonly Seed Seed = new(7);

    private static readonly Gen<RankingSet> SmallPanels =
        from items in Gen.Int[3, 4]
        from ballots in Gen.Double[1, items].Select(Math.Round).Array[items].Array[2, items == 3 ? 6 : 4]
        from joined in Gen.Bool
        select RankingSet.Create(items, ballots.Select((places, i) =>
            new RankingRow(Ranking.FromPlaces([.. places.Select(place => (double?)place)]), 1, joined && i < 2 ? 1 : null)));

    [Fact]
    public void Exact_p_is_the_enumerated_one_with_ties_and_joined_voices() =>
        SmallPanels.Sample(
            set =>
            {
                var p = Gate.Test(set, Seed).Value.P;
                Assert.Equal(TestMethod.Exact, p.Method);
                Assert.Equal(EnumeratedShuffles.UpperTail(set), p.Value, 1e-12);
            },
            iter: 150, threads: 1);

    [Fact]
    public void Exact_and_drawn_agree_on_a_larger_joined_panel()
    {
        var set = Demo.Set(Demo.Wheels, joined: true);
        var exact = Gate.Test(set, Seed).Value.P;
        var drawn = Gate.Test(set, Seed, Effort.DrawsOnly with { Draws = 999_999 }).Value.P;
        Assert.Equal(TestMethod.Exact, exact.Method);
        Assert.InRange(drawn.Value, exact.Value - (4 * drawn.Error), exact.Value + (4 * drawn.Error));
    }

    [Fact]
    public void The_general_shuffles_agree_with_the_packed_ones()
    {
        var set = Demo.Set(Demo.Wheels, joined: true);
        var table = VoiceTable.Of(ScoreSet.FromRankings(set, CountingRule.AveragePlace));
        var general = new GeneralShuffles(table, table.Covariance.PseudoInverse(), null, true);
        var hits = DrawParts.Run(200_000, Seed, general.Draw);
        var p = PValue.Drawn(hits.Statistic, 200_000);
        var exact = Gate.Test(set, Seed).Value.P.Value;
        Assert.InRange(exact, p.Value - (4 * p.Error), p.Value + (4 * p.Error));
    }

    [Fact]
    public void A_ballot_that_ties_everything_adds_no_evidence()
    {
        var set = Demo.Set(Demo.Wheels);
        var tied = RankingSet.Create(set.Items, set.Rows.Add(new RankingRow(Ranking.FromPlaces([1, 1, 1, 1, 1]), 2)));
        Assert.Equal(Gate.Test(set, Seed).Value.P.Value, Gate.Test(tied, Seed).Value.P.Value, 1e-12);
    }

    [Fact]
    public void Relabelling_items_changes_nothing()
    {
        var set = Demo.Set(Demo.Wheels, completeOnly: false);
        var turned = set.Restrict([4, 2, 0, 1, 3]);
        Assert.Equal(Gate.Test(set.Complete, Seed).Value.P.Value, Gate.Test(turned.Complete, Seed).Value.P.Value, 1e-12);
        Assert.Equal(Gate.Test(set, Seed).Value.Statistic, Gate.Test(turned, Seed).Value.Statistic, 1e-9);
    }

    [Fact]
    public void The_same_seed_gives_the_same_bits()
    {
        var set = Demo.Set(Demo.Wheels, completeOnly: false);
        Assert.Equal(Gate.Test(set, Seed).Value, Gate.Test(set, Seed).Value);
    }

    [Fact]
    public void All_tied_is_no_difference_and_one_item_is_refused()
    {
        var tied = RankingSet.Create([Ranking.FromPlaces([1, 1, 1])]);
        Assert.Equal(1, Gate.Test(tied, Seed).Value.P.Value);
        Assert.Equal(RefusalKind.TooFewItems, Gate.Test(RankingSet.Create([Ranking.FromPlaces([1])]), Seed).Refusal!.Kind);
        Assert.Equal(RefusalKind.NoInformation, Friedman.Test(tied, Seed).Refusal!.Kind);
        Assert.Equal(RefusalKind.NotComplete, Friedman.Test(Demo.Set(Demo.Wheels, completeOnly: false), Seed).Refusal!.Kind);
    }
}
