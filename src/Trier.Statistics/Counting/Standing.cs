using System.Collections.Immutable;

namespace Trier.Statistics.Counting;

/// <summary>Where the items stand by an additive rule.</summary>
/// <param name="Totals">Per item the sum of scores over the ballots that served it.</param>
/// <param name="Averages">
/// Per item the average score on complete ballots; otherwise the adjusted average; null for an item no ballot compares.
/// </param>
/// <param name="Adjusted">True where <paramref name="Averages"/> are adjusted for who was served what.</param>
/// <param name="Ballots">Per item how many ballots served it.</param>
/// <param name="Pieces">The pieces the ballots connect, each in rising order; one piece where all items can be compared.</param>
/// <param name="Leaders">The best items, more than one where they tie exactly; none where the items fall into pieces.</param>
public sealed record Standing(
    ImmutableArray<double> Totals,
    ImmutableArray<double?> Averages,
    bool Adjusted,
    ImmutableArray<long> Ballots,
    ImmutableArray<ImmutableArray<int>> Pieces,
    ImmutableArray<int> Leaders)
{
    private const double Slack = 1e-9;

    /// <summary>True where every item can be compared with every other, directly or through others.</summary>
    public bool IsConnected => Pieces.Length == 1;

    /// <summary>
    /// Counts scores. On partial ballots of m of k items the centred scores c (times (k+1)/(m+1) where they are places) are fitted by
    /// [sum over ballots of (I - J/m)] tau = sum of c, solved by the pseudo-inverse; places are reported as (k+1)/2 + tau, other scores as
    /// their overall mean + tau. Ties are exact on complete ballots and taken within 1e-9 otherwise.
    /// </summary>
    /// <param name="scores">The ballots' scores.</param>
    public static Standing Of(ScoreSet scores)
    {
        ArgumentNullException.ThrowIfNull(scores);
        var k = scores.Items;
        // Place points on ballots of many lengths are so fine that their sums outgrow 64 bits.
        var totals = new Int128[k];
        var ballots = new long[k];
        foreach (var row in scores.Rows)
        {
            for (var i = 0; i < k; i++)
            {
                if (row.Scores[i] is not { } score) continue;
                totals[i] += (Int128)score * row.Count;
                ballots[i] += row.Count;
            }
        }

        var normal = new Laplacian(k);
        foreach (var row in scores.Rows) normal.Add(Served(row), row.Count);
        var pieces = normal.Pieces();
        var complete = scores.IsComplete && !scores.Rows.IsEmpty;
        var averages = complete
            ? [.. totals.Select(total => (double?)total / scores.Denominator / scores.Ballots)]
            : AdjustedAverages(scores, normal, totals, ballots);
        return new Standing(
            [.. totals.Select(total => (double)total / scores.Denominator)], averages, !complete, [.. ballots], pieces,
            pieces.Length > 1 ? [] : complete ? Best(totals, scores.LowerIsBetter) : Best(averages, scores.LowerIsBetter));
    }

    private static ImmutableArray<double?> AdjustedAverages(ScoreSet scores, Laplacian normal, Int128[] totals, long[] ballots)
    {
        var k = scores.Items;
        var sums = new double[k];
        foreach (var row in scores.Rows)
        {
            var served = Served(row);
            var stretch = scores.IsPlaces ? (k + 1.0) / (served.Length + 1) : 1;
            var mean = served.Sum(i => (double)row.Scores[i]!.Value) / served.Length;
            foreach (var i in served) sums[i] += row.Count * stretch * (row.Scores[i]!.Value - mean) / scores.Denominator;
        }

        var centre = scores.IsPlaces
            ? (k + 1) / 2.0
            : totals.Sum(total => (double)total) / Math.Max(1, ballots.Sum()) / scores.Denominator;
        var inverse = normal.PseudoInverse();
        var averages = ImmutableArray.CreateBuilder<double?>(k);
        for (var i = 0; i < k; i++)
        {
            var effect = 0.0;
            for (var j = 0; j < k; j++) effect += inverse[i, j] * sums[j];
            averages.Add(ballots[i] == 0 ? null : centre + effect);
        }

        return averages.MoveToImmutable();
    }

    private static int[] Served(ScoreRow row) => [.. Enumerable.Range(0, row.Scores.Length).Where(i => row.Scores[i].HasValue)];

    private static ImmutableArray<int> Best(Int128[] totals, bool lowerIsBetter)
    {
        var best = lowerIsBetter ? totals.Min() : totals.Max();
        return [.. Enumerable.Range(0, totals.Length).Where(i => totals[i] == best)];
    }

    private static ImmutableArray<int> Best(ImmutableArray<double?> averages, bool lowerIsBetter)
    {
        var best = lowerIsBetter ? averages.Min() : averages.Max();
        if (best is not { } value) return [];
        return [.. Enumerable.Range(0, averages.Length).Where(i => averages[i] is { } average && Math.Abs(average - value) <= Slack)];
    }
}
