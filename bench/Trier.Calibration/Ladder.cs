using System.Globalization;
using System.Text;
using Trier.Statistics.Counting;
using Trier.Statistics.Power;
using Trier.Statistics.RankTests;

namespace Trier.Calibration;

/// <summary>Bar (e): the table of levels, beside the one that a second implementation simulated with NumPy for the method's design.</summary>
internal static class Ladder
{
    // k, n, ratio, levels 1 to 6, shown, false pair, right (none without a favourite), in percent.
    private static readonly (int K, int N, double T, double[] Expected)[] Rows =
    [
        (3, 8, 1, [12.7, 72.7, 9.9, 0.7, 3.6, 0.5, 4.7, 4.4]),
        (3, 14, 1, [9.9, 72.1, 13.0, 0.4, 3.9, 0.8, 5.1, 4.9]),
        (3, 24, 1, [7.8, 74.9, 12.7, 0.2, 3.5, 0.8, 4.6, 4.5]),
        (3, 40, 1, [6.2, 74.6, 14.4, 0.1, 3.8, 1.0, 4.9, 4.9]),
        (5, 8, 1, [11.8, 69.7, 13.9, 2.0, 2.4, 0.1, 4.6, 3.1]),
        (5, 14, 1, [8.9, 71.9, 14.1, 2.3, 2.6, 0.1, 5.1, 3.0]),
        (5, 24, 1, [7.0, 73.7, 14.2, 1.8, 3.0, 0.3, 5.1, 3.4]),
        (5, 40, 1, [5.5, 75.0, 14.7, 1.2, 3.4, 0.2, 4.8, 3.8]),
        (3, 8, 2, [8.3, 58.9, 18.3, 1.4, 10.4, 2.8, 14.5, 2.2, 71]),
        (3, 14, 2, [4.6, 44.6, 26.0, 0.7, 16.2, 7.9, 24.8, 3.0, 83]),
        (3, 24, 2, [1.7, 31.2, 26.4, 0.4, 20.8, 19.6, 40.8, 3.4, 93]),
        (3, 40, 2, [0.4, 12.9, 21.6, 0.1, 23.4, 41.5, 65.1, 3.7, 98]),
        (5, 8, 2, [8.7, 54.3, 23.4, 4.8, 8.0, 0.8, 13.6, 2.9, 63]),
        (5, 14, 2, [4.2, 43.6, 28.1, 6.8, 14.0, 3.3, 24.2, 2.6, 78]),
        (5, 24, 2, [1.6, 27.4, 28.2, 5.1, 25.8, 11.9, 42.8, 2.9, 91]),
        (5, 40, 2, [0.4, 10.4, 21.4, 2.6, 32.6, 32.6, 67.8, 3.1, 97]),
    ];

    public static string Make(Run run)
    {
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"Share of panels at each level, in percent, complete untied ballots by average place, {run.Panels} panels a cell, error at most .35. In brackets the difference from the design's own simulation, in standard errors of that difference; figures given there to whole percents are held to their rounding as well.")
            .AppendLine().AppendLine("| k | n | truth | 1 | 2 | 3 | 4 | 5 | 6 | shown | false pair | right | wrong leader at 5-6 | right at levels 2 3 4 5 6 |").AppendLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        var worst = 0.0;
        var cells = 0;
        var far = new List<int>();
        for (var row = 0; row < Rows.Length; row++)
        {
            var (k, n, t, expected) = Rows[row];
            var seed = run.For("ladder", k, n, (int)t);
            var found = PanelPower.Simulate(PanelModel.Favourite(k, t), n, seed, run.Panels, CountingRule.AveragePlace, null, Tables.Of(k, n, seed), new Effort(0, 1, 1, double.MaxValue));
            Simulated[] shares = [.. found.Levels.Skip(1), found.AnyShown, found.FalsePair, found.LeaderRight];
            text.Append(CultureInfo.InvariantCulture, $"| {k} | {n} | {(t > 1 ? "2 : 1" : "none")} |");
            for (var i = 0; i < 9; i++)
            {
                if (i >= expected.Length)
                {
                    text.Append(" |");
                    continue;
                }

                var rounding = i == 8 ? 0.005 : 0.0005;
                var off = Off(shares[i], expected[i], rounding, run.Panels);
                worst = Math.Max(worst, off);
                if (off > 3 && !far.Contains(row)) far.Add(row);
                cells++;
                text.Append(CultureInfo.InvariantCulture, $" {Run.Percent(shares[i])} ({Run.Number(off, "F1")}) |");
            }

            var right = t > 1 ? string.Join(' ', found.RightAtLevel.Skip(2).Select(share => share is null ? "-" : Run.Number(100 * share.Share, "F0"))) : "";
            text.AppendLine(CultureInfo.InvariantCulture, $" {(t > 1 ? Run.Percent(found.ShownWrong) : "")} | {right} |");
            Console.Error.WriteLine($"ladder {k} {n} {t}");
        }

        text.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"{cells} figures; the largest difference is {Run.Number(worst, "F1")} errors: bar of 4 {(worst <= 4 ? "met" : "missed")}.");
        return text.Append(Again(run, far)).ToString();
    }

    /// <summary>Difference from a rounded figure that was simulated with 20,000 panels, in errors of the difference.</summary>
    private static double Off(Simulated found, double percent, double rounding, int panels)
    {
        var p = percent / 100;
        var error = Math.Sqrt(Math.Max(p * (1 - p), 5e-5) * ((1.0 / panels) + (1.0 / 20_000)));
        return Math.Max(0, Math.Abs(found.Share - p) - rounding) / error;
    }

    /// <summary>Rows with a figure more than 3 errors off, drawn again from another stream with ten times as many panels: which of the two was off by chance?</summary>
    private static string Again(Run run, List<int> rows)
    {
        if (rows.Count == 0) return "";
        var text = new StringBuilder();
        var worst = 0.0;
        text.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"Rows with a figure more than 3 errors off, again with {10 * run.Panels} panels of another stream (error at most .11):").AppendLine()
            .AppendLine("| k | n | truth | 1 | 2 | 3 | 4 | 5 | 6 | shown | false pair |").AppendLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (var (k, n, t, expected) in rows.Select(row => Rows[row]))
        {
            var seed = run.For("ladder again", k, n, (int)t);
            var found = PanelPower.Simulate(PanelModel.Favourite(k, t), n, seed, 10 * run.Panels, CountingRule.AveragePlace, null, Tables.Of(k, n, seed), new Effort(0, 1, 1, double.MaxValue));
            Simulated[] shares = [.. found.Levels.Skip(1), found.AnyShown, found.FalsePair];
            for (var i = 0; i < shares.Length; i++) worst = Math.Max(worst, Off(shares[i], expected[i], 0.0005, 10 * run.Panels));
            text.AppendLine(CultureInfo.InvariantCulture, $"| {k} | {n} | {(t > 1 ? "2 : 1" : "none")} | {string.Join(" | ", shares.Select((share, i) => $"{Run.Percent(share)} (design {Run.Number(expected[i], "F1")})"))} |");
        }

        return text.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"With so many panels the largest difference of these rows is {Run.Number(worst, "F1")} errors: {(worst <= 4 ? "the bar of 4 is met, and the figure above was off by chance" : "the design's figure is off")}.").ToString();
    }
}
