using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Safety;

/// <summary>A reading during a heat treatment.</summary>
/// <param name="After">Time from any fixed start.</param>
/// <param name="Milk">Temperature of the coldest milk.</param>
/// <param name="Headspace">Temperature of the air above, or null if not read.</param>
public sealed record HeatReading(TimeSpan After, Temperature Milk, Temperature? Headspace = null)
{
    internal static Gate Check(Listed<HeatReading> readings)
    {
        var gate = new Gate();
        if (readings.Count < 2) gate.Refuse(ProblemKind.NotEnough, SafetyFields.Readings, $"{(readings.Count == 1 ? "There is 1 reading" : $"There are {readings.Count} readings")}; a hold needs at least 2.");
        for (var i = 0; i < readings.Count; i++)
        {
            gate.Check(SafetyFields.Temperature, readings[i].Milk.Celsius);
            if (i > 0 && readings[i].After <= readings[i - 1].After)
                gate.Refuse(ProblemKind.Contradiction, SafetyFields.Readings, $"Reading {i + 1} is not later than the one before it.");
        }

        return gate;
    }
}
