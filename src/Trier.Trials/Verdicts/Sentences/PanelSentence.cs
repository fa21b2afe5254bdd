using Trier.Trials.Plans;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>Who counts, how many voices that makes, and by what rule.</summary>
internal static class PanelSentence
{
    public static string Of(Verdict verdict)
    {
        var panel = verdict.Panel;
        var record = verdict.Record;
        var rule = Rule(verdict);
        var liking = record.Plan.Rule is CountingRule.MeanLiking;
        if (panel.Ballots == 0) return $"Nobody {(liking ? "gave" : "placed")} two {Phrase.Wheels(record)} or more{(liking ? " a liking" : "")}; the rule would be {rule}.";
        var blind = record.Head.FromFile ? "" : "blind ";
        var placed = panel.Main == MainCount.CompleteBallots
            ? $"{(liking ? "gave" : "placed")} all {Phrase.Number(verdict.Wheels.Length)} {Phrase.Wheels(record)}{(liking ? " a liking" : "")}"
            : $"{(liking ? "gave" : "placed")} two {Phrase.Wheels(record)} or more{(liking ? " a liking" : "")}";
        var share = panel.Ballots == panel.Tasters ? "" : $" of {Phrase.Number(panel.Tasters)}";
        var tasters = panel.Ballots == 1 && share.Length == 0 ? "taster" : "tasters";
        var who = $"{Phrase.Number(panel.Ballots)}{share} {blind}{tasters} {placed} and {Phrase.Verb(panel.Ballots == 1 ? 1 : 2, "counts", "count")} here";
        return $"{who}, by {rule}; {Meaning(verdict)}.";
    }

    private static string Rule(Verdict verdict)
    {
        var name = Phrase.Name(verdict.Record.Plan.Rule);
        if (verdict.Panel.Main == MainCount.AllBallots && verdict.Panel.Complete != verdict.Panel.Placing) name += " adjusted for what each was served";
        return verdict.Record.Head.FromFile ? $"{name}, the usual rule, for a file fixes none" : $"{name}, the rule fixed beforehand";
    }

    private static string Meaning(Verdict verdict)
    {
        var n = Phrase.Number(verdict.Panel.Voices);
        var groups = verdict.Ballots
            .Where(b => b is { Standing: StripStanding.Counted, Voice: not null })
            .GroupBy(b => b.Voice)
            .Where(g => g.Count() > 1)
            .OrderBy(g => g.Key)
            .Select(g => Phrase.List(g.Select(b => b.Name)))
            .ToList();
        return groups.Count switch
        {
            0 when verdict.Panel.Voices == 1 => "that is one voice",
            0 => $"each is one voice, which makes {n}",
            <= 3 => $"{string.Join("; ", groups)} compared notes and are one voice{(groups.Count > 1 ? " each" : "")}, which makes {n} voices",
            _ => $"those who compared notes are one voice, which makes {n} voices",
        };
    }
}
