using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Makes.Sheets;

/// <summary>Writes a step's aims as a maker reads them: "5 mm, 12 min, rest 5 min".</summary>
public static class AimText
{
    /// <summary>One aim with its unit, and a word where the unit alone would not say what it is.</summary>
    /// <param name="aim">The aim.</param>
    /// <param name="notation">How numbers are written.</param>
    public static string Write(Aim aim, Notation notation) => aim.Target == Target.Times
        ? aim.Value switch { 1 => "once", 2 => "twice", var often => $"{Value(Target.Times, often, notation)} times" }
        : Word(aim.Target) + Value(aim.Target, aim.Value, notation);

    /// <summary>All aims of a step but its dose, which stands among the amounts.</summary>
    /// <param name="step">The step.</param>
    /// <param name="notation">How numbers are written.</param>
    public static string Write(Step step, Notation notation) =>
        string.Join(notation.DecimalSign == ',' ? "; " : ", ", step.Aims.Where(aim => aim.Target != Target.Dose).Select(aim => Write(aim, notation)));

    /// <summary>A value of a target with its unit.</summary>
    /// <param name="target">The target.</param>
    /// <param name="value">The value in the target's unit.</param>
    /// <param name="notation">How numbers are written.</param>
    public static string Value(Target target, double value, Notation notation)
    {
        var measure = target.Field.Unit switch { "°C" => Measure.Temperature, "min" => Measure.Time, "kPa" => Measure.Pressure, "cm" => Measure.Length, _ => (Measure?)null };
        return measure is { } known
            ? notation.Write(known, value)
            : Recipes.Write.Quantity(value, target).Replace('.', notation.DecimalSign);
    }

    /// <summary>A value of a step's target, a dose with the unit of what is added.</summary>
    /// <param name="step">The step.</param>
    /// <param name="target">The target.</param>
    /// <param name="value">The value in the target's unit.</param>
    /// <param name="notation">How numbers are written.</param>
    public static string Value(Step step, Target target, double value, Notation notation) =>
        target == Target.Dose && step.Addition is { } added ? $"{notation.Number(value)} {Addition.Words(added.Per)}" : Value(target, value, notation);

    private static string Word(Target target) =>
        target == Target.RestMinutes ? "rest "
        : target == Target.FlocMinutes ? "flocculation "
        : target == Target.Multiplier ? "times "
        : target == Target.HumidityPercent ? "humidity "
        : target == Target.BrinePercent ? "brine " : "";
}
