using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>An area.</summary>
public readonly record struct Area : IComparable<Area>
{
    private Area(double squareMetres) => SquareMetres = Finite.Required(squareMetres, nameof(squareMetres));

    /// <summary>In square metres.</summary>
    public double SquareMetres { get; }

    /// <summary>In square centimetres.</summary>
    public double SquareCentimetres => SquareMetres / 1e-4;

    /// <summary>From square metres; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Area FromSquareMetres(double value) => new(value);

    /// <summary>The sum.</summary>
    public static Area operator +(Area left, Area right) => new(left.SquareMetres + right.SquareMetres);

    /// <summary>The difference; may be negative.</summary>
    public static Area operator -(Area left, Area right) => new(left.SquareMetres - right.SquareMetres);

    /// <summary>A multiple.</summary>
    public static Area operator *(Area left, double factor) => new(left.SquareMetres * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(Area left, Area right) => left.SquareMetres / right.SquareMetres;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(Area left, Area right) => left.SquareMetres < right.SquareMetres;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(Area left, Area right) => left.SquareMetres > right.SquareMetres;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(Area left, Area right) => left.SquareMetres <= right.SquareMetres;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(Area left, Area right) => left.SquareMetres >= right.SquareMetres;

    /// <inheritdoc/>
    public int CompareTo(Area other) => SquareMetres.CompareTo(other.SquareMetres);

    /// <summary>The number in square metres with its unit, in the invariant culture.</summary>
    public override string ToString() => SquareMetres.ToString("0.######", CultureInfo.InvariantCulture) + " m2";
}
