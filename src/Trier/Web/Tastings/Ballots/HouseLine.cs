using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Tastings;

namespace Trier.Web.Tastings.Ballots;

/// <summary>
/// What guests are told before tasting, of all samples together: milk, what was done to it, additives, allergens. Never by code or wheel, so
/// that it spoils nothing.
/// </summary>
/// <param name="Milks">Kinds of milk.</param>
/// <param name="Treatments">What the milk went through.</param>
/// <param name="TreatmentUnknown">Whether that is not written down for one cheese at least.</param>
/// <param name="InEvery">Allergens and additives in every cheese, besides milk.</param>
/// <param name="InSome">Allergens and additives in one cheese at least.</param>
public sealed partial record HouseLine(
    ImmutableArray<string> Milks,
    ImmutableArray<string> Treatments,
    bool TreatmentUnknown,
    ImmutableArray<string> InEvery,
    ImmutableArray<string> InSome)
{
    /// <summary>
    /// Whether one cheese at least is recorded with anything but pasteurised milk: raw, thermised, or words this program does not know. Where
    /// nothing is recorded the line says so itself.
    /// </summary>
    public bool Raw => Treatments.Any(treatment => !Heated(treatment));

    /// <summary>Gathers the line of a tasting.</summary>
    /// <param name="book">The tasting; withdrawn wheels do not speak.</param>
    public static HouseLine Of(DayBook book)
    {
        var facts = book.Standing.Select(entry => entry.Facts).ToList();
        var inside = facts.ConvertAll(Inside);
        var all = Distinct(inside.SelectMany(things => things));
        var every = all.Where(thing => inside.TrueForAll(things => things.Contains(thing, StringComparer.OrdinalIgnoreCase))).ToImmutableArray();
        return new HouseLine(
            Distinct(facts.Select(fact => Kind(fact[WheelFacts.MilkFact])).OfType<string>()),
            Distinct(facts.Select(fact => fact[WheelFacts.HeatTreatmentFact]).OfType<string>()),
            facts.Exists(fact => fact[WheelFacts.HeatTreatmentFact] is null),
            every,
            [.. all.Except(every, StringComparer.OrdinalIgnoreCase)]);
    }

    /// <summary>How a form names raw milk among the things somebody may not eat.</summary>
    public const string RawMilk = "raw milk";

    /// <summary>Whether raw milk, or milk not known as pasteurised, tells some cheeses from the others.</summary>
    /// <param name="book">The tasting; withdrawn wheels do not speak.</param>
    public static bool SomeRaw(DayBook book) => book.Standing.Select(IsRaw).Distinct().Count() > 1;

    /// <summary>The wheels that hold one of the things somebody may not eat.</summary>
    /// <param name="book">The tasting.</param>
    /// <param name="things">As the form names them.</param>
    public static ImmutableArray<WheelId> Holding(DayBook book, IReadOnlyCollection<string> things) =>
        [.. book.Standing
            .Where(entry => Inside(entry.Facts).Exists(thing => things.Contains(thing, StringComparer.OrdinalIgnoreCase)) || (things.Contains(RawMilk, StringComparer.Ordinal) && IsRaw(entry)))
            .Select(entry => entry.Wheel)];

    private static bool IsRaw(Entry entry) => entry.Facts[WheelFacts.HeatTreatmentFact] is not { } treatment || !Heated(treatment);

    // A list of what raw milk is called in every language would never be whole, so only plain words for pasteurised milk keep the caution away.
    private static bool Heated(string treatment) => Pasteurised().IsMatch(treatment);

    [GeneratedRegex(@"^\W*(pasteuri[sz]ed|pasteuris[eé]e?|pasteurisiert|pastorizzato|pasteurizad[oa])\b(?!.*\b(not|un|raw|cru|crudo|roh)\b)", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Pasteurised();

    // Litres and lots tell vats apart; guests are told the animal alone.
    private static string? Kind(string? milk)
    {
        var kind = Amount().Replace((milk ?? "").Split(',', ';', '(')[0], "").Trim();
        return kind.Length == 0 ? null : kind;
    }

    [GeneratedRegex(@"\d+([.,]\d+)?\s*(l|litres?|liters?|ml|kg|gallons?|quarts?)?(\s+of)?\b", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Amount();

    private static List<string> Inside(WheelFacts facts) =>
        [.. (facts[WheelFacts.AdditivesFact] ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries), .. facts.Allergens];

    // Sorted, so that the order of the wheels tells nothing.
    private static ImmutableArray<string> Distinct(IEnumerable<string> texts) =>
        [.. texts.Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase)];
}
