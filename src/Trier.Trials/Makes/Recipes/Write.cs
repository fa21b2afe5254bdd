using System.Globalization;

namespace Trier.Trials.Makes.Recipes;

/// <summary>Numbers of a recipe in plain words, with a decimal point: sentences of the core are in one culture.</summary>
internal static class Write
{
    /// <summary>At most three decimals, none that are zero.</summary>
    public static string Number(double value) => Math.Round(value, 3).ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>A number with its target's unit; long times in hours or days.</summary>
    public static string Quantity(double value, Target target) => target.Field.Unit switch
    {
        "min" => Duration(TimeSpan.FromMinutes(value)),
        "" => target == Target.Ph ? $"pH {value.ToString("0.00", CultureInfo.InvariantCulture)}" : Number(value),
        var unit => $"{Number(value)} {unit}",
    };

    /// <summary>A time as makers say it: "45 min", "2 h 30 min", "3 days".</summary>
    public static string Duration(TimeSpan time)
    {
        var minutes = Math.Round(time.TotalMinutes, time.TotalMinutes < 10 ? 1 : 0);
        if (minutes < 120) return $"{Number(minutes)} min";
        var hours = Math.Floor(minutes / 60);
        if (hours >= 72 && minutes % 1440 == 0) return $"{Number(minutes / 1440)} days";
        return minutes % 60 == 0 ? $"{Number(hours)} h" : $"{Number(hours)} h {Number(minutes - (60 * hours))} min";
    }
}
