using System.Collections.Immutable;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Sheets;

namespace Trier.Trials.Makes.Shelf;

/// <summary>One use of a thing by a make: a lot that went into a vat, a brine that wheels lay in.</summary>
/// <param name="At">When.</param>
/// <param name="Make">The make.</param>
/// <param name="Step">The step.</param>
/// <param name="Wheels">The wheels it reached; for a lot all of its vat or part, numbered once they are born.</param>
/// <param name="RawMilk">Whether the milk was raw or its treatment not said.</param>
public sealed record ThingUse(DateTimeOffset At, Make Make, DayStep Step, ImmutableArray<BornWheel> Wheels, bool RawMilk);

/// <summary>A thing's whole history: the lines written at the shelf, and what the makes say they used it for.</summary>
public static class ThingHistory
{
    /// <summary>The uses the makes tell of, oldest first.</summary>
    /// <param name="thing">The thing.</param>
    /// <param name="makes">All makes.</param>
    public static ImmutableArray<ThingUse> Uses(Thing thing, ImmutableArray<Make> makes) =>
    [
        .. makes.SelectMany(make => make.AllSteps.Where(step => step.Done?.Used == thing.Id).Select(step => new ThingUse(
            step.Done!.When,
            make,
            step,
            [.. make.Wheels.Where(wheel => step.Part is null || wheel.Part == step.Part)],
            make.Begun.Vat.Treatment != HeatTreatment.Pasteurised))).OrderBy(use => use.At),
    ];

    /// <summary>The thing with its uses among its lines, so that what should be minded takes them in.</summary>
    /// <param name="thing">The thing.</param>
    /// <param name="makes">All makes.</param>
    public static Thing With(Thing thing, ImmutableArray<Make> makes) => thing with
    {
        Log = [.. thing.Log.Concat(Uses(thing, makes).Select(use => new ThingEvent(use.At, ThingDeed.Used, use.Make.Begun.Name, [.. use.Wheels.Select(wheel => wheel.Number)], use.RawMilk))).OrderBy(line => line.At)],
    };
}
