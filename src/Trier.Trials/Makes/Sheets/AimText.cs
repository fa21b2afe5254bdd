using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Makes.Sheets;

/// <summary>Writes a step's aims as a maker reads them: "5 mm, 12 min, rest 5 min".</summary>
public static class AimText
{
    /// <summary>One aim with its unit, and a word where the unit alone would not say what it is.</summary>
    /// <param name="aim">The aim.</param>
    /// <param name="units">The units to write in.</param>
    /// <param name="decimalMark">The decimal mark.</param>
    public static string Write(Aim aim, UnitSystem units, char decimalMark = '.') => Word(aim.Target) + Value(aim.Target, aim.Value, units, decimalMark);

    /// <summary>All aims of a step but its dose, which stands among the amounts.</summary>
    /// <param name="step">The step.</param>
    /// <param name="units">The units to write in.</param>
    /// <param name="decimalMark">The decimal mark.</param>
    public static string Write(Step step, UnitSystem units, char decimalMark = '.') =>
        string.Join(decimalMark == ',' ? "; " : ", ", step.Aims.Where(aim => aim.Target != Target.Dose).Select(aim => Write(aim, units, decimalMark)));

    /// <summary>A value of a target with its unit.</summary>
    /// <param name="target">The target.</param>
    /// <param name="value">The value in the target's unit.</param>
    /// <param name="units">The units to write in.</param>
    /// <param name="decimalMark">The decimal mark.</param>
    public static string Value(Target target, double value, UnitSystem units, char decimalMark = '.')
    {
        var measure = target.Field.Unit switch { "C" => Measure.Temperature, "min" => Measure.Time, "kPa" => Measure.Pressure, "cm" => Measure.Length, _ => (Measure?)null };
        return measure is { } known
            ? FigureText.Write(known, value, units, decimalMark)
            : Recipes.Write.Quantity(value, target).Replace('.', decimalMark);
    }

    private static string Word(Target target) =>
        target == Target.RestMinutes ? "rest "
        : target == Target.FlocMinutes ? "flocculation "
        : target == Target.Multiplier || target == Target.Times ? "times "
        : target == Target.HumidityPercent ? "humidity "
        : target == Target.BrinePercent ? "brine " : "";
}
