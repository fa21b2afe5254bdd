using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Dairy.Tables;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Safety;

/// <summary>How a legal pair is carried out.</summary>
public enum HeatVessel
{
    /// <summary>A vat or pot held as a whole.</summary>
    Vat,

    /// <summary>Milk flowing through a plant made for it.</summary>
    ContinuousFlow,
}

/// <summary>A pair of temperature and time that the law lists.</summary>
/// <param name="Temperature">Every particle at least this hot.</param>
/// <param name="Hold">Without a break for at least this long.</param>
/// <param name="Vessel">How it is carried out.</param>
public sealed record LegalPair(Temperature Temperature, TimeSpan Hold, HeatVessel Vessel)
{
    /// <summary>The pairs. Source [PMO], read; card: Tables/pasteurisation_pairs.md.</summary>
    public static readonly Listed<LegalPair> All = EmbeddedTable.Read("pasteurisation_pairs", row => new LegalPair(
        Temperature.FromCelsius(row.Number("celsius")), TimeSpan.FromSeconds(row.Number("seconds")), row.Word<HeatVessel>("vessel")));
}

/// <summary>What the record of a treatment shows. It says which listed pair the readings meet, never that a milk is safe.</summary>
/// <param name="Met">The vat pair the readings meet, at the temperature this milk needs, or null.</param>
/// <param name="LongestHold">Longest unbroken time at or above that temperature.</param>
/// <param name="Needed">The temperature the vat pair needs for this milk.</param>
/// <param name="Notes">Plain sentences: what was not met, what was not recorded, who decides.</param>
public sealed record PasteurisationRecord(LegalPair? Met, TimeSpan LongestHold, Temperature Needed, Listed<string> Notes);

/// <summary>A pot's heat treatment against the legal vat pair, and against that alone.</summary>
/// <remarks>
/// 63 C for 30 min without a break [PMO], read; 3 C more with fat of 10 % or more, added sweetener, or total solids of 18 % or more (read in one state's
/// text), which takes in some sheep's milk. The air above must be 3 C hotter than the minimum throughout (memory, high confidence). Pairs for flowing
/// milk are not claimed for a pot, and nothing is claimed between pairs.
/// </remarks>
public static class Pasteurisation
{
    private const double RicherMilkAdds = 3;
    private const double HeadspaceAdds = 3;
    private const double WidestGapMinutes = 5;

    /// <summary>Judges the readings.</summary>
    /// <param name="milk">The milk.</param>
    /// <param name="readings">At least two, in order of time; between them the temperature is taken as straight.</param>
    /// <param name="sweetened">Whether sweetener was added.</param>
    public static Outcome<PasteurisationRecord> Judge(MilkComposition milk, Listed<HeatReading> readings, bool sweetened = false)
    {
        var gate = HeatReading.Check(readings);
        if (gate.Shut) return gate.Refusal<PasteurisationRecord>();
        var pair = LegalPair.All.First(entry => entry.Vessel == HeatVessel.Vat);
        var rich = sweetened || milk.Fat.Percent >= 10 || milk.TotalSolids.Percent >= 18;
        var needed = Temperature.FromCelsius(pair.Temperature.Celsius + (rich ? RicherMilkAdds : 0));
        var (hold, start, end) = LongestAtOrAbove(readings, needed);
        var held = hold >= pair.Hold;
        var notes = new List<string>();
        var during = readings.Where(reading => reading.After >= start && reading.After <= end).ToArray();
        if (rich) notes.Add($"This milk is rich or sweetened, so the pair is taken 3 °C higher: {Field.Number(needed.Celsius)} °C.");
        if (!held)
        {
            notes.Add($"The longest unbroken hold at {Field.Number(needed.Celsius)} °C or above is {Field.Number(hold.TotalMinutes)} min; the law lists {Field.Number(pair.Hold.TotalMinutes)} min.");
            if (readings.Max(reading => reading.Milk.Celsius) > needed.Celsius)
                notes.Add("It was hotter for a shorter time; the law lists no pair between those for a vat, and none is worked out here.");
        }

        if (held && during.Any(reading => reading.Headspace is null))
            notes.Add("The air above the milk was not read throughout; it has to stay 3 °C above the milk's minimum, lid on.");
        var cold = during.Any(reading => reading.Headspace is { } air && air.Celsius < needed.Celsius + HeadspaceAdds);
        if (held && cold) notes.Add($"The air above the milk fell below {Field.Number(needed.Celsius + HeadspaceAdds)} °C.");
        var gap = readings.Zip(readings.Skip(1), (one, next) => (next.After - one.After).TotalMinutes).Max();
        if (gap > WidestGapMinutes) gate.Ask(SafetyFields.Hold, $"Readings are up to {Field.Number(gap)} min apart: was the milk at temperature between them?");
        notes.Add("This compares a record with a listed pair; whether a milk may be used is for local food law, and for health a professional.");
        var record = new PasteurisationRecord(held && !cold ? pair with { Temperature = needed } : null, hold, needed, [.. notes]);
        return gate.Answer(record, new Working(
            "Heat treatment against the legal vat pair",
            "longest unbroken time at or above the pair's temperature, straight between readings",
            [new("Temperature needed", needed.Celsius, "°C"), new("Hold needed", pair.Hold.TotalMinutes, "min"), new("Readings", readings.Count)],
            [new("Longest hold", hold.TotalMinutes, "min")],
            Sources.Pmo)
        {
            Domain = "Vat or pot, stirred, every particle",
            LikelyError = "A thermometer 0.5 °C off decides; check it.",
            AlsoFrom = [Sources.MemoryHigh],
        });
    }

    private static (TimeSpan Hold, TimeSpan Start, TimeSpan End) LongestAtOrAbove(Listed<HeatReading> readings, Temperature needed)
    {
        var best = (Hold: TimeSpan.Zero, Start: TimeSpan.Zero, End: TimeSpan.Zero);
        TimeSpan? since = readings[0].Milk >= needed ? readings[0].After : null;
        for (var i = 1; i < readings.Count; i++)
        {
            var (before, now) = (readings[i - 1], readings[i]);
            if (before.Milk < needed && now.Milk >= needed) since = Crossing(before, now, needed);
            if (since is { } begin)
            {
                var end = now.Milk >= needed ? now.After : Crossing(before, now, needed);
                if (end - begin > best.Hold) best = (end - begin, begin, end);
            }

            if (now.Milk < needed) since = null;
        }

        return best;
    }

    private static TimeSpan Crossing(HeatReading before, HeatReading now, Temperature needed) =>
        before.After + ((now.After - before.After) * ((needed - before.Milk) / (now.Milk - before.Milk)));
}
