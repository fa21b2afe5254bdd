using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Acidity;

/// <summary>When a pH will be met, from the readings so far.</summary>
/// <param name="After">When, counted as the readings are, with a band that holds the true time about four times in five.</param>
/// <param name="Rate">The rate of fall it rests on.</param>
/// <param name="ReadingsUsed">How many of the last readings were used.</param>
public sealed record PhForecast(Estimate<TimeSpan> After, PhRate Rate, int ReadingsUsed);

/// <summary>A straight line through the last readings, met with the milestone; the band by inverse prediction (Fieller). Derived.</summary>
/// <remarks>
/// At most the last six readings, as the fall is no straight line for long. The scatter is never taken smaller than the meter's error. Refused below pH 5.3
/// (near the buffer maximum pH is not linear) and where the readings do not fall clearly; asked about where the answer lies further ahead than the readings reach back.
/// </remarks>
public static class PhForecasts
{
    /// <summary>Below this pH nothing is foretold.</summary>
    public const double LowestForetold = 5.3;

    private const int MostReadings = 6;

    /// <summary>Foretells when a pH is met.</summary>
    /// <param name="readings">At least three, in order of time.</param>
    /// <param name="target">The pH, 5.3 or above.</param>
    /// <param name="meterError">Standard error of one reading, such as 0.03.</param>
    public static Outcome<PhForecast> When(Listed<PhReading> readings, Ph target, double meterError = 0.03)
    {
        var gate = new Gate().Check(AcidityFields.Ph, target.Value).Check(AcidityFields.MeterError, meterError);
        for (var i = 0; i < readings.Count; i++)
        {
            gate.Check(AcidityFields.Ph, readings[i].Ph.Value);
            if (i > 0 && readings[i].After <= readings[i - 1].After)
                gate.Refuse(ProblemKind.Contradiction, AcidityFields.Readings, $"Reading {i + 1} is not later than the one before it.");
        }

        if (readings.Count < 3)
            gate.Refuse(ProblemKind.NotEnough, AcidityFields.Readings, $"There are {readings.Count} readings so far; a forecast needs at least 3.");
        if (!gate.Shut && target.Value < LowestForetold)
            gate.Refuse(ProblemKind.OutsideTheDomain, AcidityFields.Ph, $"pH {Field.Number(target.Value)} is below 5.3, where the fall slows; no time is foretold there.");
        if (gate.Shut) return gate.Refusal<PhForecast>();

        PhReading[] used = [.. readings.Skip(Math.Max(0, readings.Count - MostReadings))];
        var n = used.Length;
        var hours = used.Select(reading => reading.After.TotalHours).ToArray();
        var (meanHour, meanPh) = (hours.Average(), used.Average(reading => reading.Ph.Value));
        var spread = hours.Sum(hour => (hour - meanHour) * (hour - meanHour));
        var slope = used.Zip(hours, (reading, hour) => (hour - meanHour) * (reading.Ph.Value - meanPh)).Sum() / spread;
        var residual = Math.Sqrt(used.Zip(hours, (reading, hour) => reading.Ph.Value - meanPh - (slope * (hour - meanHour))).Sum(rest => rest * rest) / (n - 2));
        var (scatter, quantile) = residual > meterError ? (residual, StudentQuantile.Upper(0.10, n - 2)) : (meterError, StudentQuantile.Normal90);

        // Fieller: the slope must differ from zero by more than the quantile, else the band has no end.
        var g = quantile * quantile * scatter * scatter / (slope * slope * spread);
        if (slope >= 0 || g >= 1)
        {
            gate.Refuse(ProblemKind.NotEnough, AcidityFields.Readings, "The last readings do not fall clearly; nothing can be foretold from them yet.");
            return gate.Refusal<PhForecast>();
        }

        var offset = (target.Value - meanPh) / slope;
        var half = quantile * scatter / Math.Abs(slope) * Math.Sqrt(((1 - g) / n) + (offset * offset / spread));
        var (low, high) = (meanHour + ((offset - half) / (1 - g)), meanHour + ((offset + half) / (1 - g)));
        var likely = meanHour + offset;
        var ahead = likely - hours[^1];
        if (ahead > hours[^1] - hours[0])
            gate.Ask(AcidityFields.Readings, "The milestone lies further ahead than these readings reach back: read again before relying on it.");
        if (ahead < 0)
            gate.Ask(AcidityFields.Ph, "By the line of the last readings this pH is already met.");
        var forecast = new PhForecast(Estimate.Between(Hours(low), Hours(likely), Hours(high)), PhRate.FromUnitsPerHour(-slope), n);
        return gate.Answer(forecast, new Working(
            "When the pH is met",
            "least-squares line through the last readings; band by inverse prediction (Fieller)",
            [new("Readings used", n), new("Target pH", target.Value), new("Error of the meter", meterError)],
            [new("Likely after", likely, "h"), new("from", low, "h"), new("to", high, "h"), new("Rate", -slope, "pH/h")],
            Sources.Arithmetic)
        {
            Domain = "pH 5.3 and above",
            LikelyError = "The band holds the true time about four times in five if the fall stays straight; it mostly speeds up after draining and slows near 5.3.",
        });
    }

    private static TimeSpan Hours(double hours) => TimeSpan.FromHours(Math.Clamp(hours, -1e5, 1e5));
}
