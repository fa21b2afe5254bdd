using System.Globalization;
using Trier.Trials.Plans;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Commands.Verdicts;

/// <summary>The tables and bars of the terminal page.</summary>
internal static class TerminalTables
{
    private const int NameWidth = 24;
    private const int BarWidth = 40;
    private const int MostPairs = 15;

    public static void Tally(TerminalText page, Verdict verdict, TerminalMarks marks)
    {
        if (verdict.Tally.IsEmpty) return;
        var places = verdict.Tally.Select(t => t.AveragePlace).Min();
        page.Line("The tally".PadRight(NameWidth) + " firsts   lasts  average place  place points  liking");
        foreach (var line in verdict.Tally)
        {
            var row = "  " + TerminalText.Fit(marks.Marked(line.Id), NameWidth - 2);
            row += Starred(Count(line.Firsts, line.FirstsShared), line.Firsts > 0 && line.Firsts == verdict.Tally.Max(t => t.Firsts), 7);
            row += Starred(Count(line.Lasts, line.LastsShared), false, 8);
            row += Starred(line.AveragePlace is { } place ? Decimals(place, 2) : "–", line.AveragePlace is not null && line.AveragePlace == places, 15);
            row += Starred(Decimals(line.PlacePoints, 1), line.PlacePoints == verdict.Tally.Max(t => t.PlacePoints), 14);
            row += Starred(line.MeanLiking is { } liking ? Decimals(liking, 2) : "–", line.MeanLiking is not null && line.MeanLiking == verdict.Tally.Max(t => t.MeanLiking), 8);
            page.Line(row);
        }

        page.Line($"  * leads by this way of counting. The rule that decides: {RuleName(verdict.Record.Plan.Rule)}.");
        if (verdict.Tally.Any(t => t.FirstsShared + t.LastsShared > 0)) page.Line("  4(1): four, one of them shared.");
        page.Gap();
    }

    public static void Bars(TerminalText page, Verdict verdict, TerminalMarks marks)
    {
        if (verdict.Wheels.Length < 2 || verdict.Tally.All(t => t.AveragePlace is null)) return;
        page.Line("How far up the orders".PadRight(NameWidth) + "a longer bar is a better average place");
        foreach (var line in verdict.Tally)
        {
            var share = line.AveragePlace is { } place ? (verdict.Wheels.Length - place) / (verdict.Wheels.Length - 1) : 0;
            var eighths = (int)Math.Round(Math.Clamp(share, 0, 1) * BarWidth * 2, MidpointRounding.AwayFromZero);
            var bar = new string('█', eighths / 2) + (eighths % 2 == 1 ? "▌" : "");
            page.Line("  " + TerminalText.Fit(marks.Marked(line.Id), NameWidth - 2) + bar);
        }

        page.Gap();
    }

    public static void HeadToHead(TerminalText page, Verdict verdict, TerminalMarks marks)
    {
        if (verdict.Wheels.Length is < 2 or > 8 || verdict.Panel.Ballots == 0) return;
        page.Line("Placed above".PadRight(NameWidth) + string.Concat(verdict.Wheels.Select(w => (w.Id.Length <= 6 ? w.Id : marks.Sign(w.Id)).PadLeft(7))));
        foreach (var one in verdict.Wheels)
        {
            var row = "  " + TerminalText.Fit(marks.Marked(one.Id), NameWidth - 2);
            foreach (var other in verdict.Wheels)
            {
                var pair = verdict.HeadToHead.FirstOrDefault(h => h.Id == one.Id && h.Other == other.Id);
                row += (pair is null ? "" : Halves((2 * pair.Above) + pair.Ties)).PadLeft(7);
            }

            page.Line(row);
        }

        page.Gap();
    }

    public static void Pairs(TerminalText page, Verdict verdict, TerminalMarks marks)
    {
        if (verdict.Pairs.IsEmpty) return;
        page.Line("Pair by pair".PadRight(NameWidth + 16) + "voices for it     by luck, 1 time in");
        foreach (var pair in verdict.Pairs.Take(MostPairs))
        {
            var names = TerminalText.Fit($"{marks.Marked(pair.Better)} over {marks.Marked(pair.Worse)}", NameWidth + 14);
            var voices = $"{Halves((long)Math.Round(2 * pair.Preferring))} of {pair.Voices.ToString(CultureInfo.InvariantCulture)}".PadLeft(12);
            page.Line($"  {names}{voices}{OneIn(pair.P).PadLeft(16)}{(pair.Shown ? "  shown" : "")}");
        }

        if (verdict.Pairs.Length > MostPairs) page.Line(string.Create(CultureInfo.InvariantCulture, $"  and {verdict.Pairs.Length - MostPairs} pairs less clear"));
        page.Gap();
    }

    private static string Starred(string text, bool star, int width) => (text + (star ? "*" : " ")).PadLeft(width);

    private static string Count(long all, long shared) =>
        shared == 0 ? all.ToString(CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"{all}({shared})");

    private static string Decimals(double number, int decimals) =>
        Math.Round(number, decimals, MidpointRounding.AwayFromZero).ToString(decimals == 2 ? "0.00" : "0.0", CultureInfo.InvariantCulture);

    private static string Halves(long doubled) =>
        (doubled is 1 ? "" : (doubled / 2).ToString(CultureInfo.InvariantCulture)) + (doubled % 2 == 1 ? "½" : "");

    private static string OneIn(double p) => p < 1e-6 ? "a million or more" : Math.Round(1 / p) is var times && times < 10 ? (1 / p).ToString("0.0", CultureInfo.InvariantCulture) : (1 / p).ToString("0", CultureInfo.InvariantCulture);

    private static string RuleName(CountingRule rule) => rule switch
    {
        CountingRule.Firsts => "most firsts",
        CountingRule.PlacePoints => "most place points",
        CountingRule.MeanLiking => "highest average liking",
        _ => "best average place",
    };
}
