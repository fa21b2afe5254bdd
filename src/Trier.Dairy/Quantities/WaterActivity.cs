using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>Water activity: 1 is pure water.</summary>
public readonly record struct WaterActivity : IComparable<WaterActivity>
{
    private WaterActivity(double value) => Value = Finite.Required(value, nameof(value));

    /// <summary>In parts of one.</summary>
    public double Value { get; }

    /// <summary>From parts of one; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static WaterActivity FromValue(double value) => new(value);

    /// <summary>The sum.</summary>
    public static WaterActivity operator +(WaterActivity left, WaterActivity right) => new(left.Value + right.Value);

    /// <summary>The difference; may be negative.</summary>
    public static WaterActivity operator -(WaterActivity left, WaterActivity right) => new(left.Value - right.Value);

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(WaterActivity left, WaterActivity right) => left.Value < right.Value;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(WaterActivity left, WaterActivity right) => left.Value > right.Value;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(WaterActivity left, WaterActivity right) => left.Value <= right.Value;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(WaterActivity left, WaterActivity right) => left.Value >= right.Value;

    /// <inheritdoc/>
    public int CompareTo(WaterActivity other) => Value.CompareTo(other.Value);

    /// <summary>The number in parts of one with its unit, in the invariant culture.</summary>
    public override string ToString() => Value.ToString("0.######", CultureInfo.InvariantCulture) + "";
}
