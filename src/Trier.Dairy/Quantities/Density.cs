using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>A density.</summary>
public readonly record struct Density : IComparable<Density>
{
    private Density(double kilogramsPerLitre) => KilogramsPerLitre = Finite.Required(kilogramsPerLitre, nameof(kilogramsPerLitre));

    /// <summary>In kilograms per litre.</summary>
    public double KilogramsPerLitre { get; }

    /// <summary>In kilograms per cubic metre.</summary>
    public double KilogramsPerCubicMetre => KilogramsPerLitre / 1e-3;

    /// <summary>From kilograms per litre; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Density FromKilogramsPerLitre(double value) => new(value);

    /// <summary>From kilograms per cubic metre; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Density FromKilogramsPerCubicMetre(double value) => new(value * 1e-3);

    /// <summary>The sum.</summary>
    public static Density operator +(Density left, Density right) => new(left.KilogramsPerLitre + right.KilogramsPerLitre);

    /// <summary>The difference; may be negative.</summary>
    public static Density operator -(Density left, Density right) => new(left.KilogramsPerLitre - right.KilogramsPerLitre);

    /// <summary>A multiple.</summary>
    public static Density operator *(Density left, double factor) => new(left.KilogramsPerLitre * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(Density left, Density right) => left.KilogramsPerLitre / right.KilogramsPerLitre;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(Density left, Density right) => left.KilogramsPerLitre < right.KilogramsPerLitre;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(Density left, Density right) => left.KilogramsPerLitre > right.KilogramsPerLitre;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(Density left, Density right) => left.KilogramsPerLitre <= right.KilogramsPerLitre;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(Density left, Density right) => left.KilogramsPerLitre >= right.KilogramsPerLitre;

    /// <inheritdoc/>
    public int CompareTo(Density other) => KilogramsPerLitre.CompareTo(other.KilogramsPerLitre);

    /// <summary>The number in kilograms per litre with its unit, in the invariant culture.</summary>
    public override string ToString() => KilogramsPerLitre.ToString("0.######", CultureInfo.InvariantCulture) + " kg/L";
}
