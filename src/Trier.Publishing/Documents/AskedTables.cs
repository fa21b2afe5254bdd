using System.Collections.Immutable;
using Trier.Publishing.Writing;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Documents;

/// <summary>What was asked besides places and liking, as tables of counts by wheel. Never a test, never beside a person.</summary>
internal static class AskedTables
{
    public static IEnumerable<Block> Of(Verdict verdict)
    {
        if (!verdict.Salt.IsEmpty) yield return Amounts(verdict, "salt", verdict.Salt);
        foreach (var property in verdict.Properties) yield return Amounts(verdict, property.Property, property.Wheels);
        if (!verdict.Again.IsEmpty)
        {
            yield return new Table(
                "Would you serve it again? How many said yes, of those who answered. A count, not a test.",
                [new("wheel", Number: false), new("yes"), new("of")],
                [.. verdict.Again.Select(line => (ImmutableArray<Cell>)[VerdictTables.Wheel(verdict, line.Id), new(Numbers.Plain(line.Yes)), new(Numbers.Plain(line.Answers))])]);
        }

        // A word that one taster ticked stands in what they are quoted with.
        var shared = verdict.WordCounts.Where(word => word.Ticks.Max() > 1).ToList();
        if (shared.Count == 0) yield break;
        yield return new Table(
            "Words that two or more ticked for the same wheel, of those who agreed to be quoted. Counts, not tests.",
            [new("word", Number: false), .. verdict.Wheels.Select(wheel => new Head(wheel.Name))],
            [.. shared.Select(word => (ImmutableArray<Cell>)[new(word.Word), .. word.Ticks.Select(ticks => new Cell(Numbers.Plain(ticks)))])]);
    }

    private static Table Amounts(Verdict verdict, string property, IEnumerable<SaltFinding> lines)
    {
        string Counted(int count, double? liking) => liking is { } mean ? $"{Numbers.Plain(count)} (liked {Numbers.Places(mean, 1)})" : Numbers.Plain(count);
        var rows = lines.ToList();
        var liked = rows.Exists(line => line.LikingWhereRight is not null) ? ", and how they liked the wheel on average" : "";
        return new(
            $"Was the {property} right? How many said so{liked}. Counts, not tests.",
            [new("wheel", Number: false), new("too little"), new("just right"), new("too much")],
            [.. rows.Select(line => (ImmutableArray<Cell>)[VerdictTables.Wheel(verdict, line.Id), new(Counted(line.TooLittle.Count, line.TooLittle.Drop?.MeanLiking)), new(Counted(line.JustRight, line.LikingWhereRight)), new(Counted(line.TooMuch.Count, line.TooMuch.Drop?.MeanLiking))])]);
    }
}
