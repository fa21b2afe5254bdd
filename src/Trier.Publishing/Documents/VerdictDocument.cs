using System.Collections.Immutable;
using System.Globalization;
using Trier.Publishing.Bundles;
using Trier.Publishing.Charts;
using Trier.Publishing.Writing;
using Trier.Trials.Plans;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Documents;

/// <summary>Makes the document of a publication.</summary>
public static class VerdictDocument
{
    private const int FirstSentences = 3;

    /// <summary>The whole verdict.</summary>
    /// <param name="publication">What is published.</param>
    public static Document Of(Publication publication)
    {
        ArgumentNullException.ThrowIfNull(publication);
        var verdict = publication.Verdict;
        var head = verdict.Record.Head;
        var charts = ChartSheet.Of(verdict);
        var where = string.Join(", ", new[] { head.Host, head.Day?.ToString("dd/MM/yyyy", CultureInfo.InvariantCulture) }.Where(word => !string.IsNullOrEmpty(word)));
        return new(head.Title, head.Question, where, StampDrawing.Of(publication), [.. verdict.Words.Top.Take(FirstSentences).Select(Numbers.Sentence)], [.. Passages(publication, charts)], Foot(publication));
    }

    /// <summary>One page: the first sentences, every ballot, the two answers.</summary>
    /// <param name="publication">What is published.</param>
    public static Document Summary(Publication publication)
    {
        var whole = Of(publication);
        return whole with { Passages = [.. whole.Passages.Where(passage => passage.Word is RackWord or AnswersWord)] };
    }

    private const string RackWord = "Every ballot";
    private const string AnswersWord = "Two answers";

    private static IEnumerable<DocumentPassage> Passages(Publication publication, ImmutableArray<VerdictChart> charts)
    {
        var verdict = publication.Verdict;
        var rack = VerdictRack.Of(verdict);
        yield return new(RackWord, null, [new Paragraph(rack.Reading), new Figure(charts[0])]);
        yield return new(AnswersWord, "never mixed", [new Terms(TwoAnswers.Of(verdict))]);
        if (!publication.Changes.IsEmpty) yield return new("Changes", string.Create(CultureInfo.InvariantCulture, $"version {publication.Version}"), [.. publication.Changes.Select(Said)]);
        yield return new("How sure", "and what it hangs on", [.. verdict.Words.Top.Skip(FirstSentences).Concat(verdict.Words.HowSureUnfolded.Skip(1)).Distinct(StringComparer.Ordinal).Select(Said), .. Chart(charts, "forest"), .. VerdictTables.Chances(verdict), .. OtherTables.Steady(verdict)], NewPage: true);
        yield return new("The tally", RuleNote(verdict), [VerdictTables.Tally(verdict, verdict.Tally, Counted(verdict)), .. verdict.TallyWithTheKey.IsEmpty ? [] : (Block[])[VerdictTables.Tally(verdict, verdict.TallyWithTheKey, $"With {string.Join(" and ", verdict.Panel.KnewTheKey)}, who knew the key and {(verdict.Panel.KnewTheKey.Length == 1 ? "is" : "are")} in no count above.")], VerdictTables.HeadToHead(verdict), .. OtherTables.Weights(verdict)]);
        if (verdict.Words.Disagreement.Length > 0) yield return new("Who disagrees", null, [.. verdict.Words.Disagreement.Select(Said), .. Chart(charts, "places"), .. VerdictTables.Camps(verdict), .. OtherTables.Tastes(verdict)]);
        if (verdict.Words.Yardsticks.Length > 0) yield return new("The yardstick", "one cheese, one recipe, twice", [.. verdict.Words.Yardsticks.Select(Said), .. charts.Where(chart => chart.Name.StartsWith("repeat", StringComparison.Ordinal)).Select(chart => (Block)new Figure(chart))]);
        if (verdict.Words.Tips.Length > 0) yield return new("What tips it", null, [.. verdict.Words.Tips.Select(Said)]);
        if (verdict.Said.Length > 0 || AskedTables.Of(verdict).Any()) yield return new("What was said", "never used to decide", [.. verdict.Words.Answers.Select(Said), .. AskedTables.Of(verdict), .. Quotes(verdict)]);
        if (verdict.Words.Serving.Length > 0) yield return new("The serving", null, [.. verdict.Words.Serving.Select(Said)]);
        yield return new("What next", null, [.. verdict.Words.Next.Select(Said)]);
        yield return new("Cannot be known", null, [.. verdict.Words.Limits.Concat(verdict.Cautions).Distinct(StringComparer.Ordinal).Select(Said)]);
        yield return new("Headlines", "three, each of them true", [new Listing([.. verdict.Words.Headlines.Select(Numbers.Sentence)])]);
        yield return new("How it was done", null, [.. MethodWords.Of(publication).Select(Said), VerdictTables.Pairs(verdict), VerdictTables.Variants(verdict)]);
    }

    private static Block Said(string sentence) => new Paragraph(Numbers.Sentence(sentence));

    private static IEnumerable<Block> Chart(ImmutableArray<VerdictChart> charts, string name) => charts.Where(chart => chart.Name == name).Select(chart => new Figure(chart));

    private static string RuleNote(Verdict verdict) => verdict.Record.Head.FromFile ? "average place, for a file fixes no rule" : $"rule fixed beforehand: {RuleName(verdict.Record.Plan.Rule)}";

    private static string RuleName(CountingRule rule) => rule switch
    {
        CountingRule.Firsts => "most firsts",
        CountingRule.PlacePoints points => $"place points {Numbers.Points(points.Weights)}",
        CountingRule.MeanLiking => "average liking",
        _ => "average place",
    };

    private static string Counted(Verdict verdict) =>
        $"{Numbers.Plain(verdict.Panel.Ballots)} {(verdict.Panel.Main == MainCount.CompleteBallots ? "complete " : "")}{(verdict.Panel.Ballots == 1 ? "ballot" : "ballots")}. Underlined: the best.";

    /// <summary>What was written, by consent only; the fondest first, so that opposites face each other.</summary>
    private static IEnumerable<Block> Quotes(Verdict verdict)
    {
        foreach (var said in verdict.Said)
        {
            var quotes = said.Remarks.Select(one => $"{string.Join(" ", new[] { one.Remark is null ? "" : $"“{one.Remark}”", string.Join(", ", one.Words) }.Where(word => word.Length > 0))} ({one.Taster}{(one.Place is { } place ? $", placed it {Numbers.Plain(place)}" : "")}{(one.Liking is { } liking ? $", liked it {Numbers.Plain(liking)}" : "")})");
            yield return new Paragraph($"Of {verdict.Sample(said.Id).Name}, quoted with leave:", Strong: true);
            yield return new Listing([.. quotes]);
        }
    }

    private static string Foot(Publication publication)
    {
        var verdict = publication.Verdict;
        var parts = new[]
        {
            verdict.Record.Head.Title,
            verdict.Record.Head.Invented ? "an invented trial: people and numbers are made up" : "",
            string.Create(CultureInfo.InvariantCulture, $"version {publication.Version}{(publication.Day is { } day ? $" of {day:dd'/'MM'/'yyyy}" : "")}"),
            $"methods {Verdict.MethodsVersion}, seed {verdict.Seed.ToString(CultureInfo.InvariantCulture)}",
        };
        return string.Join(" · ", parts.Where(part => part.Length > 0));
    }
}
