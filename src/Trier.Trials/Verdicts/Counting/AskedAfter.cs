using System.Collections.Immutable;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>What was asked after the places, besides salt: counts of everyone who tasted blind and counts by plan. Never tested.</summary>
internal static class AskedAfter
{
    public static ImmutableArray<PropertyFinding> Properties(Electorate electorate, ImmutableArray<SampleRecord> wheels) =>
        electorate.Record.Asked is { } counted
            ? [.. counted.Properties.Select(property => new PropertyFinding(property.Property, [.. wheels.Select(wheel => Told(property, wheel.Id))]))]
            : [.. All(electorate).SelectMany(answer => answer.Right?.Keys ?? []).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
                .Select(property => new PropertyFinding(property, [.. wheels.Select(wheel => Answering.Amounts(electorate, wheel.Id, property))]))];

    public static ImmutableArray<AgainFinding> Again(Electorate electorate, ImmutableArray<SampleRecord> wheels)
    {
        var found = wheels.Select(wheel => electorate.Record.Asked is { } counted
            ? counted.Again.FirstOrDefault(line => line.Id == wheel.Id) ?? new(wheel.Id, 0, 0)
            : Counted(wheel.Id, [.. Of(electorate, wheel.Id).Select(answer => answer.Again).OfType<bool>()])).ToImmutableArray();
        return found.Any(line => line.Answers > 0) ? found : [];
    }

    public static ImmutableArray<WordFinding> Words(Electorate electorate, ImmutableArray<SampleRecord> wheels) =>
        [.. All(electorate).SelectMany(answer => answer.Words).Distinct(StringComparer.Ordinal)
            .Select(word => new WordFinding(word, [.. wheels.Select(wheel => Of(electorate, wheel.Id).Count(answer => answer.Words.Contains(word, StringComparer.Ordinal)))]))
            .OrderByDescending(word => word.Ticks.Sum()).ThenBy(word => word.Word, StringComparer.Ordinal)];

    /// <summary>The counts without who gave them; null where nothing of this was asked.</summary>
    public static AskedCounts? Counts(TastingRecord record)
    {
        if (record.Asked is { } counted) return counted;
        var electorate = new Electorate(record);
        var counts = new AskedCounts(
            [.. Properties(electorate, electorate.Wheels).Select(property => new PropertyCounts(property.Property, [.. property.Wheels.Select(line => new AmountCounts(line.Id, line.TooLittle.Count, line.JustRight, line.TooMuch.Count))]))],
            Again(electorate, electorate.Wheels),
            Unclear(record));
        return counts is { Properties.IsEmpty: true, Again.IsEmpty: true, Unclear: 0 } ? null : counts;
    }

    public static int Unclear(TastingRecord record) => record.Asked?.Unclear ?? record.Voters.Count(voter => voter.Marks.HasFlag(VoterMarks.Unclear));

    public static IEnumerable<SampleAnswer> Of(Electorate electorate, string id) =>
        electorate.Voters.Where(electorate.CountsByPlan).Select(voter => voter.Answers.GetValueOrDefault(id)).OfType<SampleAnswer>();

    private static IEnumerable<SampleAnswer> All(Electorate electorate) => electorate.Wheels.SelectMany(wheel => Of(electorate, wheel.Id));

    private static AgainFinding Counted(string id, List<bool> answers) => new(id, answers.Count(yes => yes), answers.Count);

    private static SaltFinding Told(PropertyCounts property, string id)
    {
        var line = property.Wheels.FirstOrDefault(wheel => wheel.Id == id);
        return new(id, new(line?.TooLittle ?? 0, null), line?.JustRight ?? 0, null, new(line?.TooMuch ?? 0, null));
    }
}
