using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>A mass. One pound is 0.45359237 kg, exact by definition.</summary>
public readonly record struct Mass : IComparable<Mass>
{
    private Mass(double kilograms) => Kilograms = Finite.Required(kilograms, nameof(kilograms));

    /// <summary>In kilograms.</summary>
    public double Kilograms { get; }

    /// <summary>In grams.</summary>
    public double Grams => Kilograms / 1e-3;

    /// <summary>In milligrams.</summary>
    public double Milligrams => Kilograms / 1e-6;

    /// <summary>In pounds.</summary>
    public double Pounds => Kilograms / 0.45359237;

    /// <summary>In ounces.</summary>
    public double Ounces => Kilograms / 0.028349523125;

    /// <summary>From kilograms; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Mass FromKilograms(double value) => new(value);

    /// <summary>From grams; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Mass FromGrams(double value) => new(value * 1e-3);

    /// <summary>From pounds; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Mass FromPounds(double value) => new(value * 0.45359237);

    /// <summary>The sum.</summary>
    public static Mass operator +(Mass left, Mass right) => new(left.Kilograms + right.Kilograms);

    /// <summary>The difference; may be negative.</summary>
    public static Mass operator -(Mass left, Mass right) => new(left.Kilograms - right.Kilograms);

    /// <summary>A multiple.</summary>
    public static Mass operator *(Mass left, double factor) => new(left.Kilograms * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(Mass left, Mass right) => left.Kilograms / right.Kilograms;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(Mass left, Mass right) => left.Kilograms < right.Kilograms;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(Mass left, Mass right) => left.Kilograms > right.Kilograms;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(Mass left, Mass right) => left.Kilograms <= right.Kilograms;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(Mass left, Mass right) => left.Kilograms >= right.Kilograms;

    /// <inheritdoc/>
    public int CompareTo(Mass other) => Kilograms.CompareTo(other.Kilograms);

    /// <summary>The number in kilograms with its unit, in the invariant culture.</summary>
    public override string ToString() => Kilograms.ToString("0.######", CultureInfo.InvariantCulture) + " kg";
}
