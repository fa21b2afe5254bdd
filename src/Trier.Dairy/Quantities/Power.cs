using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>A power.</summary>
public readonly record struct Power : IComparable<Power>
{
    private Power(double watts) => Watts = Finite.Required(watts, nameof(watts));

    /// <summary>In watts.</summary>
    public double Watts { get; }

    /// <summary>From watts; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Power FromWatts(double value) => new(value);

    /// <summary>The sum.</summary>
    public static Power operator +(Power left, Power right) => new(left.Watts + right.Watts);

    /// <summary>The difference; may be negative.</summary>
    public static Power operator -(Power left, Power right) => new(left.Watts - right.Watts);

    /// <summary>A multiple.</summary>
    public static Power operator *(Power left, double factor) => new(left.Watts * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(Power left, Power right) => left.Watts / right.Watts;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(Power left, Power right) => left.Watts < right.Watts;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(Power left, Power right) => left.Watts > right.Watts;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(Power left, Power right) => left.Watts <= right.Watts;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(Power left, Power right) => left.Watts >= right.Watts;

    /// <inheritdoc/>
    public int CompareTo(Power other) => Watts.CompareTo(other.Watts);

    /// <summary>The number in watts with its unit, in the invariant culture.</summary>
    public override string ToString() => Watts.ToString("0.######", CultureInfo.InvariantCulture) + " W";
}
