using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Trier.Statistics.Agreement;
using Trier.Statistics.Counting;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
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
        return text.Append(CampSizes(run)).ToString();
    }

    private static (string Name, Func<PanelModel, PanelModel> Change)[] Kinds() =>
    [
        ("plain", model => model),
        ("ties", model => model with { TieChance = 0.5 }),
        ("partial", model => model with { PartialChance = 0.25 }),
        ("joined", model => model with { JoinedPairs = 2 }),
        ("all three", model => model with { TieChance = 0.5, PartialChance = 0.25, JoinedPairs = 2 }),
    ];

    private static string CampSizes(Run run)
    {
        var text = new StringBuilder();
        text.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"Camps by declared taste, nominal .01, and the mark \"loved and hated\", nominal .05 (999 shuffles each where not exact), {run.Panels} panels, plain ballots; bars {Run.Percent(Run.Bar(.01, run.Panels))} and {Run.Percent(Run.Bar(.05, run.Panels))}:")
            .AppendLine().AppendLine("| k | camps | parted at .01 | loved and hated at .05 |").AppendLine("| --- | --- | --- | --- |");
        foreach (var (k, first, second) in new[] { (3, 4, 5), (5, 4, 5), (5, 6, 6), (5, 7, 7), (6, 12, 12), (5, 20, 20) })
        {
            var labels = Enumerable.Range(0, first + second).Select(i => (int?)(i < first ? 0 : 1)).ToImmutableArray();
            var draw = new PanelDraw(PanelModel.Favourite(k, 1));
            var effort = new Effort(first + second <= 14 ? 1 : 0, 999, 999, double.MaxValue);
            var parts = Streams.Run(32, run.For("camps", k, first), (part, generator) =>
            {
                var (parted, marked) = (0, 0);
                for (var panel = Streams.Share(run.Panels, 32, part); panel > 0; panel--)
                {
                    var set = draw.Panel(first + second, generator);
                    var seed = new Seed(generator.NextUInt64());
                    if (Camps.Test(set, labels, seed, effort).Value.Parted) parted++;
                    if (LovedAndHated.Test(set, seed, effort).Value.Marked) marked++;
                }

                return (parted, marked);
            });
            text.AppendLine(CultureInfo.InvariantCulture, $"| {k} | {first} v {second} | {Run.Percent(Simulated.Of(parts.Sum(p => p.parted), run.Panels))} | {Run.Percent(Simulated.Of(parts.Sum(p => p.marked), run.Panels))} |");
            Console.Error.WriteLine($"camps {first}");
        }

        return text.ToString();
    }
}
