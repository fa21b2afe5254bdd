using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Trier.Statistics.Agreement;
using Trier.Statistics.Designs;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;

namespace Trier.Calibration;

/// <summary>Bar (a) for the order of serving and for sittings, both at .01.</summary>
internal static class Orders
{
    public static string Make(Run run)
    {
        var effort = new Effort(0, 999, 999, double.MaxValue);
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"Order of serving and sittings, nominal .01, places of a 2 : 1 favourite that no order or sitting moves, served by the project's own plans; 999 deals a panel, {run.Panels} panels, bar {Run.Percent(Run.Bar(.01, run.Panels))}:")
            .AppendLine().AppendLine("| k | n | order mentioned | sittings mentioned (halves) | the same with ties, partial ballots and a pair of one voice |").AppendLine("| --- | --- | --- | --- | --- |");
        foreach (var (k, n) in new[] { (3, 8), (5, 8), (5, 14), (5, 24) })
        {
            var draw = new PanelDraw(PanelModel.Favourite(k, 2));
            var seed = run.For("orders", k, n);
            var orders = ServingOrders.Williams(k, n, seed.Child("plan"));
            var labels = Enumerable.Range(0, n).Select(i => i < n / 2 ? 1 : 2).ToImmutableArray();
            var parts = Streams.Run(32, seed, (part, generator) =>
            {
                var (order, sitting) = (0, 0);
                for (var panel = Streams.Share(run.Panels, 32, part); panel > 0; panel--)
                {
                    ImmutableArray<ImmutableArray<double?>> places = [.. draw.Panel(n, generator).Rows.Select(row => row.Ranking.Midranks())];
                    var chance = new Seed(generator.NextUInt64());
                    if (ServingOrder.Test(k, [.. orders.Zip(places, (served, values) => new ServedPlate(served, values))], chance, effort).Value.Mentioned) order++;
                    if (Sittings.Test(places, labels, chance, effort).Value.Apart) sitting++;
                }

                return (order, sitting);
            });
            text.AppendLine(CultureInfo.InvariantCulture, $"| {k} | {n} | {Run.Percent(Simulated.Of(parts.Sum(p => p.order), run.Panels))} | {Run.Percent(Simulated.Of(parts.Sum(p => p.sitting), run.Panels))} | {Run.Percent(Simulated.Of(Joined(run, k, n, labels, effort), run.Panels))} |");
            Console.Error.WriteLine($"orders {k} {n}");
        }

        return text.ToString();
    }

    private static int Joined(Run run, int k, int n, ImmutableArray<int> labels, Effort effort)
    {
        var draw = new PanelDraw(PanelModel.Favourite(k, 2) with { TieChance = 0.1, PartialChance = 0.1, JoinedPairs = 1 });
        var parts = Streams.Run(32, run.For("joined sittings", k, n), (part, generator) =>
        {
            var parted = 0;
            for (var panel = Streams.Share(run.Panels, 32, part); panel > 0; panel--)
            {
                var judges = draw.Panel(n, generator).Rows.SelectMany(row => Enumerable.Repeat(row, (int)row.Count)).ToList();
                var tested = Sittings.Test([.. judges.Select(row => row.Ranking.Midranks())], labels, new Seed(generator.NextUInt64()), effort, [.. judges.Select(row => row.Voice)]);
                if (tested.Stands && tested.Value.Apart) parted++;
            }

            return parted;
        });
        return parts.Sum();
    }
}
