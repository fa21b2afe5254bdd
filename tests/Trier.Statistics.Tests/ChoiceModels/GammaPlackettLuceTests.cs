using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Distributions;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.ChoiceModels;

public sealed class GammaPlackettLuceTests
{
    private static readonly Seed Seed = new(31);

    /// <summary>With two items the share is exactly beta(a + wins, a + losses).</summary>
    [Theory]
    [InlineData(1.0, 3, 1)]
    [InlineData(1.0, 0, 4)]
    [InlineData(2.5, 7, 5)]
    public void Two_items_have_a_beta_share(double shape, long wins, long losses)
    {
        var set = RankingSet.Create(2, new RankingRow[] { new(Ranking.FromOrder(2, [0, 1]), Math.Max(1, wins)), new(Ranking.FromOrder(2, [1, 0]), losses) }.Skip(wins == 0 ? 1 : 0));
        var posterior = GammaPlackettLuce.Sample(set, Seed, shape).Value;
        Assert.True(posterior.Mixed, $"{posterior.EffectiveSize} {posterior.RHat}");
        var (a, b) = (shape + wins, shape + losses);
        var error = 4 / Math.Sqrt(posterior.EffectiveSize);
        Assert.Equal(a / (a + b), posterior.FavouriteShare[0], error * Math.Sqrt(a * b / ((a + b) * (a + b) * (a + b + 1))));
        var chance = MathNet.Numerics.SpecialFunctions.BetaRegularized(b, a, 0.5);
        Assert.Equal(chance, posterior.ChanceFavourite[0], error * Math.Sqrt(chance * (1 - chance)));
    }

    /// <summary>In the limit of many ballots the prior is drowned: 5,738 orders of five candidates.</summary>
    [Fact]
    public void With_many_ballots_Gibbs_and_maximum_likelihood_agree()
    {
        var rows = CheckData.Rows("real_full_rankings_apa1980.csv").Select(row => new RankingRow(
            Ranking.FromOrder(5, [.. row.Take(5).Select(name => name[0] - 'A')]), CheckData.Whole(row[5])));
        var set = RankingSet.Create(5, rows);
        var fit = PlackettLuce.Fit(set).Value;
        var mean = fit.LogWorths.Average();
        var posterior = GammaPlackettLuce.Sample(set, Seed).Value;
        Assert.True(posterior.Mixed);
        for (var i = 0; i < 5; i++)
        {
            // The error of a centred log-worth: the variance of theta_i less the mean of all.
            double own = 0, all = 0;
            for (var j = 0; j < 5; j++)
            {
                own += fit.Covariance[i, j] / 5;
                for (var l = 0; l < 5; l++) all += fit.Covariance[j, l] / 25;
            }

            var error = Math.Sqrt(fit.Covariance[i, i] - (2 * own) + all);
            Assert.Equal(fit.LogWorths[i] - mean, posterior.LogWorths[i], (4 * error / Math.Sqrt(posterior.EffectiveSize)) + 5e-4);
            var half = (posterior.LogWorthIntervals[i].High - posterior.LogWorthIntervals[i].Low) / 2;
            Assert.Equal(1, half / (1.645 * error), 0.06);
        }
    }

    /// <summary>A tie counts as the sum over its orders: against importance sampling from the prior with the ballot-by-ballot likelihood.</summary>
    [Fact]
    public void Ties_and_partial_orders_are_weighed_as_the_likelihood_says()
    {
        var set = RankingSet.Create([
            Ranking.FromPlaces([1, 1, 2, 3]), Ranking.FromPlaces([2, 1, 1, 3]), Ranking.FromPlaces([1, null, 2, 3]), Ranking.FromPlaces([1, 1, 1, 2]),
            Ranking.FromPlaces([2, 1, null, 1]), Ranking.FromPlaces([1, 1, 1, 1])]);
        var likelihood = OrderLikelihood.Of(set).Value;
        var generator = new Seed(8).Generator();
        double total = 0;
        var best = new double[4];
        for (var draw = 0; draw < 200_000; draw++)
        {
            double[] logs = [.. Enumerable.Range(0, 4).Select(_ => Math.Log(generator.NextGamma(1)))];
            var weight = Math.Exp(likelihood.Log(logs));
            total += weight;
            best[Array.IndexOf(logs, logs.Max())] += weight;
        }

        var posterior = GammaPlackettLuce.Sample(set, Seed).Value;
        Assert.True(posterior.Mixed);
        for (var i = 0; i < 4; i++) Assert.Equal(best[i] / total, posterior.ChanceFavourite[i], 0.012);
    }

    [Fact]
    public void More_than_sixteen_items_keep_their_orders_and_fare_alike()
    {
        // Twelve items that nobody was served stay at their prior and change nothing for the five.
        var orders = Demo.Set(Demo.Wheels).Rows.Where(row => !row.Ranking.HasTies).Select(row => row.Ranking.Groups.Select(group => group[0]).ToArray()).ToArray();
        var few = GammaPlackettLuce.Sample(RankingSet.Create(orders.Select(order => Ranking.FromOrder(5, order))), Seed).Value;
        var many = GammaPlackettLuce.Sample(RankingSet.Create(orders.Select(order => Ranking.FromOrder(17, order))), Seed).Value;
        for (var i = 1; i < 5; i++) Assert.Equal(few.LogWorths[i] - few.LogWorths[0], many.LogWorths[i] - many.LogWorths[0], 0.06);
    }

    [Fact]
    public void The_same_seed_gives_the_same_bits_and_one_item_is_refused()
    {
        var set = Demo.Set(Demo.Wheels);
        var effort = new SamplingEffort(3, 10, 100);
        Assert.Equal(GammaPlackettLuce.Sample(set, Seed, effort: effort).Value.ChanceFavourite, GammaPlackettLuce.Sample(set, Seed, effort: effort).Value.ChanceFavourite);
        Assert.Equal(RefusalKind.TooFewItems, GammaPlackettLuce.Sample(RankingSet.Create([Ranking.FromPlaces([1])]), Seed).Refusal!.Kind);
    }

    /// <summary>Mean and variance of a gamma number are its shape.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(1.0)]
    [InlineData(7.5)]
    public void Gamma_numbers_have_their_mean_variance_and_tail(double shape)
    {
        var generator = new Seed(4).Generator();
        const int n = 100_000;
        double sum = 0, squares = 0, beyond = 0;
        for (var i = 0; i < n; i++)
        {
            var x = generator.NextGamma(shape);
            sum += x;
            squares += (x - shape) * (x - shape);
            if (x > 2 * shape) beyond++;
        }

        Assert.Equal(shape, sum / n, 4 * Math.Sqrt(shape / n));
        Assert.Equal(shape, squares / n, 4 * Math.Sqrt(((2 * shape * shape) + (6 * shape)) / n));
        var tail = Tails.ChiSquare(4 * shape, 2 * shape);
        Assert.Equal(tail, beyond / n, 4 * Math.Sqrt(tail * (1 - tail) / n));
    }
}
