using Trier.Dairy.CaveAir;
using Trier.Dairy.Quantities;
using static Trier.Dairy.Workings.Status;

namespace Trier.Dairy.Tests;

public static partial class WorkedExamples
{
    private static RelativeHumidity Rh(double percent) => RelativeHumidity.FromPercent(percent);

    private static double Humid(double dry, double wet, double hectopascals = 1013.25, PsychrometerConstants constants = PsychrometerConstants.Wmo) =>
        Value(Psychrometer.Humidity(C(dry), C(wet), Pressure.FromHectopascals(hectopascals), constants)).Likely.Percent;

    private static IEnumerable<WorkedExample> Air()
    {
        const string wmo = "WMO-No. 8 (2012)";
        yield return Check("H1", wmo, Read, () => Humid(12, 11));
        yield return Check("H1b", "AMS glossary", Read, () => Humid(12, 11, constants: PsychrometerConstants.Ams));
        yield return Check("H1c", wmo, Read, () => Humid(12, 11, 850));
        yield return Check("H2", wmo, Read, () => Humid(12, 11.5));
        yield return Check("H3", wmo, Read, () => Humid(22, 20));
        yield return Check("H4", wmo, Read, () => Humid(12, 11.1) - Humid(12, 11));
        yield return Check("H5", wmo, Read, () => Value(Psychrometer.DewPoint(C(12), Rh(85))).Celsius);
        yield return Check("H5b", wmo, Read, () => Value(Psychrometer.DewPoint(C(20), Rh(60))).Celsius);
        yield return Check("H6", "ideal gas", Derived, () => Value(Psychrometer.GramsPerCubicMetre(C(12), Rh(85))));
        yield return Check("H6b", "ideal gas", Derived, () => Value(Psychrometer.GramsPerCubicMetre(C(12), Rh(100))));
        yield return Check("H7", wmo, Read, () => Value(Psychrometer.AfterChange(C(12), Rh(85), C(14))).Percent);
        yield return Check("H7b", wmo, Read, () => Value(Psychrometer.AfterChange(C(12), Rh(85), C(10))).Percent);
        yield return Check("H8", wmo, Read, () => Psychrometer.Saturation(C(12)).Hectopascals);
        yield return Check("H8b", wmo, Read, () => Psychrometer.Saturation(C(20)).Hectopascals);
        yield return Check("W3", "drying goes with aw - RH", Derived, () => Value(Psychrometer.DryingRatio(WaterActivity.FromValue(0.97), Rh(85), Rh(92))));
    }
}
