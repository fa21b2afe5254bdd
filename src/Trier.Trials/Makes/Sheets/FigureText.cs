using System.Globalization;
using Trier.Dairy.Quantities;

namespace Trier.Trials.Makes.Sheets;

/// <summary>Writes a quantity as a maker reads it: three figures that count, a unit that fits its size.</summary>
public static class FigureText
{
    /// <summary>A quantity with its unit.</summary>
    /// <param name="measure">What sort.</param>
    /// <param name="value">In the base unit.</param>
    /// <param name="units">The units to write in.</param>
    /// <param name="decimalMark">The decimal mark.</param>
    public static string Write(Measure measure, double value, UnitSystem units, char decimalMark = '.') =>
        (units == UnitSystem.Metric ? Metric(measure, value) : Customary(measure, value)).Replace('.', decimalMark);

    internal static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Metric(Measure measure, double value) => measure switch
    {
        Measure.Mass when Math.Abs(value) < 0.001 => $"{Three(value * 1e6)} mg",
        Measure.Mass when Math.Abs(value) < 1 => $"{Three(value * 1e3)} g",
        Measure.Mass => $"{Three(value)} kg",
        Measure.Volume when Math.Abs(value) < 1 => $"{Three(value * 1e3)} mL",
        Measure.Volume => $"{Three(value)} L",
        Measure.Temperature => $"{Tenth(value)} °C",
        Measure.Time => Time(value),
        Measure.Pressure => $"{Three(value)} kPa",
        Measure.Length => $"{Tenth(value)} cm",
        Measure.Percent => $"{Three(value)} %",
        Measure.HeatingRate => $"{Three(value)} °C/min",
        _ => Three(value),
    };

    private static string Customary(Measure measure, double value) => measure switch
    {
        Measure.Mass => Pounds(Mass.FromKilograms(value)),
        Measure.Volume => Gallons(Volume.FromLitres(value)),
        Measure.Temperature => $"{Tenth(Temperature.FromCelsius(value).Fahrenheit)} °F",
        Measure.Pressure => $"{Three(Pressure.FromKilopascals(value).PoundsPerSquareInch)} psi",
        Measure.Length => $"{Three(Length.FromCentimetres(value).Inches)} in",
        Measure.HeatingRate => $"{Three(HeatingRate.FromDegreesPerMinute(value).FahrenheitPerMinute)} °F/min",
        _ => Metric(measure, value),
    };

    // Kitchen scales in ounces are too coarse for cultures and salts, so grams stand beside them.
    private static string Pounds(Mass mass)
    {
        if (mass.Ounces < 0.05) return Metric(Measure.Mass, mass.Kilograms);
        if (mass.Ounces < 16) return $"{Three(mass.Ounces)} oz ({Metric(Measure.Mass, mass.Kilograms)})";
        return $"{Three(mass.Pounds)} lb";
    }

    private static string Gallons(Volume volume)
    {
        if (volume.UsTeaspoons < 12) return $"{Three(volume.UsTeaspoons)} tsp ({Three(volume.Millilitres)} mL)";
        if (volume.UsQuarts < 1) return $"{Three(volume.UsQuarts * 32)} fl oz";
        return volume.UsGallons < 1 ? $"{Three(volume.UsQuarts)} qt" : $"{Three(volume.UsGallons)} gal";
    }

    private static string Time(double minutes)
    {
        var whole = Math.Round(minutes);
        if (Math.Abs(minutes) < 10) return $"{Tenth(minutes)} min";
        if (whole < 120) return $"{Number(whole)} min";
        var hours = Math.Floor(whole / 60);
        if (hours >= 72) return $"{Tenth(minutes / 1440)} d";
        var rest = whole - (60 * hours);
        return rest == 0 ? $"{Number(hours)} h" : $"{Number(hours)} h {Number(rest)} min";
    }

    private static string Three(double value)
    {
        var size = Math.Abs(value);
        return size >= 1000 ? Number(Math.Round(value)) : size >= 100 ? Number(Math.Round(value, 0)) : size >= 10 ? Number(Math.Round(value, 1)) : size >= 1 ? Number(Math.Round(value, 2)) : Number(Math.Round(value, 3));
    }

    private static string Tenth(double value) => Number(Math.Round(value, 1));

    private static string Number(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
