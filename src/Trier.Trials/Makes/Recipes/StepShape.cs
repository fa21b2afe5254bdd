using System.Collections.Immutable;
using Field = Trier.Dairy.Workings.Field;

namespace Trier.Trials.Makes.Recipes;

/// <summary>One aim a kind of step can have.</summary>
/// <param name="Target">What it is.</param>
/// <param name="Required">Whether such a step is no step without it.</param>
/// <param name="From">Low end of what is usual in this kind of step.</param>
/// <param name="To">High end of what is usual in this kind of step.</param>
public sealed record Wanted(Target Target, bool Required, double From, double To)
{
    /// <summary>The target's field with the range that is usual here.</summary>
    public Field Field => Target.Field with { UsuallyFrom = From, UsuallyTo = To };
}

/// <summary>Which aims a kind of step has. The usual ranges are common practice, no source.</summary>
public static class StepShape
{
    /// <summary>The aims of a kind, in the order of a form.</summary>
    /// <param name="kind">The kind.</param>
    public static ImmutableArray<Wanted> Of(StepKind kind) => kind switch
    {
        StepKind.Heat => [Must(Target.Celsius, 20, 45), May(Target.Minutes, 5, 180)],
        StepKind.Add => [Must(Target.Dose, 0, 1e9), May(Target.Celsius, 4, 80), May(Target.Minutes, 0, 60)],
        StepKind.Ripen => [Must(Target.Minutes, 5, 240), May(Target.Celsius, 20, 42), May(Target.Ph, 6.3, 6.8)],
        StepKind.Renneting => [Must(Target.ImcuPerLitre, 25, 70), Must(Target.FlocMinutes, 8, 25), Must(Target.Multiplier, 2, 6), May(Target.Celsius, 28, 38), May(Target.Ph, 6.4, 6.75)],
        StepKind.Cut => [Must(Target.Millimetres, 3, 25), May(Target.Minutes, 2, 30), May(Target.RestMinutes, 0, 20), May(Target.Ph, 5.2, 6.65)],
        StepKind.Stir => [Must(Target.Minutes, 3, 120), May(Target.Celsius, 28, 58), May(Target.Ph, 5.8, 6.65)],
        StepKind.Cook => [Must(Target.Celsius, 33, 58), Must(Target.Minutes, 10, 120), May(Target.Ph, 5.9, 6.6)],
        StepKind.Settle => [Must(Target.Minutes, 2, 60), May(Target.Ph, 5.9, 6.6)],
        StepKind.Drain => [May(Target.PercentOfMilk, 20, 95), May(Target.Minutes, 2, 90), May(Target.Ph, 5.9, 6.6)],
        StepKind.Hoop => [May(Target.DiameterCentimetres, 7, 45), May(Target.Minutes, 2, 60), May(Target.Celsius, 25, 52), May(Target.Ph, 5.3, 6.5)],
        StepKind.Press => [Must(Target.Kilopascals, 0.3, 140), Must(Target.Minutes, 10, 1500), May(Target.Ph, 5.1, 6.5)],
        StepKind.Turn => [May(Target.Times, 1, 12), May(Target.Minutes, 1, 180), May(Target.Ph, 5.1, 6.5)],
        StepKind.Brine => [Must(Target.BrinePercent, 16, 23), Must(Target.Minutes, 60, 5760), May(Target.Celsius, 8, 18), May(Target.Ph, 4.9, 5.4)],
        StepKind.Salt => [Must(Target.SaltPercentOfCurd, 1, 3.5), May(Target.Minutes, 5, 60), May(Target.Ph, 5.1, 5.6)],
        _ => [Must(Target.Minutes, 120, 10_080), May(Target.Celsius, 8, 20), May(Target.HumidityPercent, 55, 90), May(Target.Ph, 4.9, 5.5)],
    };

    /// <summary>The aims of the finished cheese and the vat milk.</summary>
    public static ImmutableArray<Wanted> OfCheese { get; } =
    [
        Must(Target.MoisturePercent, 30, 55), May(Target.SaltPercent, 0.4, 6), May(Target.CaseinToFat, 0.55, 1.4),
        May(Target.WarmRoomDays, 10, 50), May(Target.WarmRoomCelsius, 17, 25),
    ];

    private static Wanted Must(Target target, double from, double to) => new(target, true, from, to);

    private static Wanted May(Target target, double from, double to) => new(target, false, from, to);
}
