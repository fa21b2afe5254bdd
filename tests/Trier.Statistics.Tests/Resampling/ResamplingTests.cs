using System.Collections.Immutable;
using Trier.Statistics.Counting;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.Resampling;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.Resampling;

public sealed class ResamplingTests
{
    private static readonly Seed Seed = new(53);

    /// <summary>The bootstrap of a mean has the known error sqrt(sum (x - mean)^2)/n, and its interval that of a normal number.</summary>
    [Fact]
    public void The_bootstrap_of_a_mean_has_its_known_error()
    {
        double[] values = [.. Enumerable.Range(0, 40).Select(i => (double)(i * i % 23))];
        var found = Bootstrap.Of(ResamplingUnits.ByRow(40), rows => rows.Average(row => values[row]), Seed, 20_000).Value;
        var mean = values.Average();
        var error = Math.Sqrt(values.Sum(value => (value - mean) * (value - mean))) / 40;
        Assert.Equal(mean, found.Estimate, 1e-12);
        Assert.Equal(1, found.StandardError / error, 4 / Math.Sqrt(2 * 20_000));
        Assert.Equal(mean - (1.645 * error), found.Percentile.Low, 0.08);
        Assert.Equal(mean + (1.645 * error), found.Percentile.High, 0.08);
        Assert.Equal((20_000, 0), (found.Draws, found.Without));
    }

    /// <summary>Rows that say the same twice are one unit: by row the error looks smaller by the root of two.</summary>
    [Fact]
    public void Groups_that_tasted_together_are_drawn_as_one()
    {
        double[] values = [.. Enumerable.Range(0, 60).Select(row => (double)(row / 2 * 7 % 11))];
        double? Mean(ImmutableArray<int> rows) => rows.Average(row => values[row]);
        var byRow = Bootstrap.Of(ResamplingUnits.ByRow(60), Mean, Seed, 4_000).Value;
        var byGroup = Bootstrap.Of(ResamplingUnits.ByGroup([.. Enumerable.Range(0, 60).Select(row => (int?)(row / 2))]), Mean, Seed, 4_000).Value;
        Assert.Equal(Math.Sqrt(2), byGroup.StandardError / byRow.StandardError, 0.1);
        Assert.Equal(60, ResamplingUnits.ByGroup([.. Enumerable.Repeat((int?)null, 60)]).Units.Length);
    }

    [Fact]
    public void One_thread_and_many_agree_bit_for_bit()
    {
        var set = Demo.Set(Demo.Wheels);
        double? Gap(ImmutableArray<int> rows) => Standing.Of(Redrawn(set, rows)).Averages[1];
        var units = ResamplingUnits.ByRow(set.Rows.Length);
        Assert.Equal(Bootstrap.Of(units, Gap, Seed, 199, threads: 1).Value, Bootstrap.Of(units, Gap, Seed, 199, threads: 4).Value);
        double First(ImmutableArray<int> labels) => Enumerable.Range(0, labels.Length).Sum(row => labels[row] * set.Rows[row].Ranking.DoubledMidranks()[0]);
        ImmutableArray<int> labels = [.. Enumerable.Range(0, set.Rows.Length).Select(row => row % 2)];
        Assert.Equal(PermutationTest.OfLabels(units, labels, First, Seed, 999, 1).Value, PermutationTest.OfLabels(units, labels, First, Seed, 999, 4).Value);
        ImmutableArray<int> Leaders(ImmutableArray<int> rows) => Standing.Of(Redrawn(set, rows)).Leaders;
        Assert.Equal(Bootstrap.Steadiness(units, 5, Leaders, Seed, 199, 1).Value, Bootstrap.Steadiness(units, 5, Leaders, Seed, 199, 3).Value);
    }

    /// <summary>The demo's own figures, 20,000 redraws by separate code: the second wheel leads in 90 % by average place; by firsts 40, 19, 1, 0 and 40 %.</summary>
    [Fact]
    public void The_demos_lead_is_as_steady_as_worked_out_apart()
    {
        var set = Demo.Set(Demo.Wheels);
        ImmutableArray<double> By(CountingRule rule) => Bootstrap.Steadiness(
            ResamplingUnits.ByRow(set.Rows.Length), 5, rows => Standing.Of(Redrawn(set, rows, rule)).Leaders, Seed, 4_000).Value;
        double[] places = [.04, .90, .01, 0, .05];
        double[] firsts = [.40, .19, .01, 0, .40];
        var (averages, first) = (By(CountingRule.AveragePlace), By(CountingRule.Firsts));
        for (var i = 0; i < 5; i++)
        {
            Assert.Equal(places[i], averages[i], .005 + (4 * Math.Sqrt(.25 / 4_000)));
            Assert.Equal(firsts[i], first[i], .005 + (4 * Math.Sqrt(.25 / 4_000)));
        }

        Assert.Equal(1, first.Sum(), 1e-9);
    }

    /// <summary>Two groups of three and four, every deal by hand: the exact p of a difference in sums.</summary>
    [Fact]
    public void Dealt_labels_agree_with_every_deal()
    {
        double[] values = [3, 9, 4, 1, 7, 2, 8];
        ImmutableArray<int> labels = [1, 1, 0, 0, 1, 0, 0];
        double Sum(ImmutableArray<int> dealt) => Enumerable.Range(0, 7).Sum(row => dealt[row] * values[row]);
        var p = PermutationTest.OfLabels(ResamplingUnits.ByRow(7), labels, Sum, Seed).Value;
        var deals = Enumerable.Range(0, 128).Where(bits => int.PopCount(bits) == 3).Select(bits => Sum([.. Enumerable.Range(0, 7).Select(row => (bits >> row) & 1)])).ToArray();
        Assert.Equal(deals.Count(sum => sum >= 19) / 35.0, p.Value, 4 * p.Error);
        Assert.Equal(35, deals.Length);
    }

    [Fact]
    public void What_cannot_be_redrawn_is_refused()
    {
        Assert.Equal(RefusalKind.TooFewBallots, Bootstrap.Of(ResamplingUnits.ByRow(2), _ => 1, Seed).Refusal!.Kind);
        Assert.Equal(RefusalKind.NoInformation, Bootstrap.Of(ResamplingUnits.ByRow(5), _ => double.NaN, Seed).Refusal!.Kind);
        Assert.Equal(RefusalKind.NoInformation, Bootstrap.Of(ResamplingUnits.ByRow(5), rows => rows.Distinct().Count() == 5 ? 1 : null, Seed).Refusal!.Kind);
        Assert.Equal(RefusalKind.NoInformation, PermutationTest.OfLabels(ResamplingUnits.ByRow(3), [1, 1, 1], _ => 0, Seed).Refusal!.Kind);
        Assert.Equal(RefusalKind.NoInformation, Bootstrap.Steadiness(ResamplingUnits.ByRow(3), 2, _ => [], Seed).Refusal!.Kind);
        Assert.Throws<ArgumentException>(() => PermutationTest.OfLabels(ResamplingUnits.ByRow(3), [1, 0], _ => 0, Seed));
        Assert.Throws<ArgumentException>(() => ResamplingUnits.ByGroup([]));
    }

    private static ScoreSet Redrawn(RankingSet set, ImmutableArray<int> rows, CountingRule? rule = null) =>
        ScoreSet.FromRankings(RankingSet.Create(set.Items, rows.Select(row => set.Rows[row])), rule ?? CountingRule.AveragePlace);
}
