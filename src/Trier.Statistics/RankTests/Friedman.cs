using System.Collections.Immutable;
using Trier.Statistics.Counting;
using Trier.Statistics.Distributions;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.RankTests;

/// <summary>Friedman's test and what is usually asked next.</summary>
/// <param name="Statistic">T1, corrected for ties.</param>
/// <param name="Uncorrected">Q without the tie correction.</param>
/// <param name="DegreesOfFreedom">Items - 1.</param>
/// <param name="P">Exact, or by drawn shuffles, each ballot on its own.</param>
/// <param name="ChiSquareP">The chi-square approximation.</param>
/// <param name="F">Iman and Davenport's F; infinite where all ballots agree.</param>
/// <param name="FP">Its p on k-1 and (n-1)(k-1) degrees of freedom; true size 5.8 % at 4 items and 8 judges.</param>
/// <param name="KendallW">Kendall's coefficient of concordance, corrected for ties: T1/(n(k-1)).</param>
/// <param name="UncorrectedW">The same from the uncorrected statistic.</param>
/// <param name="MeanRankCorrelation">(nW - 1)/(n - 1), the mean Spearman correlation of two judges; null with one judge. By luck about 0, whereas W is about 1/n.</param>
/// <param name="RankSums">Per item the sum of mid-places.</param>
/// <param name="SumOfSquaredRanks">A1.</param>
/// <param name="Items">k.</param>
/// <param name="Judges">n, the number of ballots.</param>
/// <param name="HasTies">True where some ballot ties two items.</param>
public sealed record FriedmanResult(
    double Statistic,
    double Uncorrected,
    int DegreesOfFreedom,
    PValue P,
    double ChiSquareP,
    double F,
    double FP,
    double KendallW,
    double UncorrectedW,
    double? MeanRankCorrelation,
    ImmutableArray<double> RankSums,
    double SumOfSquaredRanks,
    int Items,
    long Judges,
    bool HasTies);

/// <summary>One point of the null distribution.</summary>
/// <param name="Statistic">Q.</param>
/// <param name="SquaredDeviations">S, the sum of (R - n(k+1)/2)^2.</param>
/// <param name="Chance">P(Q = this).</param>
/// <param name="AtLeast">P(Q >= this).</param>
public sealed record FriedmanPoint(double Statistic, double SquaredDeviations, double Chance, double AtLeast);

/// <summary>
/// Friedman's test on complete ballots: T1 = (k-1) sum (R_j - n(k+1)/2)^2 / (A1 - C1), A1 the sum of all squared mid-places, C1 = n k (k+1)^2/4.
/// Every ballot counts by itself; for joined voices use <see cref="Gate"/>.
/// Sources: [Friedman1937]; tie correction [Conover1999]; F [ImanDavenport1980]; W [KendallBabingtonSmith1939].
/// </summary>
public static class Friedman
{
    /// <summary>Tests whether the items were treated alike.</summary>
    /// <param name="set">Complete ballots over at least 2 items.</param>
    /// <param name="seed">Where chance comes from, if arrangements must be drawn.</param>
    /// <param name="effort">How much work; <see cref="Effort.Usual"/> if null.</param>
    /// <returns>Refused for one item, no ballot, a partial ballot, or ballots that all tie everything.</returns>
    public static Answer<FriedmanResult> Test(RankingSet set, Seed seed, Effort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(set);
        if (set.Items < 2) return new Refusal(RefusalKind.TooFewItems, "There is one item: nothing can be compared.");
        if (set.Ballots == 0) return new Refusal(RefusalKind.TooFewBallots, "There is no ballot.");
        if (!set.IsComplete) return new Refusal(RefusalKind.NotComplete, "Some ballot was not served every item: Friedman's test needs complete ballots.");
        if (set.Rows.All(row => row.Ranking.IsAllTied)) return new Refusal(RefusalKind.NoInformation, "Every ballot ties everything.");
        var alone = RankingSet.Create(set.Items, set.Rows.Select(row => row with { Voice = null }));
        var gate = Gate.Test(alone, seed, effort).Value;
        var k = set.Items;
        var n = set.Ballots;
        var doubledSums = new long[k];
        var doubledSquares = 0L;
        foreach (var row in set.Rows)
        {
            var doubled = row.Ranking.DoubledMidranks();
            for (var i = 0; i < k; i++)
            {
                doubledSums[i] += row.Count * doubled[i];
                doubledSquares += row.Count * (long)doubled[i] * doubled[i];
            }
        }

        var deviations = 0.0;
        foreach (var sum in doubledSums) deviations += Math.Pow((sum - (n * (k + 1.0))) / 2, 2);
        var squares = doubledSquares / 4.0;
        var spread = squares - (n * k * Math.Pow(k + 1, 2) / 4);
        var t1 = (k - 1) * deviations / spread;
        var q = 12 * deviations / ((double)n * k * (k + 1));
        var largest = (double)n * (k - 1);
        var f = largest - t1 <= 1e-12 * largest ? double.PositiveInfinity : (n - 1) * t1 / (largest - t1);
        var w = t1 / largest;
        return new FriedmanResult(
            t1, q, k - 1, gate.P, Tails.ChiSquare(t1, k - 1), f, n > 1 ? Tails.F(f, k - 1, (n - 1.0) * (k - 1)) : 1, w, q / largest,
            n > 1 ? ((n * w) - 1) / (n - 1) : null, [.. doubledSums.Select(sum => sum / 2.0)], squares, k, n, set.Rows.Any(row => row.Ranking.HasTies));
    }

    /// <summary>The exact null distribution of Q without ties.</summary>
    /// <param name="items">3 or more.</param>
    /// <param name="judges">2 or more.</param>
    /// <returns>Every attainable value, rising; refused where the work formula exceeds 2e9.</returns>
    public static Answer<ImmutableArray<FriedmanPoint>> NullDistribution(int items, int judges)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(items, 3);
        ArgumentOutOfRangeException.ThrowIfLessThan(judges, 2);
        if (NullWork(items, judges) > 2e9)
            return new Refusal(RefusalKind.TooManyItems, "There are too many items or judges to count every arrangement.");
        var distribution = NullSquares(items, judges);
        var points = ImmutableArray.CreateBuilder<FriedmanPoint>(distribution.Count);
        var atLeast = 0.0;
        var centre = Math.Pow(judges * items * (items - 1) / 2.0, 2) / items;
        foreach (var (squares, chance) in distribution.Reverse())
        {
            atLeast += chance;
            var deviations = squares - centre;
            points.Add(new FriedmanPoint(12 * deviations / (judges * items * (items + 1.0)), deviations, chance, Math.Min(1, atLeast)));
        }

        points.Reverse();
        return points.MoveToImmutable();
    }

    /// <summary>The work of counting every arrangement of untied ballots.</summary>
    internal static double NullWork(int items, int judges) => ShuffleConvolution.Work(Untied(items, judges));

    /// <summary>Every attainable sum of squared totals, places counted from 0, with its chance.</summary>
    internal static SortedDictionary<long, double> NullSquares(int items, int judges) => ShuffleConvolution.Distribution(Untied(items, judges));

    private static WholeBallots Untied(int items, int judges)
    {
        var ranking = Ranking.FromPlaces([.. Enumerable.Range(1, items).Select(place => (double?)place)]);
        var scores = ScoreSet.FromRankings(RankingSet.Create(items, [new RankingRow(ranking, judges)]), CountingRule.AveragePlace);
        return WholeBallots.Of(VoiceTable.Of(scores));
    }
}
