using System.Globalization;
using System.Text;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;

namespace Trier.Calibration;

/// <summary>Bars (c) and (d): the chance of being the crowd's favourite, and intervals, averaged over the prior.</summary>
internal static class Favourites
{
    private static readonly (int K, int N)[] Cells = [(3, 6), (3, 14), (5, 8), (5, 14), (5, 40)];

    public static string Make(Run run)
    {
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"Worths drawn from the stated prior (log-worths normal(0, s), s half-normal of scale 0.8), {run.Panels} panels a cell; each posterior from {FavouritePanels.Effort.Chains} chains of {FavouritePanels.Effort.Discarded} + {FavouritePanels.Effort.Kept} steps (a verdict takes 4 of 1,000 + 10,000).")
            .AppendLine("Per tenth of the leader's chance C: panels, mean C, share in which the leader is the crowd's favourite. The bar holds tenths of 200 panels or more: within 3 points and 3 errors. \"All\" is the same over every wheel's chance, the worst tenth only.")
            .AppendLine().AppendLine("| k | n | 0-.1 | .1-.2 | .2-.3 | .3-.4 | .4-.5 | .5-.6 | .6-.7 | .7-.8 | .8-.9 | .9-1 | worst, points | all, points | bar |").AppendLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        var covers = new StringBuilder();
        IReadOnlyList<FavouritePanel> kept = [];
        foreach (var (k, n) in Cells)
        {
            var panels = FavouritePanels.Draw(k, n, run.Panels, run.For("favourite", k, n), generator => FavouritePanels.FromPrior(k, 0.8, generator));
            text.AppendLine(Row(k.ToString(CultureInfo.InvariantCulture), n.ToString(CultureInfo.InvariantCulture), panels, bar: true));
            covers.AppendLine(Covers(k, n, panels));
            if ((k, n) == (5, 14)) kept = panels;
            Console.Error.WriteLine($"favourite {k} {n}");
        }

