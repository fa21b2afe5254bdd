using Trier.Dairy.Acidity;
using Trier.Dairy.Heating;
using Trier.Dairy.Pressing;
using Trier.Dairy.Quantities;
using Trier.Dairy.Rennet;
using Trier.Dairy.Safety;
using static Trier.Dairy.Workings.Status;

namespace Trier.Dairy.Tests;

public static partial class WorkedExamples
{
    private static RennetStrength Imcu(double value) => RennetStrength.FromImcuPerMillilitre(value);

    private static TimeSpan Min(double minutes) => TimeSpan.FromMinutes(minutes);

    private static MouldFace Round(double centimetres) => Value(MouldFace.Round(Length.FromCentimetres(centimetres)));

    private static IEnumerable<WorkedExample> Vat()
    {
        const string guelph = "Guelph cheese e-book";
        const string maker = "rennet maker's page";
        double Dose(double strength) => Value(RennetDose.ByActivity(L(20), RennetLevel.FromImcuPerLitre(40), Imcu(strength))).Millilitres;
        yield return Check("R1", "ISO 11815 unit, Guelph rule", Read, () => Dose(200));
        yield return Check("R1b", "ISO 11815 unit, Guelph rule", Read, () => Dose(175));
        yield return Check("R1c", "ISO 11815 unit, Guelph rule", Read, () => Dose(600));
        yield return Check("R2", guelph, Read, () => Value(RennetDose.ImcuPerKilogram(Volume.FromMillilitres(200), Kg(1000), Imcu(200))));
        yield return Check("R2b", "Guelph; the 200 is an assumption", Read, () => Value(RennetDose.ImcuPerKilogram(Volume.FromMillilitres(190), Kg(1000), Imcu(200))));
        yield return Check("R2c", maker, Read, () => Value(RennetDose.ImcuPerKilogram(Volume.FromMillilitres(30), Kg(100), Imcu(175))));
        yield return Check("R3", "textbook definition of Soxhlet strength", Memory, () => Value(RennetDose.BySoxhlet(L(20), 15000, Min(30))).Millilitres);
        yield return Check("R3b", "a maker's glossary", Read, () => Value(RennetDose.BySoxhlet(L(20), 15000, Min(30), 45)).Millilitres);
        yield return Check("R4", "forum", Read, () => Value(Flocculation.Cut(Min(13), 2.5)).FromRennet.TotalMinutes);
        yield return Check("R4b", "forum", Read, () => Value(Flocculation.Cut(Min(13), 2.5)).AfterFlocculation.TotalMinutes);
        yield return Check("R9", "Storch and Segelcke rule", Memory, () => Value(Flocculation.NextDose(Volume.FromMillilitres(4), Min(18), Min(13))).Millilitres);
        Mass Cap() => Value(CalciumChloride.Cap(Kg(20 * 1.03)));
        yield return Check("R5", "21 CFR 133", Read, () => Cap().Grams);
        yield return Check("R6", "molar masses", Derived, () => CalciumChloride.AnhydrousInDihydrate);
        yield return Check("R7", "21 CFR 133", Read, () => Value(CalciumChloride.OfSolution(Cap(), 33, CalciumForm.Anhydrous)).Millilitres);
        yield return Check("R7b", "21 CFR 133", Read, () => Value(CalciumChloride.OfSolution(Cap(), 33, CalciumForm.Dihydrate)).Millilitres);
        yield return Check("R8", maker, Read, () => Value(CalciumChloride.Dose(L(20), 0.15)).Grams);
        yield return Check("C1", "Chandan and Kilara 2008", Read, () => Value(CultureDose.Bulk(Kg(20 * 1.03), Pct(0.1))).Grams);
        PropionicDose Propionic() => Value(CultureDose.Propionic(L(20), 1e3, 1e10, Mass.FromGrams(1), Volume.FromMillilitres(500)));
        yield return Check("C2", "Hutkins text", Read, () => Propionic().Cells);
        yield return Check("C2b", "Hutkins text", Read, () => Propionic().Powder.Milligrams);
        double Rate(PhSchedule schedule, PhStep from, PhStep to)
        {
            PhReading At(PhStep step) => new(PhMilestone.Of(schedule, step)!.After, PhMilestone.Of(schedule, step)!.Ph);
            return Value(PhRates.Between(At(from), At(to))).UnitsPerHour;
        }

        yield return Check("C3", "Guelph table 16.1", Read, () => Rate(PhSchedule.Swiss, PhStep.Cut, PhStep.DrainOrDip));
        yield return Check("C3b", "Guelph table 16.1", Read, () => Rate(PhSchedule.Swiss, PhStep.Press, PhStep.Demould));
        yield return Check("C3c", "Guelph table 16.1", Read, () => Rate(PhSchedule.Gouda, PhStep.Cut, PhStep.DrainOrDip));
        yield return Check("C3d", "Guelph table 16.1", Read, () => Rate(PhSchedule.CheddarLowMoisture, PhStep.Cut, PhStep.DrainOrDip));
        var seven = TitratableAcidity.FromDegreesSoxhletHenkel(7);
        yield return Check("C4", "Hanna manual", Read, () => seven.DegreesDornic);
        yield return Check("C4b", "Hanna manual", Read, () => seven.DegreesThoerner);
        yield return Check("C4c", "Hanna manual", Read, () => seven.PercentLactic);
        yield return Check("C4d", "0.25 mmol in 100 mL", Derived, () => Value(TitratableAcid.Of(Volume.FromMillilitres(100), Volume.FromMillilitres(1), 0.25)).PercentLactic);
        yield return Check("C5", "Hanna manual", Read, () => Value(TitratableAcid.Of(Volume.FromMillilitres(9), Volume.FromMillilitres(1.6), 0.1)).PercentLactic);
        yield return Check("K1", "Chandan and Kilara 2008", Read, () => Value(CookRamp.Rate(C(37), C(52), Min(30))).DegreesPerMinute);
        yield return Check("K1b", "Chandan and Kilara 2008", Read, () => Value(CookRamp.Time(C(37), C(52), HeatingRate.FromDegreesPerMinute(1.0 / 5))).TotalMinutes);
        yield return Check("K1c", "Chandan and Kilara 2008", Read, () => Value(CookRamp.Time(C(37), C(52), HeatingRate.FromDegreesPerMinute(1.5 / 5))).TotalMinutes);
        yield return Check("K2", "Guelph Romano page", Read, () => Value(CookRamp.Rate(C(32), C(46), Min(50))).DegreesPerMinute);
        yield return Check("K3", "Guelph Cheddar page", Read, () => Value(CookRamp.Rate(C(30), C(39), Min(30))).DegreesPerMinute);

        Pressure Press(double weight, double lever, MouldFace face) => Value(PressPressure.Of(Kg(weight), lever, Kg(0), face));
        yield return Check("P1", "geometry", Derived, () => Round(14.5).Area.SquareCentimetres);
        yield return Check("P2", "force over area", Derived, () => Press(10, 4, Round(14.5)).Kilopascals);
        yield return Check("P2b", "force over area", Derived, () => Press(10, 4, Round(14.5)).PoundsPerSquareInch);
        yield return Check("P2c", "force over area", Derived, () => Press(10, 4, Round(14.5)).KilogramsForcePerSquareCentimetre);
        yield return Check("P3", "Dubach", Read, () => Press(200, 1, Round(38)).Kilopascals);
        yield return Check("P3b", "Dubach", Read, () => Press(200, 1, Round(38)).PoundsPerSquareInch);
        yield return Check("P4", "Dubach", Read, () => Press(6, 1, Value(MouldFace.Rectangular(Length.FromCentimetres(25), Length.FromCentimetres(25)))).Kilopascals);
        yield return Check("P4b", "Dubach", Read, () => Press(4, 1, Round(15)).Kilopascals);
        yield return Check("P5", "unit", Derived, () => Pressure.FromPoundsPerSquareInch(20).Kilopascals);
        yield return Check("P5b", "Hutkins text", Read, () => Value(PressPressure.WeightFor(Pressure.FromPoundsPerSquareInch(20), 1, Kg(0), Round(14.5))).Kilograms);
        yield return Check("P6", "geometry", Derived, () => Value(PressPressure.SameOnAnotherMould(Kg(10), Round(10), Round(16))).Kilograms);
        yield return Check("P7", "unit", Derived, () => Pressure.FromKilogramsForcePerSquareCentimetre(0.1).Kilopascals);

        const string bradshaw = "Bradshaw 1985";
        double D(double d, double z, double at) => Value(ThermalDeath.TimeAt(TimeSpan.FromSeconds(d), C(71.7), z, C(at))).TotalSeconds;
        yield return Check("F1", bradshaw, Read, () => D(0.9, 6.3, 63));
        yield return Check("F1b", bradshaw, Read, () => 1800 / D(0.9, 6.3, 63));
        yield return Check("F1c", bradshaw, Read, () => D(0.9, 6.3, 72));
        yield return Check("F1d", bradshaw, Read, () => 15 / D(0.9, 6.3, 72));
        yield return Check("F1e", "Bradshaw 1987", Read, () => 15 / D(2.7, 7.1, 72));
        yield return Check("F1f", "Bradshaw 1987", Read, () => 1800 / D(2.7, 5.8, 63));
        double Z(double t1, double at1, double t2, double at2) => ThermalDeath.ZOf(TimeSpan.FromSeconds(t1), C(at1), TimeSpan.FromSeconds(t2), C(at2));
        yield return Check("F2", "state laws after the PMO", Read, () => Z(1800, 63, 15, 72));
        yield return Check("F2b", "state laws after the PMO", Read, () => Z(15, 72, 1, 89));
        yield return Check("F2c", bradshaw, Read, () => Z(1683.7, 52.2, 0.7, 74.4));
        yield return Check("F3", "line through two legal pairs", Derived, () => Value(ThermalDeath.TimeAt(Min(30), C(63), Z(1800, 63, 15, 72), C(65))).TotalMinutes);
        Trier.Dairy.Workings.Listed<HeatReading> Log(params double[] temperatures) => [.. temperatures.Select((value, index) => new HeatReading(Min(5 * index), C(value)))];
        double pairsZ = Z(1800, 63, 15, 72);
        yield return Check("F4", "trapezia", Derived, () => Value(ThermalDeath.EquivalentTime(Log(62, 63, 64, 64, 63.5, 63, 62.5), C(63), pairsZ)).TotalMinutes);
        yield return Check("F4b", "trapezia", Derived, () => Value(ThermalDeath.EquivalentTime(Log(62, 62), C(63), pairsZ)).TotalMinutes / 5);
        for (var i = 1; i <= 4; i++)
        {
            var salt = SaltInMoisture.FromGramsPer100Grams(i + 1);
            yield return Check($"F5.{i}", "osmotic coefficient 0.93", Memory, () => Value(WaterActivityOfSalt.Of(salt)).Value);
        }
    }
}
