using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>Carbon dioxide held by a cheese.</summary>
public readonly record struct GasContent : IComparable<GasContent>
{
    private GasContent(double millimolesPerKilogram) => MillimolesPerKilogram = Finite.Required(millimolesPerKilogram, nameof(millimolesPerKilogram));

    /// <summary>In millimoles per kilogram.</summary>
    public double MillimolesPerKilogram { get; }

    /// <summary>From millimoles per kilogram; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static GasContent FromMillimolesPerKilogram(double value) => new(value);

    /// <summary>The sum.</summary>
    public static GasContent operator +(GasContent left, GasContent right) => new(left.MillimolesPerKilogram + right.MillimolesPerKilogram);

    /// <summary>The difference; may be negative.</summary>
    public static GasContent operator -(GasContent left, GasContent right) => new(left.MillimolesPerKilogram - right.MillimolesPerKilogram);

    /// <summary>A multiple.</summary>
    public static GasContent operator *(GasContent left, double factor) => new(left.MillimolesPerKilogram * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(GasContent left, GasContent right) => left.MillimolesPerKilogram / right.MillimolesPerKilogram;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(GasContent left, GasContent right) => left.MillimolesPerKilogram < right.MillimolesPerKilogram;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(GasContent left, GasContent right) => left.MillimolesPerKilogram > right.MillimolesPerKilogram;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(GasContent left, GasContent right) => left.MillimolesPerKilogram <= right.MillimolesPerKilogram;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(GasContent left, GasContent right) => left.MillimolesPerKilogram >= right.MillimolesPerKilogram;

    /// <inheritdoc/>
    public int CompareTo(GasContent other) => MillimolesPerKilogram.CompareTo(other.MillimolesPerKilogram);

    /// <summary>The number in millimoles per kilogram with its unit, in the invariant culture.</summary>
    public override string ToString() => MillimolesPerKilogram.ToString("0.######", CultureInfo.InvariantCulture) + " mmol/kg";
}
