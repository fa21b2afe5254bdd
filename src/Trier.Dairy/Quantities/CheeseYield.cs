using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>A yield: kilograms of cheese from 100 kg of milk.</summary>
public readonly record struct CheeseYield : IComparable<CheeseYield>
{
    private CheeseYield(double kilogramsPer100Kilograms) => KilogramsPer100Kilograms = Finite.Required(kilogramsPer100Kilograms, nameof(kilogramsPer100Kilograms));

    /// <summary>In kilograms of cheese per 100 kg of milk.</summary>
    public double KilogramsPer100Kilograms { get; }

    /// <summary>From kilograms of cheese per 100 kg of milk; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static CheeseYield FromKilogramsPer100Kilograms(double value) => new(value);

    /// <summary>A multiple.</summary>
    public static CheeseYield operator *(CheeseYield left, double factor) => new(left.KilogramsPer100Kilograms * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(CheeseYield left, CheeseYield right) => left.KilogramsPer100Kilograms / right.KilogramsPer100Kilograms;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(CheeseYield left, CheeseYield right) => left.KilogramsPer100Kilograms < right.KilogramsPer100Kilograms;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(CheeseYield left, CheeseYield right) => left.KilogramsPer100Kilograms > right.KilogramsPer100Kilograms;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(CheeseYield left, CheeseYield right) => left.KilogramsPer100Kilograms <= right.KilogramsPer100Kilograms;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(CheeseYield left, CheeseYield right) => left.KilogramsPer100Kilograms >= right.KilogramsPer100Kilograms;

    /// <inheritdoc/>
    public int CompareTo(CheeseYield other) => KilogramsPer100Kilograms.CompareTo(other.KilogramsPer100Kilograms);

    /// <summary>The number in kilograms of cheese per 100 kg of milk with its unit, in the invariant culture.</summary>
    public override string ToString() => KilogramsPer100Kilograms.ToString("0.######", CultureInfo.InvariantCulture) + " kg/100 kg";
}
