using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>How fast a temperature rises.</summary>
public readonly record struct HeatingRate : IComparable<HeatingRate>
{
    private HeatingRate(double degreesPerMinute) => DegreesPerMinute = Finite.Required(degreesPerMinute, nameof(degreesPerMinute));

    /// <summary>In degrees Celsius per minute.</summary>
    public double DegreesPerMinute { get; }

    /// <summary>In degrees Fahrenheit per minute.</summary>
    public double FahrenheitPerMinute => DegreesPerMinute / (5.0 / 9);

    /// <summary>From degrees Celsius per minute; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static HeatingRate FromDegreesPerMinute(double value) => new(value);

    /// <summary>The sum.</summary>
    public static HeatingRate operator +(HeatingRate left, HeatingRate right) => new(left.DegreesPerMinute + right.DegreesPerMinute);

    /// <summary>The difference; may be negative.</summary>
    public static HeatingRate operator -(HeatingRate left, HeatingRate right) => new(left.DegreesPerMinute - right.DegreesPerMinute);

    /// <summary>A multiple.</summary>
    public static HeatingRate operator *(HeatingRate left, double factor) => new(left.DegreesPerMinute * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(HeatingRate left, HeatingRate right) => left.DegreesPerMinute / right.DegreesPerMinute;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(HeatingRate left, HeatingRate right) => left.DegreesPerMinute < right.DegreesPerMinute;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(HeatingRate left, HeatingRate right) => left.DegreesPerMinute > right.DegreesPerMinute;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(HeatingRate left, HeatingRate right) => left.DegreesPerMinute <= right.DegreesPerMinute;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(HeatingRate left, HeatingRate right) => left.DegreesPerMinute >= right.DegreesPerMinute;

    /// <inheritdoc/>
    public int CompareTo(HeatingRate other) => DegreesPerMinute.CompareTo(other.DegreesPerMinute);

    /// <summary>The number in degrees Celsius per minute with its unit, in the invariant culture.</summary>
    public override string ToString() => DegreesPerMinute.ToString("0.######", CultureInfo.InvariantCulture) + " C/min";
}
