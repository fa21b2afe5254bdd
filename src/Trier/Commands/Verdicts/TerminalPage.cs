using System.Globalization;
using System.Text;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Commands.Verdicts;

/// <summary>The verdict as plain text, at most 80 signs wide, without colour, alike in a terminal and in a file.</summary>
internal static class TerminalPage
{
    public const int Width = 80;

    public static string Write(Verdict verdict)
    {
        var page = new TerminalText();
        var marks = new TerminalMarks(verdict);
        var head = verdict.Record.Head;
        page.Line(string.Join("     ", new[]
        {
            head.Title,
            string.Join(", ", new[] { head.Host, head.Day?.ToString("dd/MM/yyyy", CultureInfo.InvariantCulture) }.Where(t => !string.IsNullOrEmpty(t))),
            head.Invented ? "an invented trial" : "",
        }.Where(t => t.Length > 0)));
        page.Gap();
        foreach (var sentence in verdict.Words.Top) page.Paragraph(sentence);
        TerminalStrips.Write(page, verdict, marks);
        TerminalTables.Tally(page, verdict, marks);
        TerminalTables.Bars(page, verdict, marks);
        TerminalTables.HeadToHead(page, verdict, marks);
        TerminalTables.Pairs(page, verdict, marks);
        page.Section("How sure", verdict.Words.HowSureUnfolded.Skip(1));
        page.Section("The yardstick", verdict.Words.Yardsticks);
        page.Section("What tips it", verdict.Words.Tips);
        page.Section("Who disagrees", verdict.Words.Disagreement);
        page.Section("What was said", verdict.Words.Answers);
        page.Section("The serving", verdict.Words.Serving);
        page.Section("What next", verdict.Words.Next);
        page.Section("Cannot be known", verdict.Words.Limits);
        page.Section("Mind that", verdict.Cautions);
        page.Paragraph(Foot(verdict), indent: 0);
        return page.ToString();
    }

    private static string Foot(Verdict verdict)
    {
        var foot = new StringBuilder();
        var panel = verdict.Panel;
        foot.Append(CultureInfo.InvariantCulture, $"{panel.Complete} complete {(panel.Complete == 1 ? "ballot" : "ballots")} of {panel.Tasters}. ");
        if (verdict.Friedman is { } friedman)
            foot.Append(CultureInfo.InvariantCulture, $"Friedman {friedman.Statistic:0.000} on {friedman.DegreesOfFreedom} df, W {friedman.KendallW:0.000}. ");
        if (verdict.Kemeny is { } kemeny)
        {
            foot.Append(kemeny.Optima == 1 ? "Nearest order to all ballots: " : string.Create(CultureInfo.InvariantCulture, $"{kemeny.Optima} orders are nearest to all ballots, one of them: "));
            foot.AppendJoin(", ", kemeny.Orders[0].Select(id => verdict.Sample(id).Name)).Append(". ");
        }

        foot.Append(CultureInfo.InvariantCulture, $"Methods {Verdict.MethodsVersion}, seed {verdict.Seed}. In full: --json.");
        return foot.ToString();
    }
}
