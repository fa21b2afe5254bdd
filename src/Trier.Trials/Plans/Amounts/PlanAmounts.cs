using System.Collections.Immutable;
using Trier.Trials.Tastings.Serving;

namespace Trier.Trials.Plans.Amounts;

/// <summary>Cheese that a plan takes, for cubes of 15 mm, three a sample, 10 mm of rind off and 15 in 100 to spare: an estimate, to be worked out anew once the wheels can be measured.</summary>
/// <param name="Plates">Plates to fill.</param>
/// <param name="GramsASample">One taster's portion of one wheel.</param>
/// <param name="GramsAWheel">Paste to cut from a wheel, spare included.</param>
/// <param name="GramsTwice">The same for the wheel that is served twice; null without one.</param>
/// <param name="WheelKilograms">The smallest wheel, half as tall as wide, that gives it in whole cubes; null where even 80 cm across does not.</param>
/// <param name="WheelCentimetres">Its diameter.</param>
/// <param name="Left">Kilograms left of it for the kitchen or a second tasting: crumbs and uncut paste, the rind not counted.</param>
public sealed record PlanAmounts(int Plates, double GramsASample, double GramsAWheel, double? GramsTwice, double? WheelKilograms, double? WheelCentimetres, double? Left)
{
    private const double Widest = 80;

    /// <summary>How samples are cut where nobody says.</summary>
    public static SampleSize Usual { get; } = SampleSize.Create(15, 3, 10, 15).Value;

    /// <summary>What an outline takes.</summary>
    /// <param name="outline">The outline.</param>
    public static PlanAmounts Of(TrialOutline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        var most = outline.Tasters * (outline.Repeat is null ? 1 : 2);
        var cubes = Usual.CubesFor(most);
        var once = Usual.CubesFor(outline.Tasters) * CubeGrams;
        double? twice = outline.Repeat is null ? null : cubes * CubeGrams;
        for (var across = 6.0; across <= Widest; across += 0.5)
        {
            if (!WheelCut.Create(across, across / 2, Usual).TryGet(out var cut) || cut.CubesOfAQuarter * 4 < cubes) continue;
            var paste = Math.PI * Math.Pow((across / 2) - (Usual.Trim.Centimetres), 2) * ((across / 2) - (2 * Usual.Trim.Centimetres)) * SampleSize.GramsPerCubicCentimetre;
            var whole = Math.PI * Math.Pow(across / 2, 2) * across / 2 * SampleSize.GramsPerCubicCentimetre;
            return new(outline.Tasters, Usual.Weight.Grams, once, twice, whole / 1000, across, (paste - (cubes * CubeGrams)) / 1000);
        }

        return new(outline.Tasters, Usual.Weight.Grams, once, twice, null, null, null);
    }

    private static double CubeGrams => Usual.Weight.Grams / Usual.Cubes;
}

/// <summary>One vat to be made.</summary>
/// <param name="Wheel">Name of the wheel.</param>
/// <param name="Recipe">Its recipe.</param>
/// <param name="Make">The day to make it.</param>
/// <param name="AgeDays">Its age on the day of the tasting.</param>
public sealed record PlannedMake(string Wheel, string Recipe, DateOnly Make, int AgeDays);

/// <summary>Make dates counted back from the day of the tasting.</summary>
public static class MakeDates
{
    /// <summary>Within so many days wheels count as of one age.</summary>
    private const int Fortnight = 13;

    /// <summary>The vats still to be made, first to last, all within a fortnight: the last is of the wanted age on the day, the others a little older.</summary>
    /// <param name="outline">The outline; empty without a day, an age or a wheel to be made.</param>
    public static ImmutableArray<PlannedMake> Of(TrialOutline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        if (outline.Day is not { } day || outline.AgeDays is not { } age) return [];
        ImmutableArray<PlannedWheel> open = [.. outline.Wheels.Where(wheel => wheel.Facts.MadeOn is null)];
        var apart = open.Length < 2 ? 0 : Math.Min(7, Fortnight / (open.Length - 1));
        return [.. open.Select((wheel, i) =>
        {
            var old = age + ((open.Length - 1 - i) * apart);
            return new PlannedMake(wheel.Name, wheel.Recipe, day.AddDays(-old), old);
        })];
    }
}
