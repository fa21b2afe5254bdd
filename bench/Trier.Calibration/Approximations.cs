using System.Globalization;
using System.Text;
using Trier.Statistics.Distributions;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;

namespace Trier.Calibration;

/// <summary>The true size of approximations that the verdict's words never use.</summary>
internal static class Approximations
{
    public static string Make(Run run)
    {
        var text = new StringBuilder();
        text.AppendLine("True size at nominal 5 percent, counted over every arrangement of untied complete ballots (or a million random ones where marked ~): chi-square / Iman and Davenport's F. Above 5.00 is too liberal.")
            .AppendLine().AppendLine("| n | k 3 | k 4 | k 5 | k 6 |").AppendLine("| --- | --- | --- | --- | --- |");
        foreach (var n in new[] { 4, 6, 8, 10, 12, 14, 18, 24, 32, 40 })
        {
            text.Append(CultureInfo.InvariantCulture, $"| {n} |");
            for (var k = 3; k <= 6; k++)
            {
                var table = UntiedNull.Of(k, n, run.For("approximations", n, k), 3e8);
                var chi = Tails.ChiSquareQuantile(0.05, k - 1);
                var f = FQuantile(k - 1, (k - 1) * (n - 1));
                text.Append(CultureInfo.InvariantCulture, $" {(table.IsExact ? "" : "~")}{Run.Percent(Size(table, n, k, chi))} / {Run.Percent(Size(table, n, k, n * (k - 1.0) * f / (n - 1 + f)))} |");
            }

            text.AppendLine();
        }

        return text.Append(Classical(run)).ToString();
    }

    private static double Size(UntiedNull table, int n, int k, double statistic)
    {
        // Sum of squared totals, places from 0, at which Q reaches the value.
        var mean = n * (k - 1) / 2.0;
        var squares = (statistic * n * k * (k + 1) / 12) + (k * mean * mean);
        return table.P((long)Math.Ceiling(squares - 1e-7));
    }

    private static double FQuantile(int numerator, int denominator)
    {
        double low = 0, high = 1000;
        while (high - low > 1e-11 * high)
        {
            var middle = (low + high) / 2;
            if (Tails.F(middle, numerator, denominator) > 0.05) low = middle;
            else high = middle;
        }

        return high;
    }

    private static string Classical(Run run)
    {
        var panels = run.Fewer(4_000);
        var text = new StringBuilder();
        text.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"Skillings and Mack's classical statistic (no tie correction) by chi-square, and this project's with the tie correction by 999 shuffles, where two neighbours are tied with chance .5 and a quarter of the ballots are partial; {panels} panels, error at most {Run.Number(100 * Math.Sqrt(.05 * .95 / panels))}:")
            .AppendLine().AppendLine("| k | n | classical | by shuffles |").AppendLine("| --- | --- | --- | --- |");
        foreach (var (k, n) in new[] { (3, 6), (3, 12), (3, 24), (5, 6), (5, 12), (5, 24) })
        {
            var draw = new PanelDraw(PanelModel.Favourite(k, 1) with { TieChance = 0.5, PartialChance = 0.25 });
            var parts = Streams.Run(32, run.For("classical", k, n), (part, generator) =>
            {
                var (classical, shuffled) = (0, 0);
                for (var panel = Streams.Share(panels, 32, part); panel > 0; panel--)
                {
                    var found = SkillingsMack.Test(draw.Panel(n, generator), new Seed(generator.NextUInt64()), new Effort(1e4, 999, 999, double.MaxValue)).Value;
                    if (found.ChiSquareP <= 0.05) classical++;
                    if (found.Gate.P.Value <= 0.05) shuffled++;
                }

                return (classical, shuffled);
            });
            text.AppendLine(CultureInfo.InvariantCulture, $"| {k} | {n} | {Run.Percent(Simulated.Of(parts.Sum(p => p.classical), panels))} | {Run.Percent(Simulated.Of(parts.Sum(p => p.shuffled), panels))} |");
        }

        return text.ToString();
    }
}
