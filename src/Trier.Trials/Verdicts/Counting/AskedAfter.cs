using System.Collections.Immutable;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>What was asked after the places, besides salt: counts of everyone who tasted blind and counts by plan. Never tested.</summary>
internal static class AskedAfter
{
    public static ImmutableArray<PropertyFinding> Properties(Electorate electorate, ImmutableArray<SampleRecord> wheels) =>
        [.. All(electorate).SelectMany(answer => answer.Right?.Keys ?? []).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Select(property => new PropertyFinding(property, [.. wheels.Select(wheel => Answering.Amounts(electorate, wheel.Id, property))]))];

    public static ImmutableArray<AgainFinding> Again(Electorate electorate, ImmutableArray<SampleRecord> wheels)
    {
        var found = wheels.Select(wheel => Of(electorate, wheel.Id).Select(answer => answer.Again).OfType<bool>().ToList())
            .Select((answers, at) => new AgainFinding(wheels[at].Id, answers.Count(yes => yes), answers.Count)).ToImmutableArray();
        return found.Any(line => line.Answers > 0) ? found : [];
    }

    public static ImmutableArray<WordFinding> Words(Electorate electorate, ImmutableArray<SampleRecord> wheels) =>
        [.. All(electorate).SelectMany(answer => answer.Words).Distinct(StringComparer.Ordinal)
            .Select(word => new WordFinding(word, [.. wheels.Select(wheel => Of(electorate, wheel.Id).Count(answer => answer.Words.Contains(word, StringComparer.Ordinal)))]))
            .OrderByDescending(word => word.Ticks.Sum()).ThenBy(word => word.Word, StringComparer.Ordinal)];

    public static IEnumerable<SampleAnswer> Of(Electorate electorate, string id) =>
        electorate.Voters.Where(electorate.CountsByPlan).Select(voter => voter.Answers.GetValueOrDefault(id)).OfType<SampleAnswer>();

    private static IEnumerable<SampleAnswer> All(Electorate electorate) => electorate.Wheels.SelectMany(wheel => Of(electorate, wheel.Id));
}
