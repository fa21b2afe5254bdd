using System.Globalization;
using System.Text;
using Trier.Statistics.Counting;
using Trier.Statistics.Power;
using Trier.Statistics.RankTests;

namespace Trier.Calibration;

/// <summary>Bar (b): how often any pair is stated that is not so, under six truths.</summary>
internal static class FalsePairs
{
    private static readonly Effort Unused = new(0, 1, 1, double.MaxValue);

    public static (string Name, PanelModel Model)[] Truths(int k)
    {
        double[] Worths(Func<int, double> of) => [.. Enumerable.Range(0, k).Select(of)];
        PanelModel Mirrored(double[] one, double[] two) => PanelModel.Of([new Taste([.. one], 1), new Taste([.. two], 1)]);
        return
        [
            ("none", PanelModel.Favourite(k, 1)),
            ("2 : 1", PanelModel.Favourite(k, 2)),
            ("6 : 1", PanelModel.Favourite(k, 6)),
            ("two good (3 : 3 : 1 ...)", PanelModel.Of(Worths(i => i < 2 ? 3 : 1))),
            ("a pair loved and hated alike (25 : 1 : 1/25)", Mirrored(Worths(i => i == 0 ? 25 : i == 1 ? 1.0 / 25 : 1), Worths(i => i == 1 ? 25 : i == 0 ? 1.0 / 25 : 1))),
            ("mirrored camps (9 : 1 end to end)", Mirrored(Worths(i => Math.Pow(9, -i / (k - 1.0))), Worths(i => Math.Pow(9, (i + 1 - k) / (k - 1.0))))),
        ];
    }

    public static string Make(Run run)
    {
        var bar = Run.Bar(0.05, run.Panels);
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"Share of panels, in percent, with any false pair stated / level 4 to 6 reached / level 6 although another is as good. {run.Panels} panels a cell; bar for the first {Run.Percent(bar)}.")
            .AppendLine().AppendLine("| k | truth | n 8 | n 14 | n 24 | n 40 |").AppendLine("| --- | --- | --- | --- | --- | --- |");
        var worst = 0.0;
        foreach (var k in new[] { 3, 5 })
        {
            foreach (var (name, model) in Truths(k))
            {
                text.Append(CultureInfo.InvariantCulture, $"| {k} | {name} |");
                foreach (var n in new[] { 8, 14, 24, 40 })
                {
                    var seed = run.For("pairs " + name, k, n);
                    var found = PanelPower.Simulate(model, n, seed, run.Panels, CountingRule.AveragePlace, null, Tables.Of(k, n, seed), Unused);
                    worst = Math.Max(worst, found.FalsePair.Share);
                    text.Append(CultureInfo.InvariantCulture, $" {Run.Percent(found.FalsePair)} / {Run.Percent(found.AnyShown)} / {Run.Percent(found.FalseAll)} |");
                }

                text.AppendLine();
                Console.Error.WriteLine($"pairs {k} {name}");
            }
        }

        return text.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"Worst {Run.Percent(worst)}: bar {(worst <= bar ? "met" : "missed")}.").ToString();
    }
}
