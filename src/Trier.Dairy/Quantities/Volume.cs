using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>A volume. One US gallon is 3.785411784 L and one imperial gallon 4.54609 L, exact by definition.</summary>
public readonly record struct Volume : IComparable<Volume>
{
    private Volume(double litres) => Litres = Finite.Required(litres, nameof(litres));

    /// <summary>In litres.</summary>
    public double Litres { get; }

    /// <summary>In millilitres.</summary>
    public double Millilitres => Litres / 1e-3;

    /// <summary>In cubic centimetres.</summary>
    public double CubicCentimetres => Litres / 1e-3;

    /// <summary>In cubic metres.</summary>
    public double CubicMetres => Litres / 1e3;

    /// <summary>In US gallons.</summary>
    public double UsGallons => Litres / 3.785411784;

    /// <summary>In US quarts.</summary>
    public double UsQuarts => Litres / 0.946352946;

    /// <summary>In US teaspoons.</summary>
    public double UsTeaspoons => Litres / 0.00492892159375;

    /// <summary>From litres; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Volume FromLitres(double value) => new(value);

    /// <summary>From millilitres; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Volume FromMillilitres(double value) => new(value * 1e-3);

    /// <summary>From cubic metres; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Volume FromCubicMetres(double value) => new(value * 1e3);

    /// <summary>From US gallons; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Volume FromUsGallons(double value) => new(value * 3.785411784);

    /// <summary>The sum.</summary>
    public static Volume operator +(Volume left, Volume right) => new(left.Litres + right.Litres);

    /// <summary>The difference; may be negative.</summary>
    public static Volume operator -(Volume left, Volume right) => new(left.Litres - right.Litres);

    /// <summary>A multiple.</summary>
    public static Volume operator *(Volume left, double factor) => new(left.Litres * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(Volume left, Volume right) => left.Litres / right.Litres;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(Volume left, Volume right) => left.Litres < right.Litres;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(Volume left, Volume right) => left.Litres > right.Litres;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(Volume left, Volume right) => left.Litres <= right.Litres;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(Volume left, Volume right) => left.Litres >= right.Litres;

    /// <inheritdoc/>
    public int CompareTo(Volume other) => Litres.CompareTo(other.Litres);

    /// <summary>The number in litres with its unit, in the invariant culture.</summary>
    public override string ToString() => Litres.ToString("0.######", CultureInfo.InvariantCulture) + " L";
}
