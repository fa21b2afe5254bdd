using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.CaveAir;

/// <summary>Which constants the wet-bulb formula takes.</summary>
public enum PsychrometerConstants
{
    /// <summary>WMO-No. 8 (2012): 6.53e-4 (1 + 9.44e-4 tw), with the enhancement factor.</summary>
    Wmo,

    /// <summary>AMS glossary: 6.60e-4 (1 + 0.00115 tw), without it.</summary>
    Ams,
}

/// <summary>Humidity of air. es = 6.112 exp(17.62 t/(243.12 + t)) hPa, -45 to 60 C. Source [WMO8], read.</summary>
public static class Psychrometer
{
    /// <summary>Saturation vapour pressure over water, Magnus form.</summary>
    /// <param name="at">Temperature, -45 to 60 C.</param>
    public static Pressure Saturation(Temperature at) => Pressure.FromHectopascals(6.112 * Math.Exp(17.62 * at.Celsius / (243.12 + at.Celsius)));

    /// <summary>e = f es(tw) - A (1 + B tw) p (t - tw), RH = 100 e/(f es(t)). Sources [WMO8] and [AMS], read. Needs air moving at 3 m/s or more.</summary>
    /// <param name="dry">Dry bulb t.</param>
    /// <param name="wet">Wet bulb tw, not above t.</param>
    /// <param name="pressure">Air pressure p.</param>
    /// <param name="constants">Which constants.</param>
    public static Outcome<Estimate<RelativeHumidity>> Humidity(Temperature dry, Temperature wet, Pressure pressure, PsychrometerConstants constants = PsychrometerConstants.Wmo)
    {
        var gate = new Gate()
            .Check(CaveFields.DryBulb, dry.Celsius)
            .Check(CaveFields.WetBulb, wet.Celsius)
            .Check(CaveFields.AirPressure, pressure.Hectopascals);
        if (!gate.Shut && wet > dry)
            gate.Refuse(ProblemKind.Contradiction, CaveFields.WetBulb, $"Wet bulb is {CaveFields.WetBulb.Show(wet.Celsius)}, above the dry bulb {Field.Number(dry.Celsius)} °C; are the two swapped?");
        if (!gate.Shut && Raw(dry, wet, pressure, constants) <= 0)
            gate.Refuse(ProblemKind.Contradiction, CaveFields.WetBulb, $"Wet bulb is {CaveFields.WetBulb.Show(wet.Celsius)}, too far below {Field.Number(dry.Celsius)} °C for any air.");
        if (gate.Shut) return gate.Refusal<Estimate<RelativeHumidity>>();
        var likely = Raw(dry, wet, pressure, constants);
        var low = Math.Max(0, Raw(dry, Temperature.FromCelsius(wet.Celsius - 0.1), pressure, constants));
        var high = Math.Min(100, Raw(dry, Temperature.FromCelsius(wet.Celsius + 0.1), pressure, constants));
        return gate.Answer(Estimate.Between(RelativeHumidity.FromPercent(low), RelativeHumidity.FromPercent(likely), RelativeHumidity.FromPercent(Math.Max(likely, high))), new Working(
            "Relative humidity from two thermometers",
            "e = f es(tw) - A (1 + B tw) p (t - tw); RH = 100 e / (f es(t))",
            [new("Dry bulb t", dry.Celsius, "°C"), new("Wet bulb tw", wet.Celsius, "°C"), new("Pressure p", pressure.Hectopascals, "hPa")],
            [new("Relative humidity", likely, "%")],
            constants == PsychrometerConstants.Wmo ? Sources.Wmo8 : Sources.Ams)
        {
            Domain = "Moving air, 3 m/s or more",
            LikelyError = "0.1 °C of the wet bulb is about 1.1 points at 12 °C; still air reads too high (memory, medium confidence).",
        });
    }

    /// <summary>Dew point: g = ln(RH/100) + 17.62 t/(243.12 + t); td = 243.12 g/(17.62 - g). A wheel colder than this sweats. [WMO8].</summary>
    /// <param name="at">Temperature.</param>
    /// <param name="humidity">Relative humidity, above 0.</param>
    public static Outcome<Temperature> DewPoint(Temperature at, RelativeHumidity humidity)
    {
        var gate = Air(at, humidity);
        if (gate.Shut) return gate.Refusal<Temperature>();
        var g = Math.Log(humidity.Percent / 100) + (17.62 * at.Celsius / (243.12 + at.Celsius));
        var dew = Temperature.FromCelsius(243.12 * g / (17.62 - g));
        return gate.Answer(dew, new Working("Dew point", "g = ln(RH/100) + 17.62 t/(243.12 + t); td = 243.12 g/(17.62 - g)", Inputs(at, humidity), [new("Dew point", dew.Celsius, "°C")], Sources.Wmo8));
    }

