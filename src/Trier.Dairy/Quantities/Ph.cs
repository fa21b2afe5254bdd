using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>A pH.</summary>
public readonly record struct Ph : IComparable<Ph>
{
    private Ph(double value) => Value = Finite.Required(value, nameof(value));

    /// <summary>In pH units.</summary>
    public double Value { get; }

    /// <summary>From pH units; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Ph FromValue(double value) => new(value);

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(Ph left, Ph right) => left.Value < right.Value;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(Ph left, Ph right) => left.Value > right.Value;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(Ph left, Ph right) => left.Value <= right.Value;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(Ph left, Ph right) => left.Value >= right.Value;

    /// <inheritdoc/>
    public int CompareTo(Ph other) => Value.CompareTo(other.Value);

    /// <summary>The number in pH units with its unit, in the invariant culture.</summary>
    public override string ToString() => Value.ToString("0.######", CultureInfo.InvariantCulture) + "";
}
