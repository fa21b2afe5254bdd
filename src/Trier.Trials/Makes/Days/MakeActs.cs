using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Trials.Makes.Days;

/// <summary>What can be done on a vat day. Each act yields events, or the sentences that stand in its way.</summary>
public sealed partial record Make
{
    private const int LongestNote = 400;
    private static readonly TimeSpan Ahead = TimeSpan.FromMinutes(10);
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    /// <summary>Begins a make.</summary>
    /// <param name="at">Now.</param>
    /// <param name="name">What people call it.</param>
    /// <param name="line">The recipe; its current version is used and frozen by it.</param>
    /// <param name="vat">The day's milk and means, checked.</param>
    /// <param name="begins">When the first step begins.</param>
    /// <param name="invented">Whether it is an invented example.</param>
    public static Outcome<ImmutableArray<MakeEvent>> Begin(DateTimeOffset at, string name, RecipeLine line, Vat vat, DateTimeOffset begins, bool invented = false)
    {
        var trimmed = name.Trim();
        if (trimmed.Length is 0 or > 60) return Fault("name", "Give the make a name of 1 to 60 letters, such as “House, 3 May”.");
        return Do(new MakeBegun(at, trimmed, line.Id, line.Current.Number, line.Current.Recipe.ToDraft(), vat.Draft, begins, invented));
    }

    /// <summary>The rennet is in; flocculation is awaited.</summary>
    /// <param name="at">Now.</param>
    /// <param name="number">The renneting step.</param>
    /// <param name="when">When the rennet went in.</param>
    /// <param name="part">The part of a split vat, or null for the whole.</param>
    /// <param name="used">The lot of rennet, or null.</param>
    public Outcome<ImmutableArray<MakeEvent>> Start(DateTimeOffset at, int number, DateTimeOffset when, int? part = null, ThingId? used = null)
    {
        if (Find(number, part) is not { } step) return Fault(NoSuchStep(number, part));
        if (step.Step.Kind != StepKind.Renneting) return Fault("step", "Only rennet has a moment of its own before the step is done.");
        if (step.Started is not null) return Fault("step", "The rennet is in already; a slip in its time is corrected in the record.");
        return (When(at, when) ?? AfterLast(step, when)) is { } wrong ? Fault(wrong) : Do(new StepStarted(at, number, when, part, used));
    }

    /// <summary>A step was done.</summary>
    /// <param name="at">Now.</param>
    /// <param name="number">Which step.</param>
    /// <param name="mark">When and how.</param>
    /// <param name="part">The part of a split vat, or null for the whole.</param>
    public Outcome<ImmutableArray<MakeEvent>> Finish(DateTimeOffset at, int number, StepMark mark, int? part = null)
    {
        if (Find(number, part) is not { } step) return Fault(NoSuchStep(number, part));
        if (step.Done is not null) return Fault("step", $"“{step.Step.Heading}” is done already; a slip is corrected in the record.");
        if (step is { Step.Kind: StepKind.Renneting, Started: null }) return Fault("step", "Say first when the rennet went in: flocculation is counted from there.");
        var problems = Check(at, step, mark);
        return problems.Count > 0 ? Outcome.Fault<ImmutableArray<MakeEvent>>(problems) : Do(new StepDone(at, number, mark with { Used = mark.Used ?? step.StartedWith }, part));
    }

    /// <summary>Corrects what was written of a step; the old value is kept.</summary>
    /// <param name="at">Now.</param>
    /// <param name="number">Which step.</param>
    /// <param name="mark">What stands from now on.</param>
    /// <param name="why">Why; may be empty.</param>
    /// <param name="part">The part of a split vat, or null for the whole.</param>
    /// <param name="started">When the rennet really went in, where that was the slip; else null.</param>
    public Outcome<ImmutableArray<MakeEvent>> Correct(DateTimeOffset at, int number, StepMark mark, string why, int? part = null, DateTimeOffset? started = null)
    {
        if (Find(number, part) is not { Done: { } stood } found) return Fault("step", "Nothing is written of this step yet.");
        var moved = started is { } rennet && found.Started is { } before && rennet != before ? started : null;
        var step = found with { Started = moved ?? found.Started };
        var problems = Check(at, step, mark, timeStands: mark.When == stood.When);
        if (moved is { } wentIn && (When(at, wentIn) ?? AfterLast(step, wentIn)) is { } early) problems.Add(early with { Field = "started" });
        if (mark.When != stood.When && BeforeNext(step, mark.When) is { } late) problems.Add(late);
        if (why.Length > LongestNote) problems.Add(new("why", "The reason is longer than 400 letters: shorten it."));
        if (problems.Count > 0) return Outcome.Fault<ImmutableArray<MakeEvent>>(problems);
        return mark == stood && moved is null ? Fault("step", "This says what stands already; nothing was changed.") : Do(new StepCorrected(at, number, mark, why.Trim(), part, moved));
    }

    /// <summary>Takes the last touch back.</summary>
    /// <param name="at">Now.</param>
    /// <param name="sequence">The event, as the page that shows the key knows it.</param>
    public Outcome<ImmutableArray<MakeEvent>> Undo(DateTimeOffset at, int sequence) =>
        LastDeed is { Event: VatSplit } && !Wheels.IsEmpty ? Fault("undo", "The wheels have their numbers and name their part: the split stands.")
        : LastDeed is { } last && last.Sequence == sequence
            ? Do(new DeedUndone(at, sequence))
            : Fault("undo", "Something was done since; correct the slip in the record instead, where the old value is kept.");