        text.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"Beside it, no bar (k 5, n 14; {run.Fewer(2_000)} panels each): a posterior is calibrated over its prior, not at a point.").AppendLine()
            .AppendLine("| truth | | 0-.1 | .1-.2 | .2-.3 | .3-.4 | .4-.5 | .5-.6 | .6-.7 | .7-.8 | .8-.9 | .9-1 | worst, points | all, points | |").AppendLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (var (name, draw) in Others())
            text.AppendLine(Row(name, "", FavouritePanels.Draw(5, 14, run.Fewer(2_000), run.For(name), draw), bar: false));
        text.AppendLine().AppendLine("Cover of nominal 90 % intervals, in percent, averaged over the prior and all pairs or wheels (error at most .2 by panels); how much larger the gap between leader and second is seen than it is; how often the model's best wheel is not the leader; mean C and share right.")
            .AppendLine().AppendLine("| k | n | gap, t interval (bar 86-93 from n 6) | share, Wilson (bar 88-93) | log-worth, posterior (bar 87-93) | lead too large by, places | model's best not the leader | mean C | leader right |").AppendLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- |")
            .Append(covers);
        return text.AppendLine().AppendLine(Perfect(run, kept)).ToString();
    }

    private static (string Name, Func<Generator, PanelModel> Draw)[] Others() =>
    [
        ("spread half the prior's", generator => FavouritePanels.FromPrior(5, 0.4, generator)),
        ("spread twice the prior's", generator => FavouritePanels.FromPrior(5, 1.6, generator)),
        ("two camps, each from the prior", generator => PanelModel.Of([FavouritePanels.FromPrior(5, 0.8, generator).Tastes[0], FavouritePanels.FromPrior(5, 0.8, generator).Tastes[0]])),
        ("one fixed 2 : 1 favourite", _ => PanelModel.Favourite(5, 2)),
    ];

    private static string Row(string first, string second, IReadOnlyList<FavouritePanel> panels, bool bar)
    {
        var leaders = panels.Select(panel => (panel.Chances[panel.Leader], panel.Leader == panel.Favourite)).ToList();
        var all = panels.SelectMany(panel => panel.Chances.Select((chance, item) => (chance, item == panel.Favourite))).ToList();
        var row = new StringBuilder($"| {first} | {second} |");
        foreach (var tenth in Tenths(leaders))
            row.Append(tenth.Count == 0 ? " - |" : string.Create(CultureInfo.InvariantCulture, $" {tenth.Count}: {Run.Number(tenth.Chance)} {Run.Number(tenth.Right)} |"));
        var met = Within(leaders) && Within(all);
        return row.Append(CultureInfo.InvariantCulture, $" {Run.Number(100 * Worst(leaders), "F1")} | {Run.Number(100 * Worst(all), "F1")} | {(bar ? met ? "met" : "missed" : "")} |").ToString();
    }

    private static IEnumerable<(int Count, double Chance, double Right)> Tenths(List<(double Chance, bool Right)> claims)
    {
        for (var tenth = 0; tenth < 10; tenth++)
        {
            var own = claims.Where(claim => Math.Min(9, (int)(10 * claim.Chance)) == tenth).ToList();
            yield return own.Count == 0 ? (0, 0, 0) : (own.Count, own.Average(claim => claim.Chance), own.Average(claim => claim.Right ? 1.0 : 0));
        }
    }

    private static double Worst(List<(double Chance, bool Right)> claims) =>
        Tenths(claims).Where(tenth => tenth.Count >= 200).Select(tenth => Math.Abs(tenth.Right - tenth.Chance)).DefaultIfEmpty().Max();

    private static bool Within(List<(double Chance, bool Right)> claims) =>
        Tenths(claims).Where(tenth => tenth.Count >= 200).All(tenth => Math.Abs(tenth.Right - tenth.Chance) <= 0.03 + (3 * Math.Sqrt(tenth.Chance * (1 - tenth.Chance) / tenth.Count)));

    private static string Covers(int k, int n, IReadOnlyList<FavouritePanel> panels)
    {
        string Mean(Func<FavouritePanel, double> of) => Run.Percent(panels.Average(of));
        return $"| {k} | {n} | {Mean(p => p.GapCover)} | {Mean(p => p.ShareCover)} | {Mean(p => p.WorthCover)} | {Run.Number(panels.Average(p => p.LeadExcess), "F3")} | {Mean(p => p.ModelBest == p.Leader ? 0 : 1)} | {Run.Number(panels.Average(p => p.Chances[p.Leader]), "F3")} | {Run.Number(panels.Average(p => p.Leader == p.Favourite ? 1.0 : 0), "F3")} |";
    }

    /// <summary>How often a perfectly calibrated method would fail the simpler bar: every tenth within 3 points.</summary>
    private static string Perfect(Run run, IReadOnlyList<FavouritePanel> panels)
    {
        var chances = panels.Select(panel => panel.Chances[panel.Leader]).ToArray();
        double Fails(int size)
        {
            const int rounds = 1000;
            var parts = Streams.Run(32, run.For("perfect", size), (part, generator) =>
            {
                var fails = 0;
                for (var round = Streams.Share(rounds, 32, part); round > 0; round--)
                {
                    var claims = Enumerable.Range(0, size).Select(_ => chances[generator.NextInt(chances.Length)]).Select(chance => (chance, generator.NextDouble() < chance)).ToList();
                    if (Tenths(claims).Any(tenth => tenth.Count >= size / 100 && Math.Abs(tenth.Right - tenth.Chance) > 0.03)) fails++;
                }

                return fails;
            });
            return parts.Sum() / (double)rounds;
        }

        return string.Create(CultureInfo.InvariantCulture, $"A method that is perfectly calibrated, with the chances of k 5, n 14, fails \"every tenth (of a hundredth of the panels or more) within 3 points\" in {Run.Number(100 * Fails(2_000), "F0")} % of runs of 2,000 panels and {Run.Number(100 * Fails(20_000), "F0")} % of runs of 20,000 (1,000 runs each): hence the errors in the bar.");
    }
}
