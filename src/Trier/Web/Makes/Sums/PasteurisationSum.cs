using System.Collections.Immutable;
using Trier.Dairy.Quantities;
using Trier.Dairy.Safety;

namespace Trier.Web.Makes.Sums;

/// <summary>A pot's readings against the listed vat pair, and against that alone.</summary>
internal sealed class PasteurisationSum : BenchSum
{
    private const int Rows = 8;

    public override string Key => "pasteurisation";

    public override string Name => "Heat treatment against the listed pair";

    public override string Answers => "whether readings of a pot meet 63 °C for 30 min";

    public override string Mind =>
        "For a pot or vat the law this was taken from lists one pair, 63 °C for 30 min, all of it, stirred, the air under the lid 3 °C higher. Pairs of a few seconds are for milk flowing "
        + "through a plant made for it and are not claimed for a pot. Other countries list other pairs: local food law decides, and for health a professional. Nothing here says that a milk may be used.";

    public override ImmutableArray<SumGroup> Groups =>
    [
        new("", [MilkEntries.Animal, SumField.Choice("sweetened", "Sweetener added", ("no", "no"), ("yes", "yes"))]),
        .. Enumerable.Range(1, Rows).Select(row => new SumGroup(
            $"Reading {row}",
            [
                SumField.Number($"minute-{row}", "After", SafetyFields.Hold with { UsuallyTo = 240 }, hint: "from any start", mayBeEmpty: true),
                SumField.Number($"milk-{row}", "Coldest milk", SafetyFields.Temperature, hint: "", mayBeEmpty: true),
                SumField.Number($"air-{row}", "Air under the lid", SafetyFields.Headspace, mayBeEmpty: true),
            ],
            row > 3)),
    ];

    public override void Work(SumWork work)
    {
        var readings = new List<HeatReading>();
        foreach (var row in Enumerable.Range(1, Rows))
        {
            var (minute, milk, air) = ($"minute-{row}", $"milk-{row}", $"air-{row}");
            if (!work.Has(minute) && !work.Has(milk) && !work.Has(air)) continue;
            if (!work.Has(minute)) work.Refuse(minute, $"Reading {row} has no time.");
            else if (!work.Has(milk)) work.Refuse(milk, $"Reading {row} has no temperature of the milk.");
            else readings.Add(new(TimeSpan.FromMinutes(work[minute]), Temperature.FromCelsius(work[milk]), work.Has(air) ? Temperature.FromCelsius(work[air]) : null));
        }

        if (work.Problems.Count > 0 || work.Take(Pasteurisation.Judge(work.Average(), [.. readings], work.Chosen("sweetened") == "yes"), "minute-1") is not { Value: var record } answer) return;
        var hold = work.Units.Write(Trier.Trials.Makes.Sheets.Measure.Time, record.LongestHold.TotalMinutes);
        work.Say(record.Met is null ? "These readings do not meet the listed pair" : "These readings meet the listed pair", $"{hold} at {work.Units.Write(Trier.Trials.Makes.Sheets.Measure.Temperature, record.Needed.Celsius)} or above", answer.Working);
        work.Notes.AddRange(record.Notes);
    }
}
