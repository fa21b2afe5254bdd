using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Heating;

/// <summary>The cooking ramp. Rate = dT/dt: derived. Limits: practice, from guides that disagree (Tables/cooking_guides.md).</summary>
/// <remarks>
/// Too fast sets a skin on the grain and traps whey. Asked about above 0.2 C/min where the ramp begins in the first 10 minutes after the cut, however long
/// it goes on: a mean rate says nothing of a gentle beginning. Above 0.5 C/min later.
/// </remarks>
public static class CookRamp
{
    private const double GentleMinutes = 10;
    private const double GentleLimit = 0.2;
    private const double LaterLimit = 0.5;

    /// <summary>The mean rate of a ramp.</summary>
    /// <param name="from">Start.</param>
    /// <param name="to">End.</param>
    /// <param name="time">Time taken.</param>
    /// <param name="sinceCut">Time from the end of cutting to the start of this ramp; null where nothing was cut.</param>
    public static Outcome<HeatingRate> Rate(Temperature from, Temperature to, TimeSpan time, TimeSpan? sinceCut = null)
    {
        var gate = Ramp(from, to).Check(HeatFields.RampTime, time.TotalMinutes);
        if (gate.Shut) return gate.Refusal<HeatingRate>();
        var rate = HeatingRate.FromDegreesPerMinute((to - from) / time.TotalMinutes);
        if (sinceCut?.TotalMinutes < GentleMinutes && rate.DegreesPerMinute > GentleLimit)
            gate.Ask(HeatFields.Rate, $"Heating at {HeatFields.Rate.Show(rate.DegreesPerMinute)} from the cut on is faster than {Field.Number(GentleLimit)} °C/min, the limit of the first {Field.Number(GentleMinutes)} min: begin slower, or the grain may case and hold whey.");
        else if (rate.DegreesPerMinute > LaterLimit)
            gate.Ask(HeatFields.Rate, $"Heating at {HeatFields.Rate.Show(rate.DegreesPerMinute)} is faster than {Field.Number(LaterLimit)} °C/min; the grain may case and hold whey.");
        return gate.Answer(rate, new Working(
            "Cooking ramp",
            "rate = (T2 - T1) / t",
            [new("From T1", from.Celsius, "°C"), new("To T2", to.Celsius, "°C"), new("Time t", time.TotalMinutes, "min")],
            [new("Rate", rate.DegreesPerMinute, "°C/min")],
            Sources.Arithmetic)
        {
            Domain = "Limits 0.2 °C/min where it begins in the first 10 min after the cut, 0.5 later: common practice",
            AlsoFrom = [Sources.Practice],
        });
    }

    /// <summary>The time a ramp takes at a rate.</summary>
    /// <param name="from">Start.</param>
    /// <param name="to">End.</param>
    /// <param name="rate">Rate.</param>
    public static Outcome<TimeSpan> Time(Temperature from, Temperature to, HeatingRate rate)
    {
        var gate = Ramp(from, to).Check(HeatFields.Rate, rate.DegreesPerMinute);
        if (gate.Shut) return gate.Refusal<TimeSpan>();
        var time = TimeSpan.FromMinutes((to - from) / rate.DegreesPerMinute);
        return gate.Answer(time, new Working(
            "Time of the ramp",
            "t = (T2 - T1) / rate",
            [new("From T1", from.Celsius, "°C"), new("To T2", to.Celsius, "°C"), new("Rate", rate.DegreesPerMinute, "°C/min")],
            [new("Time", time.TotalMinutes, "min")],
            Sources.Arithmetic));
    }

    private static Gate Ramp(Temperature from, Temperature to)
    {
        var gate = new Gate().Check(HeatFields.Temperature, from.Celsius).Check(HeatFields.Temperature, to.Celsius);
        if (!gate.Shut && to <= from)
            gate.Refuse(ProblemKind.Contradiction, HeatFields.Temperature, $"Temperature goes from {Field.Number(from.Celsius)} to {Field.Number(to.Celsius)} °C; a cooking ramp rises.");
        return gate;
    }
}
