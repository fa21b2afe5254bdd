using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>How fast the pH falls: positive when it falls.</summary>
public readonly record struct PhRate : IComparable<PhRate>
{
    private PhRate(double unitsPerHour) => UnitsPerHour = Finite.Required(unitsPerHour, nameof(unitsPerHour));

    /// <summary>In pH units per hour.</summary>
    public double UnitsPerHour { get; }

    /// <summary>From pH units per hour; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static PhRate FromUnitsPerHour(double value) => new(value);

    /// <summary>The ratio of two.</summary>
    public static double operator /(PhRate left, PhRate right) => left.UnitsPerHour / right.UnitsPerHour;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(PhRate left, PhRate right) => left.UnitsPerHour < right.UnitsPerHour;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(PhRate left, PhRate right) => left.UnitsPerHour > right.UnitsPerHour;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(PhRate left, PhRate right) => left.UnitsPerHour <= right.UnitsPerHour;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(PhRate left, PhRate right) => left.UnitsPerHour >= right.UnitsPerHour;

    /// <inheritdoc/>
    public int CompareTo(PhRate other) => UnitsPerHour.CompareTo(other.UnitsPerHour);

    /// <summary>The number in pH units per hour with its unit, in the invariant culture.</summary>
    public override string ToString() => UnitsPerHour.ToString("0.######", CultureInfo.InvariantCulture) + " pH/h";
}
