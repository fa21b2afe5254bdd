using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Trier.Trials.Makes;

namespace Trier.Trials.Plans.Factors;

/// <summary>
/// Reads from the facts of wheels what may differ between them. Ages are put into bands of 14 days, counted from the youngest wheel and then from the youngest outside the band before; weights into
/// bands of a fifth, counted from the lightest in the same way. All else is alike where its words are.
/// </summary>
public static partial class WheelFactors
{
    /// <summary>Ages nearer than this count as alike.</summary>
    public const int AgeBandDays = 14;

    /// <summary>Weights within this ratio count as alike.</summary>
    public const double SizeBand = 1.2;

    private const string Nothing = "nothing noted";
    private const string VatDayPrefix = "vat day, step ";
    private const string DoneOtherwise = "done otherwise";
    private const string Lysozyme = "lysozyme";

    private static readonly ImmutableHashSet<string> Apart =
        [WheelFacts.RecipeFact, WheelFacts.MadeFact, WheelFacts.PlannedFact, WheelFacts.AdditivesFact, WheelFacts.AllergensFact, WheelFacts.SizeFact, WheelFacts.NotesFact, WheelFacts.HoldBackFact];

    /// <summary>Everything recorded of at least one wheel, the recipe first.</summary>
    /// <param name="wheels">The wheels.</param>
    /// <param name="day">Day of the tasting; without it the make date stands for the age.</param>
    public static ImmutableArray<WheelFactor> Of(ImmutableArray<PlannedWheel> wheels, DateOnly? day)
    {
        var found = new List<WheelFactor> { Words(FactorKind.Recipe, "recipe", [.. wheels.Select(wheel => (string?)wheel.Recipe)]) };
        if (Age(wheels, day) is { } age) found.Add(age);
        if (Size(wheels) is { } size) found.Add(size);
        found.AddRange(Additives(wheels));
        if (Years(wheels) is { } years) found.Add(years);
        foreach (var name in wheels.SelectMany(wheel => wheel.Facts.Values.Keys).Where(name => !Apart.Contains(name)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            var noted = name.StartsWith(VatDayPrefix, StringComparison.Ordinal) || name == DoneOtherwise;
            ImmutableArray<string?> values = [.. wheels.Select(wheel => wheel.Facts[name] ?? (noted ? Nothing : null))];
            found.Add(Words(KindOf(name), noted ? VatDayName(name) : name, values));
        }

        return [.. found.OrderBy(factor => factor.Kind)];
    }

    private static FactorKind KindOf(string name) => name switch
    {
        WheelFacts.HeatTreatmentFact => FactorKind.HeatTreatment,
        WheelFacts.CoagulantFact => FactorKind.Coagulant,
        WheelFacts.RindFact => FactorKind.Rind,
        WheelFacts.CaveFact => FactorKind.Cave,
        WheelFacts.MilkFact or "milk lot" => FactorKind.Milk,
        _ when name.StartsWith(VatDayPrefix, StringComparison.Ordinal) || name == DoneOtherwise => FactorKind.VatDay,
        _ => FactorKind.Other,
    };

    /// <summary>"vat day, step 7, cut" is told as "step 7, cut".</summary>
    private static string VatDayName(string name) => name.StartsWith(VatDayPrefix, StringComparison.Ordinal) ? name["vat day, ".Length..] : name;

    private static WheelFactor Words(FactorKind kind, string name, ImmutableArray<string?> values) =>
        new(kind, name, values, [.. values.Select(value => value?.Trim().ToLowerInvariant())], []);

    private static WheelFactor? Age(ImmutableArray<PlannedWheel> wheels, DateOnly? day)
    {
        ImmutableArray<DateOnly?> made = [.. wheels.Select(wheel => wheel.Facts.MadeOrPlanned)];
        if (made.All(one => one is null)) return null;
        var from = day ?? made.Max()!.Value;
        ImmutableArray<double?> days = [.. made.Select(one => one is { } date ? (double?)(from.DayNumber - date.DayNumber) : null)];
        ImmutableArray<string?> values = [.. made.Select((one, i) => one is not { } date ? null : day is null ? date.ToString("dd/MM/yyyy", CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"{days[i]} days{(wheels[i].Facts.MadeOn is null ? ", planned" : "")}"))];
        return new(FactorKind.Age, day is null ? "make date" : "age", values, Bands(days, (lowest, number) => number - lowest < AgeBandDays), days);
    }

    private static WheelFactor? Size(ImmutableArray<PlannedWheel> wheels)
    {
        ImmutableArray<string?> values = [.. wheels.Select(wheel => wheel.Facts[WheelFacts.SizeFact])];
        if (values.All(value => value is null)) return null;
        ImmutableArray<double?> kilograms = [.. values.Select(Kilograms)];
        // Where one size is no weight, words are compared with words.
        return values.Zip(kilograms).Any(pair => pair is { First: not null, Second: null })
            ? Words(FactorKind.Size, "size", values)
            : new(FactorKind.Size, "size", values, Bands(kilograms, (lowest, number) => number <= SizeBand * lowest * (1 + 1e-12)), kilograms);
    }

    private static double? Kilograms(string? text)
    {
        if (text is null || Weight().Match(text) is not { Success: true } match) return null;
        var number = double.Parse(match.Groups["number"].Value.Replace(',', '.'), CultureInfo.InvariantCulture);
        var kilograms = match.Groups["unit"].Value.StartsWith('k') ? number : number / 1000;
        return kilograms > 0 ? kilograms : null;
    }

    private static IEnumerable<WheelFactor> Additives(ImmutableArray<PlannedWheel> wheels)
    {
        var parts = wheels.Select(wheel => (wheel.Facts[WheelFacts.AdditivesFact] ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)).ToList();
        static bool Is(string part) => part.Contains(Lysozyme, StringComparison.OrdinalIgnoreCase);
        if (parts.Any(list => list.Any(Is))) yield return Words(FactorKind.Lysozyme, Lysozyme, [.. parts.Select(list => list.Any(Is) ? "yes" : "none noted")]);
        var others = parts.Select(list => string.Join(", ", list.Where(part => !Is(part)))).ToList();
        if (others.Any(other => other.Length > 0)) yield return Words(FactorKind.Additives, "additives", [.. others.Select(other => other.Length == 0 ? "none noted" : other)]);
    }

    private static WheelFactor? Years(ImmutableArray<PlannedWheel> wheels)
    {
        ImmutableArray<string?> years = [.. wheels.Select(wheel => wheel.Facts.MadeOrPlanned?.Year.ToString(CultureInfo.InvariantCulture))];
        return years.OfType<string>().Distinct(StringComparer.Ordinal).Count() > 1 ? Words(FactorKind.MilkYear, "milk year", years) : null;
    }

    private static ImmutableArray<string?> Bands(ImmutableArray<double?> numbers, Func<double, double, bool> within)
    {
        var band = new Dictionary<double, int>();
        var (lowest, count) = (0.0, 0);
        foreach (var number in numbers.OfType<double>().Distinct().Order())
        {
            if (count == 0 || !within(lowest, number)) (lowest, count) = (number, count + 1);
            band.Add(number, count);
        }

        return [.. numbers.Select(number => number is { } known ? string.Create(CultureInfo.InvariantCulture, $"band {band[known]}") : null)];
    }

    [GeneratedRegex(@"(?<number>\d+(?:[.,]\d+)?)\s*(?:(?:to|→|–|-)\s*\d+(?:[.,]\d+)?\s*)?(?<unit>kg|g)\b", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex Weight();
}
