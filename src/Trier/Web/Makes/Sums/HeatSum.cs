using System.Collections.Immutable;
using Trier.Dairy.Heating;
using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;
using Trier.Trials.Makes.Sheets;
using DairyField = Trier.Dairy.Workings.Field;

namespace Trier.Web.Makes.Sums;

/// <summary>How long it takes to heat this vat, and how much heat.</summary>
internal sealed class HeatSum : BenchSum
{
    private const double WarmestMeasured = 38.9;
    private static readonly DairyField Reaches = HeatFields.Efficiency with { Unit = "%", Highest = 100, UsuallyFrom = 35, UsuallyTo = 95 };

    public override string Key => "heat";

    public override string Name => "Heating the vat";

    public override string Answers => "how long on this stove, and how much heat";

    public override ImmutableArray<SumGroup> Groups =>
    [
        new("",
        [
            SumField.Number("milk", "Milk", MilkFields.MilkVolume),
            MilkEntries.Animal,
            SumField.Number("from", "It is at", HeatFields.Temperature),
            SumField.Number("to", "It has to reach", HeatFields.Temperature),
            SumField.Number("power", "Power of the ring or heater", HeatFields.Power),
            SumField.Number("reaches", "Part of the heat that reaches the milk", Reaches, hint: "40 to 80 if empty", mayBeEmpty: true),
        ]),
    ];

    public override void Work(SumWork work)
    {
        var (milk, from) = (work.Average(), Temperature.FromCelsius(work["from"]));
        // The density table ends at 38.9 °C; the one per cent above it is less than a mark on a pot is off.
        if (work.Take(MilkAmount.MassOf(milk, Volume.FromLitres(work["milk"]), Temperature.FromCelsius(Math.Clamp(work["from"], 0, WarmestMeasured))), "milk") is not { } mass) return;
        var part = work.Has("reaches") ? Estimate.Exactly(work["reaches"] / 100) : Estimate.Between(0.4, 0.6, 0.8);
        if (work.Take(MilkHeat.Need(milk, mass.Value, from, Temperature.FromCelsius(work["to"]), Power.FromWatts(work["power"]), part), "to") is not { Value: var need } answer) return;
        var working = answer.Working with { Parts = [mass.Working] };
        work.Say(new("Time", Measure.Time, need.Time.Likely.TotalMinutes, working, need.Time.Low.TotalMinutes, need.Time.High.TotalMinutes));
        work.Say("Heat the milk takes up", work.Units.Number(need.Energy.KilowattHours, "0.00") + " kWh", working);
    }
}
