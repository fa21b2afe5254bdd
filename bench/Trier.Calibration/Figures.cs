using System.Globalization;
using System.Text;
using Trier.Statistics.Counting;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;

namespace Trier.Calibration;

/// <summary>The other figures that the method's design rests on.</summary>
internal static class Figures
{
    private static readonly int[] Sizes = [14, 24, 40];

    public static string Make(Run run)
    {
        var text = new StringBuilder();
        text.AppendLine("| figure | of the design | found (error) |").AppendLine("| --- | --- | --- |");
        void Add(string what, string design, params Simulated[] found) =>
            text.AppendLine(CultureInfo.InvariantCulture, $"| {what} | {design} | {string.Join(" / ", found.Select(share => $"{Run.Percent(share)} ({Run.Percent(share.Error)})"))} |");

        var average = Simulate(run, 14, run.Panels, CountingRule.AveragePlace);
        var firsts = Sizes.Select(n => Simulate(run, n, run.Panels, CountingRule.Firsts)).ToArray();
        Add("k 5, n 14, one 2 : 1 favourite: the leader, alone, is the favourite; by average place / by firsts, %", "78 / 53", average.LeaderRight, firsts[0].LeaderRight);
        Add("the same planned by firsts, shown (levels 4-6) at n 14 / 24 / 40, %", "11 / 20 / 34", [.. firsts.Select(found => found.AnyShown)]);
        Add("2 : 1 favourite shown over a rival (levels 5-6) at n 14 / 24 / 40, k 5, %", "16 / 37 / 64", [.. Sizes.Select(n => Simulate(run, n, run.Panels, CountingRule.AveragePlace).ShownRight)]);
        var (quarter, most) = Badges(run);
        Add("12 by 5, no difference: some wheel is first on a quarter and last on a quarter, %", "62", quarter);
        Add("12 by 5, no difference: some wheel has most firsts and most lasts, ties in (and alone in both), %", "22-26", most);
        foreach (var (k, n, right) in new[] { (5, 14, "74"), (4, 8, "67") })
        {
            foreach (var (truth, name) in new (Func<Generator, PanelModel>, string)[] { (generator => FavouritePanels.FromPrior(k, 0.8, generator), "truths from the prior"), (_ => PanelModel.Favourite(k, 2), "2 : 1") })
                Add($"k {k}, n {n}, {name}: where redrawing the ballots says 80 to 90 %, the leader is right in, %", right, Bootstrap(run, k, n, truth));
        }

        return text.ToString();
    }

    private static PanelOutcome Simulate(Run run, int n, int panels, CountingRule rule)
    {
        var seed = run.For("figures", n, rule == CountingRule.Firsts ? 1 : 0);
        var table = rule == CountingRule.AveragePlace ? Tables.Of(5, n, seed) : null;
        return PanelPower.Simulate(PanelModel.Favourite(5, 2), n, seed, panels, rule, null, table, new Effort(1e7, 1, 1, double.MaxValue));
    }

    private static (Simulated Quarter, Simulated Most) Badges(Run run)
    {
        var draw = new PanelDraw(PanelModel.Favourite(5, 1));
        var parts = Streams.Run(32, run.For("badges"), (part, generator) =>
        {
            var (quarter, most) = (0, 0);
            for (var panel = Streams.Share(run.Panels, 32, part); panel > 0; panel--)
            {
                var items = Tally.Of(draw.Panel(12, generator)).Items;
                if (items.Any(item => item.Firsts >= 3 && item.Lasts >= 3)) quarter++;
                if (items.Any(item => item.Firsts >= items.Max(other => other.Firsts) && item.Lasts >= items.Max(other => other.Lasts))) most++;
            }

            return (quarter, most);
        });
        return (Simulated.Of(parts.Sum(p => p.quarter), run.Panels), Simulated.Of(parts.Sum(p => p.most), run.Panels));
    }

    /// <summary>Ballots redrawn with replacement: how often the leader leads again, a shared lead counting its share.</summary>
    private static Simulated Bootstrap(Run run, int k, int n, Func<Generator, PanelModel> truths)
    {
        const int redraws = 200;
        var panels = run.Fewer(4_000);
        var parts = Streams.Run(32, run.For("bootstrap", k, n), (part, generator) =>
        {
            var (claims, right) = (0, 0);
            Span<double> totals = stackalloc double[k];
            for (var panel = Streams.Share(panels, 32, part); panel > 0; panel--)
            {
                var model = truths(generator);
                double[][] rows = [.. new PanelDraw(model).Panel(n, generator).Rows.Select(row => row.Ranking.Midranks().Select(place => place!.Value).ToArray())];
                var leader = Leaders([.. Enumerable.Range(0, k).Select(i => rows.Sum(row => row[i]))])[0];
                var truth = model.AveragePlaces();
                var says = 0.0;
                for (var redraw = 0; redraw < redraws; redraw++)
                {
                    totals.Clear();
                    for (var i = 0; i < n; i++)
                    {
                        var row = rows[generator.NextInt(n)];
                        for (var item = 0; item < k; item++) totals[item] += row[item];
                    }

                    var again = Leaders(totals.ToArray());
                    if (again.Contains(leader)) says += 1.0 / again.Length;
                }

                if (says / redraws is < 0.8 or > 0.9) continue;
                claims++;
                if (truth[leader] <= truth.Min()) right++;
            }

            return (claims, right);
        });
        return Simulated.Of(parts.Sum(p => p.right), Math.Max(1, parts.Sum(p => p.claims)));
    }

    private static int[] Leaders(double[] totals)
    {
        var least = totals.Min();
        return [.. Enumerable.Range(0, totals.Length).Where(i => totals[i] == least)];
    }
}
