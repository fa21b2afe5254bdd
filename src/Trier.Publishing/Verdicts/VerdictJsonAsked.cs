using System.Text.Json;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Verdicts;

/// <summary>The part of the JSON about what was asked besides places and liking, counted by wheel; and who tasted together.</summary>
internal static class VerdictJsonAsked
{
    public static void Write(Utf8JsonWriter json, Verdict verdict)
    {
        json.Objects("salt", verdict.Salt, line => Amounts(json, line));
        json.Objects("properties", verdict.Properties, property =>
        {
            json.WriteString("property", property.Property);
            json.Objects("samples", property.Wheels, line => Amounts(json, line));
        });
        json.Objects("again", verdict.Again, line =>
        {
            json.WriteString("id", line.Id);
            json.WriteNumber("yes", line.Yes);
            json.WriteNumber("answers", line.Answers);
        });
        json.Objects("wordCounts", verdict.WordCounts, word =>
        {
            json.WriteString("word", word.Word);
            json.Objects("samples", verdict.Wheels.Zip(word.Ticks), pair =>
            {
                json.WriteString("id", pair.First.Id);
                json.WriteNumber("ticks", pair.Second);
            });
        });
        json.WriteNumber("unclear", verdict.Unclear);
        // A group may be called after a person: who belongs together is told, what they are called is not.
        var groups = verdict.Record.Voters.Where(voter => voter.Group is not null)
            .GroupBy(voter => voter.Group, voter => voter.Id, StringComparer.OrdinalIgnoreCase)
            .Select(group => group.Order(StringComparer.Ordinal).ToList())
            .OrderBy(group => group[0], StringComparer.Ordinal);
        json.Objects("groups", groups, group => json.Texts("tasters", group));
    }

    private static void Amounts(Utf8JsonWriter json, SaltFinding line)
    {
        json.WriteString("id", line.Id);
        json.Object("tooLittle", line.TooLittle, group => Amiss(json, group));
        json.WriteNumber("justRight", line.JustRight);
        json.Number("meanLikingWhereRight", line.LikingWhereRight);
        json.Object("tooMuch", line.TooMuch, group => Amiss(json, group));
    }

    private static void Amiss(Utf8JsonWriter json, SaltGroup group)
    {
        json.WriteNumber("count", group.Count);
        json.Number("meanLiking", group.Drop?.MeanLiking);
        json.Number("drop", group.Drop?.Drop);
        json.Between("dropInterval", group.Drop?.Interval);
    }
}
