using System.Collections.Immutable;
using Trier.Trials.Makes;

namespace Trier.Trials.Tastings.Serving;

/// <summary>What guests are told before they come: allergens, milk and additives of all wheels together, so that no wheel is given away.</summary>
/// <param name="Allergens">Besides milk, each once, sorted.</param>
/// <param name="HeatTreatments">What heat the milks went through, each once, sorted.</param>
/// <param name="Milks">Animals, each once, sorted; amounts and lots are left out.</param>
/// <param name="Additives">Each once, sorted.</param>
/// <param name="TreatmentUnknown">For some wheel no heat treatment is recorded.</param>
public sealed record GuestLines(
    ImmutableArray<string> Allergens,
    ImmutableArray<string> HeatTreatments,
    ImmutableArray<string> Milks,
    ImmutableArray<string> Additives,
    bool TreatmentUnknown)
{
    /// <summary>Gathers the lines of some wheels.</summary>
    /// <param name="wheels">What is known of each.</param>
    public static GuestLines Of(IReadOnlyCollection<WheelFacts> wheels) => new(
        Each(wheels.SelectMany(facts => facts.Allergens)),
        Each(wheels.Select(facts => facts[WheelFacts.HeatTreatmentFact])),
        // Amount first, such as “10 litres, cow”, names no animal one could be sure of.
        Each(wheels.Select(facts => facts[WheelFacts.MilkFact]?.Split(',', ' ')[0] is { Length: > 0 } word && char.IsLetter(word[0]) ? word : null)),
        Each(wheels.Select(facts => facts[WheelFacts.AdditivesFact])),
        wheels.Any(facts => facts[WheelFacts.HeatTreatmentFact] is null));

    private static ImmutableArray<string> Each(IEnumerable<string?> words) =>
        [.. words.OfType<string>().Select(word => word.Trim()).Where(word => word.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase)];
}
