using System.Globalization;
using System.Text;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;

namespace Trier.Calibration;

/// <summary>The usual comparisons after Friedman's test, under the same truths: what is wrong with each.</summary>
internal static class Comparisons
{
    private static readonly (string Name, bool Gated, Func<RankingSet, RankSumComparison> Of)[] Methods =
    [
        ("gate, then Conover's least significant difference", true, set => RankSumComparisons.Conover(set).Value),
        ("gate, then normal least significant difference", true, set => RankSumComparisons.Normal(set).Value),
        ("Nemenyi", false, set => RankSumComparisons.Nemenyi(set).Value),
        ("sign tests, Holm", false, set => RankSumComparisons.SignsByHolm(set).Value),
    ];

    private static readonly int[] Voices = [8, 14, 24, 40];

    public static string Make(Run run)
    {
        var panels = run.Fewer(4_000);
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"Any false pair, in percent, k 5: the worst of n 8, 14, 24, 40, with that n; {panels} panels a cell, error at most {Run.Number(100 * Math.Sqrt(.2 * .8 / panels))}.")
            .AppendLine().Append("| method |");
        var truths = FalsePairs.Truths(5);
        foreach (var (name, _) in truths) text.Append(CultureInfo.InvariantCulture, $" {name} |");
        text.AppendLine().Append("| --- |").Append(string.Concat(truths.Select(_ => " --- |"))).AppendLine();
        var cells = truths.Select(truth => Voices.Select(n => (N: n, Shares: Cell(run, truth, n, panels))).ToList()).ToList();
        for (var method = 0; method < Methods.Length; method++)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {Methods[method].Name} |");
            foreach (var truth in cells)
            {
                var (n, shares) = truth.MaxBy(cell => cell.Shares[method]);
                text.Append(CultureInfo.InvariantCulture, $" {Run.Number(100 * shares[method], "F1")} (n {n}) |");
            }

            text.AppendLine();
        }

        return text.ToString();
    }

    private static double[] Cell(Run run, (string Name, PanelModel Model) truth, int n, int panels)
    {
        var seed = run.For("comparisons " + truth.Name, n);
        var table = Tables.Of(5, n, seed);
        var draw = new PanelDraw(truth.Model);
        var places = truth.Model.AveragePlaces();
        var parts = Streams.Run(32, seed, (part, generator) =>
        {
            var hits = new long[Methods.Length];
            for (var panel = Streams.Share(panels, 32, part); panel > 0; panel--)
            {
                var set = draw.Panel(n, generator);
                var totals = new long[5];
                foreach (var row in set.Rows)
                {
                    var doubled = row.Ranking.DoubledMidranks();
                    for (var i = 0; i < 5; i++) totals[i] += (doubled[i] / 2) - 1;
                }

                var open = table.P(totals.Sum(total => total * total)) <= Pairs.Level;
                for (var method = 0; method < Methods.Length; method++)
                {
                    if (Methods[method].Gated && !open) continue;
                    if (Methods[method].Of(set).Pairs.Any(pair => pair.Differs && IsFalse(pair, totals, places))) hits[method]++;
                }
            }

            return hits;
        });
        Console.Error.WriteLine($"comparisons {truth.Name} {n}");
        return [.. Enumerable.Range(0, Methods.Length).Select(method => parts.Sum(part => part[method]) / (double)panels)];
    }

    /// <summary>A stated difference is false where there is none, or where the rank sums lean the other way.</summary>
    private static bool IsFalse(RankSumPair pair, long[] totals, IReadOnlyList<double> truth)
    {
        var gap = truth[pair.First] - truth[pair.Second];
        return Math.Abs(gap) < 1e-9 || Math.Sign(gap) != Math.Sign(totals[pair.First] - totals[pair.Second]);
    }
}
