using System.Globalization;

namespace Trier.Dairy.Quantities;

/// <summary>A temperature, kept in degrees Celsius.</summary>
/// <remarks>Two temperatures have a difference, not a sum: <see cref="operator -(Temperature, Temperature)"/> gives kelvins as a number.</remarks>
public readonly record struct Temperature : IComparable<Temperature>
{
    private const double ZeroCelsiusInKelvin = 273.15;

    private Temperature(double celsius) => Celsius = Finite.Required(celsius, nameof(celsius));

    /// <summary>In degrees Celsius.</summary>
    public double Celsius { get; }

    /// <summary>In degrees Fahrenheit.</summary>
    public double Fahrenheit => (Celsius * 9 / 5) + 32;

    /// <summary>In kelvins.</summary>
    public double Kelvin => Celsius + ZeroCelsiusInKelvin;

    /// <summary>From degrees Celsius; any finite number.</summary>
    /// <param name="value">The number.</param>
    public static Temperature FromCelsius(double value) => new(value);

    /// <summary>The difference in kelvins (the size of a degree Celsius).</summary>
    public static double operator -(Temperature left, Temperature right) => left.Celsius - right.Celsius;

    /// <summary>Whether the left one is colder.</summary>
    public static bool operator <(Temperature left, Temperature right) => left.Celsius < right.Celsius;

    /// <summary>Whether the left one is warmer.</summary>
    public static bool operator >(Temperature left, Temperature right) => left.Celsius > right.Celsius;

    /// <summary>Whether the left one is colder or equal.</summary>
    public static bool operator <=(Temperature left, Temperature right) => left.Celsius <= right.Celsius;

    /// <summary>Whether the left one is warmer or equal.</summary>
    public static bool operator >=(Temperature left, Temperature right) => left.Celsius >= right.Celsius;

    /// <inheritdoc/>
    public int CompareTo(Temperature other) => Celsius.CompareTo(other.Celsius);

    /// <summary>The number in degrees Celsius, in the invariant culture.</summary>
    public override string ToString() => Celsius.ToString("0.######", CultureInfo.InvariantCulture) + " C";
}
