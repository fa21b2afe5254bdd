using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Safety;

/// <summary>Heat and time by a straight line of the logarithm. For information only: the legal pairs lie on no single line, and nothing here passes a milk.</summary>
/// <remarks>t2 = t1 10^((T1 - T2)/z); F = integral 10^((T - Tref)/z) dt by trapezia. Figures for Listeria: D 0.9 s at 71.7 C, z 6.3 C [Bradshaw1985], read; another fit D 0.9 to 2.7 s, z 5.8 to 7.1.</remarks>
public static class ThermalDeath
{
    /// <summary>D at another temperature: D2 = D1 10^((T1 - T2)/z).</summary>
    /// <param name="decimalTime">D1.</param>
    /// <param name="at">T1.</param>
    /// <param name="z">z, above 0.</param>
    /// <param name="then">T2.</param>
    public static Outcome<TimeSpan> TimeAt(TimeSpan decimalTime, Temperature at, double z, Temperature then)
    {
        var gate = new Gate()
            .Check(SafetyFields.D, decimalTime.TotalSeconds)
            .Check(SafetyFields.Temperature, at.Celsius)
            .Check(SafetyFields.Temperature, then.Celsius)
            .Check(SafetyFields.Z, z);
        if (gate.Shut) return gate.Refusal<TimeSpan>();
        var time = TimeSpan.FromSeconds(decimalTime.TotalSeconds * Math.Pow(10, (at - then) / z));
        return gate.Answer(time, new Working(
            "Time of equal effect",
            "t2 = t1 10^((T1 - T2)/z)",
            [new("Time t1", decimalTime.TotalSeconds, "s"), new("T1", at.Celsius, "°C"), new("T2", then.Celsius, "°C"), new("z", z, "°C")],
            [new("Time t2", time.TotalSeconds, "s")],
            Sources.Bradshaw)
        {
            LikelyError = "Fits of one bacterium differ several fold; for information only, never in place of a legal pair.",
        });
    }

    /// <summary>z of two points: (T2 - T1)/log10(t1/t2).</summary>
    /// <param name="first">First time.</param>
    /// <param name="at">Its temperature.</param>
    /// <param name="second">Second time, another than the first.</param>
    /// <param name="then">Its temperature.</param>
    /// <exception cref="ArgumentException">The two times are equal.</exception>
    public static double ZOf(TimeSpan first, Temperature at, TimeSpan second, Temperature then) =>
        first == second ? throw new ArgumentException("Two equal times define no z.", nameof(second)) : (then - at) / Math.Log10(first / second);

    /// <summary>Equivalent time at a reference temperature, from readings. For information only.</summary>
    /// <param name="readings">At least two, in order of time.</param>
    /// <param name="reference">Reference temperature.</param>
    /// <param name="z">z.</param>
    public static Outcome<TimeSpan> EquivalentTime(Listed<HeatReading> readings, Temperature reference, double z)
    {
        var gate = HeatReading.Check(readings).Check(SafetyFields.Z, z);
        if (gate.Shut) return gate.Refusal<TimeSpan>();
        var total = 0.0;
        for (var i = 1; i < readings.Count; i++)
            total += (readings[i].After - readings[i - 1].After).TotalSeconds * (Effect(readings[i - 1]) + Effect(readings[i])) / 2;
        return gate.Answer(TimeSpan.FromSeconds(total), new Working(
            "Equivalent time, for information",
            "F = integral 10^((T - Tref)/z) dt, by trapezia",
            [new("Readings", readings.Count), new("Reference", reference.Celsius, "°C"), new("z", z, "°C")],
            [new("Equivalent time", total / 60, "min")],
            Sources.Bradshaw)
        {
            LikelyError = "The law passes no milk by this sum; a dip below the temperature starts the hold again.",
        });
        double Effect(HeatReading reading) => Math.Pow(10, (reading.Milk - reference) / z);
    }
}