    /// <summary>Gives the vat's wheels their numbers.</summary>
    /// <param name="at">Now.</param>
    /// <param name="wheels">The wheels.</param>
    public Outcome<ImmutableArray<MakeEvent>> Bear(DateTimeOffset at, ImmutableArray<BornWheel> wheels)
    {
        var problems = new List<Problem>();
        if (Wheels.Length + wheels.Length > Vat.MostWheels) problems.Add(new("wheels", "One vat has at most 24 wheels."));
        if (wheels.IsEmpty) problems.Add(new("wheels", "Give at least one wheel."));
        for (var i = 0; i < wheels.Length; i++)
        {
            var place = FigureText.Whole(i + 1);
            if (wheels[i].Name.Trim().Length is 0 or > 30) problems.Add(new($"name-{place}", "Give the wheel a name of 1 to 30 letters."));
            if (Split is null ? wheels[i].Part is not null : !Lanes.Any(lane => lane.Part == wheels[i].Part)) problems.Add(new($"part-{place}", "Say which part of the vat this wheel is from."));
            if (wheels[i].Differs.Length > LongestNote) problems.Add(new($"differs-{place}", "What differs is longer than 400 letters: shorten it."));
            if (wheels[i].Kilograms is { } mass && Trier.Dairy.Composition.CompositionFields.CheeseMass.ProblemWith(mass) is { } wrong) problems.Add(new($"mass-{place}", wrong.Sentence));
        }

        return problems.Count > 0 ? Outcome.Fault<ImmutableArray<MakeEvent>>(problems) : Do(new WheelsBorn(at, wheels));
    }

    /// <summary>Keeps a meter's curve with the make.</summary>
    /// <param name="at">Now.</param>
    /// <param name="curve">The curve.</param>
    public Outcome<ImmutableArray<MakeEvent>> Keep(DateTimeOffset at, MeterCurve curve) =>
        curve.Part is { } part && Lanes.All(lane => lane.Part != part) ? Fault("part", "This vat has no such part.")
        : curve.Points.Length < 2 ? Fault("file", "The file holds fewer than two readings; nothing can be drawn.")
        : Curves.Any(known => known.Target == curve.Target && known.Part == curve.Part && known.Points.SequenceEqual(curve.Points)) ? Fault("file", "These readings are here already; nothing was taken in twice.")
        : Do(new MeterRead(at, curve));

    // A touch made before the phone had heard of the split names no part.
    private Problem NoSuchStep(int number, int? part) => new("step", part is null && Split is { } split && number >= split.From && number <= Recipe.Steps.Length
        ? "The vat was split before this step: load the page again and say which part it was."
        : "This make has no such step.");

    private List<Problem> Check(DateTimeOffset at, DayStep step, StepMark mark, bool timeStands = false)
    {
        var problems = new List<Problem>();
        if (When(at, mark.When) is { } wrong) problems.Add(wrong);
        else if (!timeStands && AfterLast(step, mark.When) is { } early) problems.Add(early);
        if (step.Started is { } rennet && mark.When < rennet) problems.Add(new("when", "Flocculation is written before the rennet went in: look at the times."));
        if (mark.Note.Length > LongestNote) problems.Add(new("note", "The note is longer than 400 letters: shorten it."));
        foreach (var reading in mark.Readings)
        {
            if (StepShape.Of(step.Step.Kind).FirstOrDefault(wanted => wanted.Target.Key == reading.Key) is not { } wanted) problems.Add(new(reading.Key, $"“{reading.Key}” is not read at this step."));
            else if (wanted.Field.ProblemWith(reading.Value) is { } problem) problems.Add(new(reading.Key, problem.Sentence));
        }

        return problems;
    }

    // A phone's clock may run ahead of the host's a little; a time of tomorrow is a slip.
    private Problem? When(DateTimeOffset at, DateTimeOffset when) =>
        when > at + Ahead ? new("when", "This time lies ahead: write the time at which it was done.")
        : when < Begun.Begins - TimeSpan.FromDays(1) ? new("when", "This time lies more than a day before the make began: look at the date.") : null;

    // Typed times are whole minutes and stamped ones are not: within a minute two steps are at one time.
    private Problem? AfterLast(DayStep step, DateTimeOffset when) =>
        LaneOf(step.Part).Steps.LastOrDefault(other => other.Number < step.Number && other.Done is not null) is { Done: { } last } before && when < last.When - Minute
            ? new("when", $"This time lies before the end of “{before.Step.Heading}” at {last.When.ToString("HH:mm", CultureInfo.InvariantCulture)}: look at the times.") : null;

    private Problem? BeforeNext(DayStep step, DateTimeOffset when) =>
        LaneOf(step.Part).Steps.FirstOrDefault(other => other.Number > step.Number && other.Done is not null) is { } next && (next.Started ?? next.Done!.When) is var then && when > then + Minute
            ? new("when", $"This time lies after “{next.Step.Heading}” at {then.ToString("HH:mm", CultureInfo.InvariantCulture)}: look at the times.") : null;

    private static Outcome<ImmutableArray<MakeEvent>> Do(params ImmutableArray<MakeEvent> events) => Outcome.Of(events);

    private static Outcome<ImmutableArray<MakeEvent>> Fault(string field, string sentence) => Outcome.Fault<ImmutableArray<MakeEvent>>(field, sentence);

    private static Outcome<ImmutableArray<MakeEvent>> Fault(Problem problem) => Outcome.Fault<ImmutableArray<MakeEvent>>([problem]);
}
