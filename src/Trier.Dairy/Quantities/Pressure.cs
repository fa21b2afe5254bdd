using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>A pressure. One pound-force per square inch is 6894.757293168 Pa; one kilogram-force per square centimetre is 98066.5 Pa.</summary>
public readonly record struct Pressure : IComparable<Pressure>
{
    private Pressure(double pascals) => Pascals = Finite.Required(pascals, nameof(pascals));

    /// <summary>In pascals.</summary>
    public double Pascals { get; }

    /// <summary>In kilopascals.</summary>
    public double Kilopascals => Pascals / 1e3;

    /// <summary>In hectopascals (millibar).</summary>
    public double Hectopascals => Pascals / 1e2;

    /// <summary>In pounds-force per square inch.</summary>
    public double PoundsPerSquareInch => Pascals / 6894.757293168;

    /// <summary>In kilograms-force per square centimetre.</summary>
    public double KilogramsForcePerSquareCentimetre => Pascals / 98066.5;

    /// <summary>From pascals; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Pressure FromPascals(double value) => new(value);

    /// <summary>From kilopascals; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Pressure FromKilopascals(double value) => new(value * 1e3);

    /// <summary>From hectopascals (millibar); any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Pressure FromHectopascals(double value) => new(value * 1e2);

    /// <summary>From pounds-force per square inch; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Pressure FromPoundsPerSquareInch(double value) => new(value * 6894.757293168);

    /// <summary>From kilograms-force per square centimetre; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Pressure FromKilogramsForcePerSquareCentimetre(double value) => new(value * 98066.5);

    /// <summary>The sum.</summary>
    public static Pressure operator +(Pressure left, Pressure right) => new(left.Pascals + right.Pascals);

    /// <summary>The difference; may be negative.</summary>
    public static Pressure operator -(Pressure left, Pressure right) => new(left.Pascals - right.Pascals);

    /// <summary>A multiple.</summary>
    public static Pressure operator *(Pressure left, double factor) => new(left.Pascals * factor);

    /// <summary>The ratio of two.</summary>
    public static double operator /(Pressure left, Pressure right) => left.Pascals / right.Pascals;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(Pressure left, Pressure right) => left.Pascals < right.Pascals;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(Pressure left, Pressure right) => left.Pascals > right.Pascals;

    /// <summary>Whether the left one is smaller or equal.</summary>
    public static bool operator <=(Pressure left, Pressure right) => left.Pascals <= right.Pascals;

    /// <summary>Whether the left one is larger or equal.</summary>
    public static bool operator >=(Pressure left, Pressure right) => left.Pascals >= right.Pascals;

    /// <inheritdoc/>
    public int CompareTo(Pressure other) => Pascals.CompareTo(other.Pascals);

    /// <summary>The number in pascals with its unit, in the invariant culture.</summary>
    public override string ToString() => Pascals.ToString("0.######", CultureInfo.InvariantCulture) + " Pa";
}
