using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>How fast a substance spreads by diffusion.</summary>
public readonly record struct Diffusivity : IComparable<Diffusivity>
{
    private Diffusivity(double squareMetresPerSecond) => SquareMetresPerSecond = Finite.Required(squareMetresPerSecond, nameof(squareMetresPerSecond));

    /// <summary>In square metres per second.</summary>
    public double SquareMetresPerSecond { get; }

    /// <summary>In square centimetres per day.</summary>
    public double SquareCentimetresPerDay => SquareMetresPerSecond / (1e-4 / 86400);

    /// <summary>From square metres per second; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Diffusivity FromSquareMetresPerSecond(double value) => new(value);

    /// <summary>From square centimetres per day; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Diffusivity FromSquareCentimetresPerDay(double value) => new(value * (1e-4 / 86400));

    /// <summary>The sum.</summary>
    public static Diffusivity operator +(Diffusivity left, Diffusivity right) => new(left.SquareMetresPerSecond + right.SquareMetresPerSecond);

    /// <summary>The difference; may be negative.</summary>
    public static Diffusivity operator -(Diffusivity left, Diffusivity right) => new(left.SquareMetresPerSecond - right.SquareMetresPerSecond);

    /// <summary>A multiple.</summary>
    public static Diffusivity operator *(Diffusivity left, double factor) => new(left.SquareMetresPerSecond * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(Diffusivity left, Diffusivity right) => left.SquareMetresPerSecond / right.SquareMetresPerSecond;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(Diffusivity left, Diffusivity right) => left.SquareMetresPerSecond < right.SquareMetresPerSecond;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(Diffusivity left, Diffusivity right) => left.SquareMetresPerSecond > right.SquareMetresPerSecond;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(Diffusivity left, Diffusivity right) => left.SquareMetresPerSecond <= right.SquareMetresPerSecond;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(Diffusivity left, Diffusivity right) => left.SquareMetresPerSecond >= right.SquareMetresPerSecond;

    /// <inheritdoc/>
    public int CompareTo(Diffusivity other) => SquareMetresPerSecond.CompareTo(other.SquareMetresPerSecond);

    /// <summary>The number in square metres per second with its unit, in the invariant culture.</summary>
    public override string ToString() => SquareMetresPerSecond.ToString("0.######", CultureInfo.InvariantCulture) + " m2/s";
}
