using System.Collections.Immutable;
using System.Globalization;

namespace Trier.Trials.Makes;

/// <summary>
/// What is known of a wheel, as named values in the maker's own words. Later stations add facts; none moves. Two sets of
/// facts are equal when every named value is.
/// </summary>
public sealed class WheelFacts : IEquatable<WheelFacts>
{
    /// <summary>Name of the fact that holds the recipe's name.</summary>
    public const string RecipeFact = "recipe";

    /// <summary>Name of the fact that holds the make date, as yyyy-MM-dd.</summary>
    public const string MadeFact = "made";

    /// <summary>Name of the fact that holds the milk: animal, litres, lot.</summary>
    public const string MilkFact = "milk";

    /// <summary>Name of the fact that holds what heat the milk went through: raw, pasteurised and so on.</summary>
    public const string HeatTreatmentFact = "heat treatment";

    /// <summary>Name of the fact that holds additives, such as lysozyme.</summary>
    public const string AdditivesFact = "additives";

    /// <summary>Name of the fact that holds allergens besides milk, comma separated, such as egg.</summary>
    public const string AllergensFact = "allergens";

    /// <summary>Name of the fact that holds weight and size.</summary>
    public const string SizeFact = "size";

    /// <summary>Name of the fact that holds what set the milk: calf, cardoon and so on.</summary>
    public const string CoagulantFact = "coagulant";

    /// <summary>Name of the fact that holds the rind: natural, washed, waxed and so on.</summary>
    public const string RindFact = "rind";

    /// <summary>Name of the fact that holds the cave it aged in.</summary>
    public const string CaveFact = "cave";

    /// <summary>Name of the fact that holds the day a wheel that is only planned should be made, as yyyy-MM-dd.</summary>
    public const string PlannedFact = "to be made";

    /// <summary>Name of the fact that holds notes.</summary>
    public const string NotesFact = "notes";

    /// <summary>Name of the fact that holds the name of its make: wheels of one vat share it.</summary>
    public const string MakeFact = "make";

    /// <summary>Name of the fact that holds the part of a split vat.</summary>
    public const string PartFact = "vat part";

    /// <summary>Name of the fact that holds what was done otherwise with this wheel than with the others of its vat.</summary>
    public const string DiffersFact = "done otherwise";

    /// <summary>Name of the fact that holds why a wheel is to be held back and not served.</summary>
    public const string HoldBackFact = "hold back";

    /// <summary>The facts a new wheel is asked for, in the order of the form.</summary>
    public static ImmutableArray<string> Asked { get; } =
        [RecipeFact, MadeFact, MilkFact, HeatTreatmentFact, CoagulantFact, AdditivesFact, AllergensFact, SizeFact, RindFact, CaveFact, NotesFact];

    private readonly ImmutableSortedDictionary<string, string> _values;

    private WheelFacts(ImmutableSortedDictionary<string, string> values) => _values = values;

    /// <summary>No fact at all.</summary>
    public static WheelFacts None { get; } = new(ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal));

    /// <summary>Gathers named values; blank ones are left out, spaces at the ends trimmed.</summary>
    /// <param name="values">Names and values; a name given twice keeps the last value.</param>
    public static WheelFacts Of(IEnumerable<KeyValuePair<string, string?>> values)
    {
        var gathered = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var (name, value) in values)
        {
            if (string.IsNullOrWhiteSpace(name) || string.IsNullOrWhiteSpace(value)) continue;
            gathered[name.Trim()] = value.Trim();
        }

        return gathered.Count == 0 ? None : new(gathered.ToImmutable());
    }

    /// <summary>All names and values, sorted by name.</summary>
    public IReadOnlyDictionary<string, string> Values => _values;

    /// <summary>The value of a fact, or null where nothing is recorded.</summary>
    /// <param name="name">The fact's name.</param>
    public string? this[string name] => _values.GetValueOrDefault(name);

    /// <summary>These facts after what stands behind them has changed; a value written by hand since stays.</summary>
    /// <param name="before">What the record behind them said.</param>
    /// <param name="after">What it says now.</param>
    public WheelFacts Following(WheelFacts before, WheelFacts after) => Of(
        _values.Where(pair => before[pair.Key] != pair.Value).Concat(after._values.Where(pair => this[pair.Key] is not { } stands || stands == before[pair.Key])).Select(pair => KeyValuePair.Create(pair.Key, (string?)pair.Value)));

    /// <summary>The recipe's name.</summary>
    public string? Recipe => this[RecipeFact];

    /// <summary>The make date, where it is recorded as yyyy-MM-dd.</summary>
    public DateOnly? MadeOn => Day(MadeFact);

    /// <summary>The day it was made or, where it is not made yet, should be.</summary>
    public DateOnly? MadeOrPlanned => MadeOn ?? Day(PlannedFact);

    /// <summary>Whether both wheels are known to be of one vat: by the name of their make, or, where one has none, by recipe and day.</summary>
    /// <param name="other">The facts of the other wheel.</param>
    public bool SameMake(WheelFacts other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (MadeOn is null || MadeOn != other.MadeOn) return false;
        return this[MakeFact] is { } make && other[MakeFact] is { } its
            ? string.Equals(make, its, StringComparison.OrdinalIgnoreCase)
            : Recipe is { } recipe && string.Equals(recipe, other.Recipe, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>The same facts but for one.</summary>
    /// <param name="name">The fact's name.</param>
    /// <param name="value">Its value from now on; null or blank takes it away.</param>
    public WheelFacts With(string name, string? value) => Of([.. _values.Where(fact => fact.Key != name).Select(fact => new KeyValuePair<string, string?>(fact.Key, fact.Value)), new(name, value)]);

    /// <summary>The facts guests are told before they taste, of all wheels together: milk, heat treatment, additives, allergens; no other fact.</summary>
    public WheelFacts ToldToGuests() => Of(_values.Where(fact => fact.Key is MilkFact or HeatTreatmentFact or AdditivesFact or AllergensFact).Select(fact => KeyValuePair.Create(fact.Key, (string?)fact.Value)));

    /// <summary>Allergens besides milk, each once, in the order written.</summary>
    public ImmutableArray<string> Allergens =>
        [.. (this[AllergensFact] ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Distinct(StringComparer.OrdinalIgnoreCase)];

    private DateOnly? Day(string name) =>
        DateOnly.TryParseExact(this[name], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    /// <inheritdoc/>
    public bool Equals(WheelFacts? other) => other is not null && _values.SequenceEqual(other._values);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as WheelFacts);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var (name, value) in _values)
        {
            hash.Add(name, StringComparer.Ordinal);
            hash.Add(value, StringComparer.Ordinal);
        }

        return hash.ToHashCode();
    }
}
