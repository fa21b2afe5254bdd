using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Commands.Verdicts;

/// <summary>Every ballot as a strip from rind to tip, best first; many alike in one line with their number.</summary>
internal static class TerminalStrips
{
    private const int NameWidth = 10;

    /// <summary>More ballots than this are put together by order.</summary>
    private const int MostSingle = 40;

    /// <summary>Most lines of orders put together.</summary>
    private const int MostOrders = 24;

    public static void Write(TerminalText page, Verdict verdict, TerminalMarks marks)
    {
        if (verdict.Ballots.IsEmpty) return;
        page.Line("Every ballot, best first");
        if (verdict.Ballots.Length > MostSingle) Together(page, verdict, marks);
        else OneByOne(page, verdict, marks);
        page.Gap();
    }

    private static void OneByOne(TerminalText page, Verdict verdict, TerminalMarks marks)
    {
        var blind = verdict.Ballots.Where(b => b.Standing != StripStanding.Apart).ToList();
        var tastes = blind.Any(b => b.Taste is not null);
        foreach (var group in blind.GroupBy(b => tastes ? b.Taste ?? DeclaredTaste.NoIdea : DeclaredTaste.NoIdea).OrderBy(g => g.Key == DeclaredTaste.NoIdea ? 9 : (int)g.Key))
        {
            if (tastes) page.Line("  " + TasteWords(group.Key));
            foreach (var ballot in group) One(page, verdict, marks, ballot);
        }

        var apart = verdict.Ballots.Where(b => b.Standing == StripStanding.Apart).ToList();
        if (apart.Count == 0) return;
        page.Line("  shown apart, not counted");
        foreach (var ballot in apart) One(page, verdict, marks, ballot);
    }

    private static void One(TerminalText page, Verdict verdict, TerminalMarks marks, BallotStrip ballot)
    {
        var name = TerminalText.Fit(ballot.Name, NameWidth);
        if (ballot.Groups.IsEmpty)
        {
            page.Line($"  {name}{(ballot.Remarks.IsEmpty ? "no places" : string.Join(", ", ballot.Remarks.Where(r => !r.EndsWith("no places", StringComparison.Ordinal)).Append("no places")))}");
            return;
        }

        page.Line($"  {name}{Strip(verdict, marks, ballot.Groups, ballot.Below, ballot.NotPlaced)}");
    }

    private static void Together(TerminalText page, Verdict verdict, TerminalMarks marks)
    {
        var orders = verdict.Ballots
            .Where(b => !b.Groups.IsEmpty)
            .GroupBy(b => string.Join('>', b.Groups.Select(g => string.Join('=', g))) + "|" + string.Join('=', b.Below), StringComparer.Ordinal)
            .OrderByDescending(g => g.Count())
            .ThenBy(g => g.Key, StringComparer.Ordinal)
            .ToList();
        foreach (var order in orders.Take(MostOrders))
        {
            var first = order.First();
            var count = string.Create(CultureInfo.InvariantCulture, $"{order.Count()} times").PadRight(NameWidth);
            page.Line($"  {count}{Strip(verdict, marks, first.Groups, first.Below, first.NotPlaced)}");
        }

        if (orders.Count > MostOrders)
            page.Line(string.Create(CultureInfo.InvariantCulture, $"  and {orders.Count - MostOrders} more orders on {orders.Skip(MostOrders).Sum(o => o.Count())} ballots"));
        var silent = verdict.Ballots.Count(b => b.Groups.IsEmpty);
        if (silent > 0) page.Line(string.Create(CultureInfo.InvariantCulture, $"  {silent} {(silent == 1 ? "ballot has" : "ballots have")} no places"));
    }

    private static string Strip(Verdict verdict, TerminalMarks marks, ImmutableArray<ImmutableArray<string>> groups, ImmutableArray<string> below, ImmutableArray<string> missing)
    {
        var room = (TerminalPage.Width - 2 - NameWidth - 3) / Math.Max(1, verdict.Wheels.Length);
        var cell = Math.Clamp(marks.LongestName + 3, 3, Math.Max(3, room - 1));
        var strip = new StringBuilder("▌");
        var first = true;
        foreach (var group in below.IsEmpty ? groups : groups.Add(below))
        {
            for (var i = 0; i < group.Length; i++)
            {
                if (!first) strip.Append(i == 0 ? '│' : '=');
                first = false;
                strip.Append(TerminalText.Fit(cell < 4 ? marks.Name(group[i]) : marks.Marked(group[i]), cell));
            }
        }

        if (missing.IsEmpty) return strip.Append(')').ToString();
        return strip.Append("   no ").AppendJoin(", ", missing.Select(marks.Name)).ToString();
    }

    private static string TasteWords(DeclaredTaste taste) => taste switch
    {
        DeclaredTaste.Milder => "usually prefer milder",
        DeclaredTaste.Stronger => "usually prefer stronger",
        _ => "no idea",
    };
}
