using System.Globalization;
using System.Text;
using Trier.Statistics.Counting;
using Trier.Statistics.Power;
using Trier.Statistics.RankTests;

namespace Trier.Calibration;

/// <summary>Bar (a): how often the tests reject where nobody prefers anything.</summary>
internal static class Sizes
{
    private static readonly int[] Voices = [4, 6, 8, 12, 14, 24, 40];

    private static readonly Effort Shuffles = new(1e4, 199, 199, double.MaxValue);

    public static string Make(Run run)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"Share of panels, in percent, with the gate's p at most .05 / with any pair stated. {run.Panels} panels a cell, error at most {Run.Number(100 * Math.Sqrt(.05 * .95 / run.Panels))}; bar {Run.Percent(Run.Bar(.05, run.Panels))}. ")
            .AppendLine("Plain ballots by the counted or looked-up null distribution; the others by 199 shuffles a panel (a shuffle test keeps its size whatever their number).")
            .AppendLine("Ties: each two neighbours tied with chance .5. Partial: a quarter of the ballots place from 2 to k - 1 wheels. Joined: two pairs of tasters hand in one order, n counts voices.")
            .AppendLine();
        text.AppendLine("| ballots | n | k 3 | k 4 | k 5 | k 6 |").AppendLine("| --- | --- | --- | --- | --- | --- |");
        var worstGate = 0.0;
        var worstPair = 0.0;
        foreach (var (name, change) in Kinds())
        {
            foreach (var n in Voices)
            {
                text.Append(CultureInfo.InvariantCulture, $"| {name} | {n} |");
                for (var k = 3; k <= 6; k++)
                {
                    var model = change(PanelModel.Favourite(k, 1));
                    var seed = run.For("sizes " + name, n, k);
                    var table = model.IsPlain ? UntiedNull.Of(k, n, seed.Child("null"), 3e8) : null;
                    var found = PanelPower.Simulate(model, n + model.JoinedPairs, seed, run.Panels, CountingRule.AveragePlace, null, table, Shuffles);
                    text.Append(CultureInfo.InvariantCulture, $" {Run.Percent(found.AnyShown)} / {Run.Percent(found.FalsePair)} |");
                    worstGate = Math.Max(worstGate, found.AnyShown.Share);
                    worstPair = Math.Max(worstPair, found.FalsePair.Share);
                }

                text.AppendLine();
                Console.Error.WriteLine($"sizes {name} {n}");
            }
        }

        text.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"Worst gate {Run.Percent(worstGate)}, worst pair {Run.Percent(worstPair)}: bar {(Math.Max(worstGate, worstPair) <= Run.Bar(.05, run.Panels) ? "met" : "missed")}.");
        return text.ToString();
    }

    private static (string Name, Func<PanelModel, PanelModel> Change)[] Kinds() =>
    [
        ("plain", model => model),
        ("ties", model => model with { TieChance = 0.5 }),
        ("partial", model => model with { PartialChance = 0.25 }),
        ("joined", model => model with { JoinedPairs = 2 }),
        ("all three", model => model with { TieChance = 0.5, PartialChance = 0.25, JoinedPairs = 2 }),
    ];
}
