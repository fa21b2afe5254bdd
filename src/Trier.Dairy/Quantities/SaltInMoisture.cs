using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>Salt against moisture, S/M: grams of salt to 100 g of moisture. Not the salt share of the brine phase, S/(S+M).</summary>
public readonly record struct SaltInMoisture : IComparable<SaltInMoisture>
{
    private SaltInMoisture(double gramsPer100Grams) => GramsPer100Grams = Finite.Required(gramsPer100Grams, nameof(gramsPer100Grams));

    /// <summary>In grams of salt per 100 g of moisture.</summary>
    public double GramsPer100Grams { get; }

    /// <summary>From grams of salt per 100 g of moisture; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static SaltInMoisture FromGramsPer100Grams(double value) => new(value);

    /// <summary>A multiple.</summary>
    public static SaltInMoisture operator *(SaltInMoisture left, double factor) => new(left.GramsPer100Grams * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(SaltInMoisture left, SaltInMoisture right) => left.GramsPer100Grams / right.GramsPer100Grams;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(SaltInMoisture left, SaltInMoisture right) => left.GramsPer100Grams < right.GramsPer100Grams;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(SaltInMoisture left, SaltInMoisture right) => left.GramsPer100Grams > right.GramsPer100Grams;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(SaltInMoisture left, SaltInMoisture right) => left.GramsPer100Grams <= right.GramsPer100Grams;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(SaltInMoisture left, SaltInMoisture right) => left.GramsPer100Grams >= right.GramsPer100Grams;

    /// <inheritdoc/>
    public int CompareTo(SaltInMoisture other) => GramsPer100Grams.CompareTo(other.GramsPer100Grams);

    /// <summary>The number in grams of salt per 100 g of moisture with its unit, in the invariant culture.</summary>
    public override string ToString() => GramsPer100Grams.ToString("0.######", CultureInfo.InvariantCulture) + " g/100 g moisture";
}
