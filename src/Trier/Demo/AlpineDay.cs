using System.Collections.Immutable;
using Trier.Storage.Makes;
using Trier.Trials.Common;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;

namespace Trier.Demo;

/// <summary>One line of an invented vat day.</summary>
/// <param name="Step">The step's number.</param>
/// <param name="At">Day of the make (0, 1, 2 ...) and time.</param>
/// <param name="Readings">What was read.</param>
/// <param name="Note">A few words.</param>
/// <param name="Part">The part of a split vat, or null.</param>
/// <param name="Used">The lot or brine, or null.</param>
/// <param name="Starts">Whether this is the rennet going in.</param>
internal sealed record DemoTouch(int Step, (int Day, int Hour, int Minute) At, ImmutableArray<(Target Target, double Value)> Readings, string Note = "", int? Part = null, ThingId? Used = null, bool Starts = false);

/// <summary>Writes an invented vat day touch by touch, each at its own time.</summary>
internal sealed class AlpineDay(MakeStore makes, DemoClock clock, MakeId id, DateTimeOffset midnight)
{
    public async Task TouchAsync(DemoTouch touch)
    {
        var when = clock.Set(midnight.AddDays(touch.At.Day).AddHours(touch.At.Hour).AddMinutes(touch.At.Minute));
        await ActAsync(make => touch.Starts
            ? make.Start(when, touch.Step, when, touch.Part, touch.Used)
            : make.Finish(when, touch.Step, new StepMark(when, [.. touch.Readings.Select(reading => new StepReading(reading.Target.Key, reading.Value))], touch.Note, touch.Used), touch.Part));
    }

    public async Task ActAsync(Func<Make, Outcome<ImmutableArray<MakeEvent>>> act) => Sound(await makes.ActAsync(id, null, act));

    public async Task BearAsync(params ImmutableArray<BornWheel> wheels) => Sound(await makes.BearAsync(id, null, wheels));

    private static void Sound(Outcome<Make> outcome)
    {
        if (!outcome.Ok) throw new InvalidOperationException(outcome.Problems[0].Sentence);
    }
}
