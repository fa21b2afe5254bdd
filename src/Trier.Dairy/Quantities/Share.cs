using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>A part of a whole by mass: fat of milk, moisture of cheese, salt of brine.</summary>
public readonly record struct Share : IComparable<Share>
{
    private Share(double fraction) => Fraction = Finite.Required(fraction, nameof(fraction));

    /// <summary>In parts of one.</summary>
    public double Fraction { get; }

    /// <summary>In per cent by mass.</summary>
    public double Percent => Fraction / 1e-2;

    /// <summary>From parts of one; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Share FromFraction(double value) => new(value);

    /// <summary>From per cent by mass; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Share FromPercent(double value) => new(value * 1e-2);

    /// <summary>The sum.</summary>
    public static Share operator +(Share left, Share right) => new(left.Fraction + right.Fraction);

    /// <summary>The difference; may be negative.</summary>
    public static Share operator -(Share left, Share right) => new(left.Fraction - right.Fraction);

    /// <summary>A multiple.</summary>
    public static Share operator *(Share left, double factor) => new(left.Fraction * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(Share left, Share right) => left.Fraction / right.Fraction;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(Share left, Share right) => left.Fraction < right.Fraction;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(Share left, Share right) => left.Fraction > right.Fraction;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(Share left, Share right) => left.Fraction <= right.Fraction;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(Share left, Share right) => left.Fraction >= right.Fraction;

    /// <inheritdoc/>
    public int CompareTo(Share other) => Fraction.CompareTo(other.Fraction);

    /// <summary>The number in parts of one with its unit, in the invariant culture.</summary>
    public override string ToString() => Fraction.ToString("0.######", CultureInfo.InvariantCulture) + "";
}
