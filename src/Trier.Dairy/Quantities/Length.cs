using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>A length. One inch is 25.4 mm, exact by definition.</summary>
public readonly record struct Length : IComparable<Length>
{
    private Length(double metres) => Metres = Finite.Required(metres, nameof(metres));

    /// <summary>In metres.</summary>
    public double Metres { get; }

    /// <summary>In centimetres.</summary>
    public double Centimetres => Metres / 1e-2;

    /// <summary>In millimetres.</summary>
    public double Millimetres => Metres / 1e-3;

    /// <summary>In inches.</summary>
    public double Inches => Metres / 0.0254;

    /// <summary>From metres; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Length FromMetres(double value) => new(value);

    /// <summary>From centimetres; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Length FromCentimetres(double value) => new(value * 1e-2);

    /// <summary>From millimetres; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Length FromMillimetres(double value) => new(value * 1e-3);

    /// <summary>From inches; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Length FromInches(double value) => new(value * 0.0254);

    /// <summary>The sum.</summary>
    public static Length operator +(Length left, Length right) => new(left.Metres + right.Metres);

    /// <summary>The difference; may be negative.</summary>
    public static Length operator -(Length left, Length right) => new(left.Metres - right.Metres);

    /// <summary>A multiple.</summary>
    public static Length operator *(Length left, double factor) => new(left.Metres * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(Length left, Length right) => left.Metres / right.Metres;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(Length left, Length right) => left.Metres < right.Metres;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(Length left, Length right) => left.Metres > right.Metres;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(Length left, Length right) => left.Metres <= right.Metres;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(Length left, Length right) => left.Metres >= right.Metres;

    /// <inheritdoc/>
    public int CompareTo(Length other) => Metres.CompareTo(other.Metres);

    /// <summary>The number in metres with its unit, in the invariant culture.</summary>
    public override string ToString() => Metres.ToString("0.######", CultureInfo.InvariantCulture) + " m";
}
