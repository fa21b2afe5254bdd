using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.ChoiceModels;

/// <summary>Section 14 of the verdict's method page: chances from separate code, given to +- .003 (.73 and .82 to two figures).</summary>
public sealed class BayesianPlackettLuceTests
{
    private static readonly Seed Seed = new(99);
    private static readonly SamplingEffort Long = new(4, 1_000, 25_000);

    [Fact]
    public void Chances_to_be_the_favourite_on_the_demo()
    {
        var posterior = BayesianPlackettLuce.Sample(Demo.Set(Demo.Wheels), Seed, effort: Long).Value;
        double[] expected = [.071, .792, .104, .008, .025];
        Assert.True(posterior.Mixed, $"effective {posterior.EffectiveSize}, R-hat {posterior.RHat}");
        Assert.Equal(1, posterior.ChanceFavourite.Sum(), 1e-9);
        Assert.Equal(1, posterior.FavouriteShare.Sum(), 1e-9);

        // The page's error and ours at some 20,000 effective draws: .003 and .003.
        for (var i = 0; i < 5; i++) Assert.Equal(expected[i], posterior.ChanceFavourite[i], .007);
    }

    [Theory]
    [InlineData(0.4, .73)]
    [InlineData(1.6, .82)]
    public void The_scale_of_the_prior_moves_the_chance(double scale, double chance) =>
        Assert.Equal(chance, BayesianPlackettLuce.Sample(Demo.Set(Demo.Wheels), Seed, scale).Value.ChanceFavourite[1], .014);

    [Fact]
    public void Within_the_declared_camps_other_wheels_lead()
    {
        var complete = Demo.Ballots.Where(b => b.Samples.Served.Length > 0 && b.Samples.Restrict(Demo.Wheels).IsComplete).ToArray();
        WorthPosterior Camp(int camp) => BayesianPlackettLuce.Sample(
            RankingSet.Create(complete.Where(b => Demo.Camp(b.Taster) == camp).Select(b => b.Samples.Restrict(Demo.Wheels))), Seed, effort: Long with { Kept = 60_000 }).Value;
        var milder = Camp(0);
        Assert.Equal(.76, milder.ChanceFavourite[0], .015);
        Assert.Equal(.24, milder.ChanceFavourite[1], .015);
        var stronger = Camp(1);
        Assert.Equal(.82, stronger.ChanceFavourite[4], .015);
        Assert.Equal(.12, stronger.ChanceFavourite[2], .015);
    }

    [Fact]
    public void A_tie_counts_as_the_sum_over_its_orders()
    {
        double[] logWorths = [0.3, -0.7, 1.1, 0.2];
        double Chance(Ranking ranking) => Math.Exp(OrderLikelihood.Of(RankingSet.Create([ranking])).Value.Log(logWorths));
        var tied = Ranking.FromPlaces([1, 2, 2, 3]);
        Assert.Equal(Chance(Ranking.FromPlaces([1, 2, 3, 4])) + Chance(Ranking.FromPlaces([1, 3, 2, 4])), Chance(tied), 1e-12);
        Assert.Equal(1, Chance(Ranking.FromPlaces([1, 1, 1, 1])), 1e-12);

        // Worths 4 3 2 1: chances of one order from a separate table; all 24 sum to 1.
        double[] four = [Math.Log(4), Math.Log(3), Math.Log(2), 0];
        double Order(params int[] best) => Math.Exp(OrderLikelihood.Of(RankingSet.Create([Ranking.FromOrder(4, best)])).Value.Log(four));
        Assert.Equal(0.133333, Order(0, 1, 2, 3), 1e-6);
        Assert.Equal(0.066667, Order(0, 1, 3, 2), 1e-6);
        Assert.Equal(0.1, Order(0, 2, 1, 3), 1e-6);
        Assert.Equal(0.114286, Order(1, 0, 2, 3), 1e-6);
        Assert.Equal(0.009524, Order(3, 2, 1, 0), 1e-6);
        var all = Arrangements.All([0, 1, 2, 3]);
        Assert.Equal(1, Enumerable.Range(0, 24).Sum(i => Order(all[(4 * i)..((4 * i) + 4)])), 1e-12);
    }

    [Fact]
    public void Joined_voices_weigh_as_one()
    {
        var ranking = Ranking.FromPlaces([1, 2, 3]);
        var joined = OrderLikelihood.Of(RankingSet.Create(3, [new RankingRow(ranking, 1, 4), new RankingRow(ranking, 1, 4)])).Value;
        var one = OrderLikelihood.Of(RankingSet.Create([ranking])).Value;
        Assert.Equal(one.Log([0.1, 0.5, -1]), joined.Log([0.1, 0.5, -1]), 1e-12);
    }

    [Fact]
    public void With_no_evidence_every_item_has_its_blind_chance()
    {
        var posterior = BayesianPlackettLuce.Sample(RankingSet.Create([Ranking.FromPlaces([1, 1, 1, 1])]), Seed).Value;
        Assert.All(posterior.ChanceFavourite, chance => Assert.Equal(.25, chance, .02));
    }

    [Fact]
    public void The_same_seed_gives_the_same_bits() =>
        Assert.Equal(
            BayesianPlackettLuce.Sample(Demo.Set(Demo.Wheels), Seed, effort: new(2, 10, 200)).Value.ChanceFavourite,
            BayesianPlackettLuce.Sample(Demo.Set(Demo.Wheels), Seed, effort: new(2, 10, 200)).Value.ChanceFavourite);
}