    /// <summary>Water in the air: 216.7 e/(t + 273.15) g/m3, e in hPa. [WMO8]; constant derived.</summary>
    /// <param name="at">Temperature.</param>
    /// <param name="humidity">Relative humidity.</param>
    public static Outcome<double> GramsPerCubicMetre(Temperature at, RelativeHumidity humidity)
    {
        var gate = Air(at, humidity);
        if (gate.Shut) return gate.Refusal<double>();
        var grams = 216.7 * humidity.Percent / 100 * Saturation(at).Hectopascals / at.Kelvin;
        return gate.Answer(grams, new Working("Water in the air", "216.7 e / (t + 273.15)", Inputs(at, humidity), [new("Water", grams, "g/m3")], Sources.Wmo8));
    }

    /// <summary>Humidity of the same air warmed or cooled: RH2 = RH1 es(t1)/es(t2); above 100 it drips and 100 is given with a question.</summary>
    /// <param name="at">Temperature before.</param>
    /// <param name="humidity">Humidity before.</param>
    /// <param name="then">Temperature after.</param>
    public static Outcome<RelativeHumidity> AfterChange(Temperature at, RelativeHumidity humidity, Temperature then)
    {
        var gate = Air(at, humidity).Check(CaveFields.DryBulb, then.Celsius);
        if (gate.Shut) return gate.Refusal<RelativeHumidity>();
        var after = humidity.Percent * (Saturation(at) / Saturation(then));
        if (after > 100) gate.Ask(CaveFields.Humidity, $"Cooled to {CaveFields.DryBulb.Show(then.Celsius)} this air is past saturation: water settles on walls and wheels.");
        return gate.Answer(RelativeHumidity.FromPercent(Math.Min(100, after)), new Working("Humidity after a change of temperature", "RH2 = RH1 es(t1)/es(t2)", Inputs(at, humidity), [new("Relative humidity", Math.Min(100, after), "%")], Sources.Wmo8));
    }

    /// <summary>How much faster a surface dries in one air than in another: (aw - RH1)/(aw - RH2). Derived.</summary>
    /// <param name="surface">Water activity of the surface.</param>
    /// <param name="drier">The drier air.</param>
    /// <param name="damper">The damper air, below the surface's water activity.</param>
    public static Outcome<double> DryingRatio(WaterActivity surface, RelativeHumidity drier, RelativeHumidity damper)
    {
        var gate = new Gate()
            .Check(CaveFields.WaterActivity, surface.Value)
            .Check(CaveFields.Humidity, drier.Percent)
            .Check(CaveFields.Humidity, damper.Percent);
        if (!gate.Shut && surface.Value <= damper.Percent / 100)
            gate.Refuse(ProblemKind.Contradiction, CaveFields.Humidity, $"Relative humidity {CaveFields.Humidity.Show(damper.Percent)} is not below the surface's water activity {Field.Number(surface.Value)}; nothing dries there.");
        if (gate.Shut) return gate.Refusal<double>();
        var ratio = (surface.Value - (drier.Percent / 100)) / (surface.Value - (damper.Percent / 100));
        return gate.Answer(ratio, new Working("Drying compared", "(aw - RH1) / (aw - RH2)", [new("Water activity", surface.Value), new("RH1", drier.Percent, "%"), new("RH2", damper.Percent, "%")], [new("Ratio", ratio)], Sources.Arithmetic));
    }

    private static double Raw(Temperature dry, Temperature wet, Pressure pressure, PsychrometerConstants constants)
    {
        var p = pressure.Hectopascals;
        var (f, a, b) = constants == PsychrometerConstants.Wmo ? (1.0016 + (3.15e-6 * p) - (0.074 / p), 6.53e-4, 9.44e-4) : (1.0, 6.60e-4, 0.00115);
        var vapour = (f * Saturation(wet).Hectopascals) - (a * (1 + (b * wet.Celsius)) * p * (dry - wet));
        return 100 * vapour / (f * Saturation(dry).Hectopascals);
    }

    private static Gate Air(Temperature at, RelativeHumidity humidity) =>
        new Gate().Check(CaveFields.DryBulb, at.Celsius).Check(CaveFields.Humidity, humidity.Percent);

    private static Listed<Given> Inputs(Temperature at, RelativeHumidity humidity) =>
        [new("Temperature t", at.Celsius, "°C"), new("Relative humidity", humidity.Percent, "%")];
}
