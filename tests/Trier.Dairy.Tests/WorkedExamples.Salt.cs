using Trier.Dairy.Brine;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;
using static Trier.Dairy.Workings.Status;

namespace Trier.Dairy.Tests;

public static partial class WorkedExamples
{
    private static WheelSize Wheel(double diameter, double height) =>
        Value(WheelSize.Create(Length.FromCentimetres(diameter), Length.FromCentimetres(height)));

    private static Diffusivity D10(double value) => Diffusivity.FromSquareMetresPerSecond(value * 1e-10);

    private static double HoursTo(WheelSize wheel, double percent, double brine, double d, double moisture = 40) =>
        Value(BriningTime.Plan(wheel, Kg(wheel.Volume.Litres * 1.08), Pct(moisture), Pct(brine), Pct(percent), Estimate.Exactly(D10(d)))).ByDiffusion!.Value.Likely.TotalHours;

    private static double RuleHours(WheelSize wheel) => BriningTime.RuleOfThumb(Kg(wheel.Volume.Litres * 1.08), wheel.Height).TotalHours;

    private static IEnumerable<WorkedExample> Salt()
    {
        const string handbook = "WNT 1974 density table";
        const string crank = "series for the finite cylinder";
        yield return Check("B1", handbook, Read, () => Value(BrineDensity.Baume(Pct(20))));
        yield return Check("B2", handbook, Read, () => Value(BrineDensity.Baume(Pct(21.2))));
        yield return Check("B3", handbook, Read, () => Value(BrineDensity.StrengthOf(1.160)).Percent);
        BrineBatch Batch() => Value(BrineBatch.Make(L(8), Pct(20), C(20)));
        yield return Check("B4", handbook, Read, () => Batch().Total.Kilograms);
        yield return Check("B4b", handbook, Read, () => Batch().Salt.Kilograms);
        yield return Check("B4c", handbook, Read, () => Batch().Water.Kilograms);
        yield return Check("B5", "definition", Derived, () => Value(BrineBatch.StrengthOf(Kg(0.2), Kg(1))).Percent);
        yield return Check("B5b", "solubility at 25 C", Read, () => Value(BrineBatch.StrengthOf(Kg(BrineBatch.SaturatedGramsPer100GramsWater), Kg(100))).Percent);
        yield return Check("B5c", "shop page", Read, () => Value(BrineBatch.StrengthOf(Mass.FromPounds(2.25), Kg(Volume.FromUsGallons(1).Litres * 0.998))).Percent);
        yield return Check("B5d", "definition", Derived, () => Value(BrineBatch.SaltPerKilogramOfWater(Pct(22))).Grams);
        BrineBatch Used() => Value(new BrineBatch(Mass.FromGrams(1836.5), Mass.FromGrams(9182.4 - 1836.5)).After(Mass.FromGrams(45), Mass.FromGrams(90)));
        yield return Check("B6", "mass balance", Derived, () => Used().Strength.Percent);
        yield return Check("B6b", "mass balance", Derived, () => Value(Used().Mend(Pct(20))).Grams);
        yield return Check("D0", "unit", Derived, () => Diffusivity.FromSquareCentimetresPerDay(0.2).SquareMetresPerSecond);
        yield return Check("D0b", "unit", Derived, () => Diffusivity.FromSquareCentimetresPerDay(0.23).SquareMetresPerSecond);
        var twelve = TimeSpan.FromHours(12);
        double SaltAfter(double d) => Value(BriningTime.SaltAfter(Wheel(16, 8), Pct(40), Pct(20), twelve, Estimate.Exactly(D10(d)))).Likely.Percent;
        yield return Check("D1", crank, Derived, () => FiniteCylinder.Uptake(Wheel(16, 8), D10(2.3), twelve));
        yield return Check("D2", crank, Derived, () => SaltAfter(2.3));
        yield return Check("D8", crank, Derived, () => SaltAfter(1.6));
        yield return Check("D3", crank, Derived, () => HoursTo(Wheel(16, 8), 1.2, 20, 2.3));
        yield return Check("D3v.1", crank, Derived, () => HoursTo(Wheel(16, 8), 1.2, 20, 1.0));
        yield return Check("D3v.2", crank, Derived, () => HoursTo(Wheel(16, 8), 1.2, 20, 1.6));
        yield return Check("D3v.3", crank, Derived, () => HoursTo(Wheel(16, 8), 1.2, 20, 3.5));

        // Saturated brine is outside the salting model's domain, so only the mathematics is checked here.
        yield return Check("D3s", crank, Derived, () => FiniteCylinder.TimeFor(Wheel(16, 8), D10(2.3), 0.012 / (35.9 / 100 * 0.4)).TotalHours);
        yield return Check("D4", crank, Derived, () => FiniteCylinder.EarlyUptake(Wheel(16, 8), D10(2.3), twelve));
        yield return Check("D4b", "geometry", Derived, () => Wheel(16, 8).VolumeOverSurface.Millimetres);
        (double Diameter, double Height)[] wheels = [(12, 6), (16, 8), (20, 9), (24, 10)];
        double[] values = [1.0, 1.6, 2.3];
        for (var i = 0; i < wheels.Length; i++)
        {
            var (diameter, height) = wheels[i];
            yield return Check($"D5.{i + 1}", crank, Derived, () => HoursTo(Wheel(diameter, height), 1.2, 20, 2.3));
            yield return Check($"D5r.{i + 1}", "rule of thumb, two pages", Read, () => RuleHours(Wheel(diameter, height)));
            for (var j = 0; j < values.Length; j++)
            {
                var d = values[j];
                yield return Check($"D12.{(4 * j) + i + 1}", crank, Derived, () => HoursTo(Wheel(diameter, height), 1.2, 20, d));
            }
        }

        yield return Check("D6", "slowest mode of uptake", Derived, () => UptakeModeDays(Wheel(16, 8), D10(2.3)));
        yield return Check("D6b", "slowest mode without flux", Derived, () => Value(EveningOut.Of(Wheel(16, 8), D10(2.3))).BetweenFaces.TotalDays);
        yield return Check("D7", "short-time form", Derived, () => FiniteCylinder.EarlyTimeFor(Wheel(16, 8), D10(1.6), 0.12).TotalHours);
        yield return Check("D7x", crank, Derived, () => FiniteCylinder.TimeFor(Wheel(16, 8), D10(1.6), 0.12).TotalHours);

        // S/M 4.7 in 20 % brine is E = 0.188 whatever the moisture.
        yield return Check("D9", crank, Derived, () => FiniteCylinder.TimeFor(Wheel(31, 10.5), D10(2.3), 0.047 / 0.25).TotalHours);
        yield return Check("D10", "slab series", Derived, () => FiniteCylinder.Slab(0.10));
        yield return Check("D11", "cylinder series", Derived, () => FiniteCylinder.Cylinder(0.10));
    }

    // Read off the computed curve itself: late in the uptake only the slowest mode is left, so two late points give its time.
    private static double UptakeModeDays(WheelSize wheel, Diffusivity d)
    {
        var (early, late) = (TimeSpan.FromDays(60), TimeSpan.FromDays(90));
        var ratio = (1 - FiniteCylinder.Uptake(wheel, d, early)) / (1 - FiniteCylinder.Uptake(wheel, d, late));
        return (late - early).TotalDays / Math.Log(ratio);
    }
}
