using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>The relative humidity of air over water.</summary>
public readonly record struct RelativeHumidity : IComparable<RelativeHumidity>
{
    private RelativeHumidity(double percent) => Percent = Finite.Required(percent, nameof(percent));

    /// <summary>In per cent.</summary>
    public double Percent { get; }

    /// <summary>From per cent; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static RelativeHumidity FromPercent(double value) => new(value);

    /// <summary>The sum.</summary>
    public static RelativeHumidity operator +(RelativeHumidity left, RelativeHumidity right) => new(left.Percent + right.Percent);

    /// <summary>The difference; may be negative.</summary>
    public static RelativeHumidity operator -(RelativeHumidity left, RelativeHumidity right) => new(left.Percent - right.Percent);

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(RelativeHumidity left, RelativeHumidity right) => left.Percent < right.Percent;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(RelativeHumidity left, RelativeHumidity right) => left.Percent > right.Percent;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(RelativeHumidity left, RelativeHumidity right) => left.Percent <= right.Percent;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(RelativeHumidity left, RelativeHumidity right) => left.Percent >= right.Percent;

    /// <inheritdoc/>
    public int CompareTo(RelativeHumidity other) => Percent.CompareTo(other.Percent);

    /// <summary>The number in per cent with its unit, in the invariant culture.</summary>
    public override string ToString() => Percent.ToString("0.######", CultureInfo.InvariantCulture) + " %";
}
