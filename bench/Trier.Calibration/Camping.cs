using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Trier.Statistics.Agreement;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;

namespace Trier.Calibration;

/// <summary>Bar (a) for camps by declared taste and for the mark "loved and hated".</summary>
internal static class Camping
{
    public static string Make(Run run)
    {
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"Camps by declared taste, nominal .01, and the mark \"loved and hated\", nominal .05 (999 shuffles each where not exact), {run.Panels} panels, plain ballots; bars {Run.Percent(Run.Bar(.01, run.Panels))} and {Run.Percent(Run.Bar(.05, run.Panels))}:")
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
