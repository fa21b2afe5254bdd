using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Trials.Makes.Days;

/// <summary>A step of the day: what was planned, what was done, what was written before a correction.</summary>
/// <param name="Number">1, 2, 3 ...</param>
/// <param name="Step">The recipe's step.</param>
/// <param name="Started">When the rennet went in; only for renneting.</param>
/// <param name="Done">What stands, or null while the step is to come.</param>
/// <param name="Was">Earlier values, oldest first, with when each was written over.</param>
public sealed record DayStep(int Number, Step Step, DateTimeOffset? Started, StepMark? Done, ImmutableArray<FormerMark> Was);

/// <summary>A value that was corrected.</summary>
/// <param name="Mark">What stood.</param>
/// <param name="CorrectedAt">When it was written over.</param>
/// <param name="Why">Why; may be empty.</param>
public sealed record FormerMark(StepMark Mark, DateTimeOffset CorrectedAt, string Why);

/// <summary>A vat day as it stands, read from its events.</summary>
public sealed partial record Make
{
    /// <summary>Which make.</summary>
    public required MakeId Id { get; init; }

    /// <summary>How it was begun.</summary>
    public required MakeBegun Begun { get; init; }

    /// <summary>The recipe as it was when the make began.</summary>
    public required Recipe Recipe { get; init; }

    /// <summary>The steps in order.</summary>
    public required ImmutableArray<DayStep> Steps { get; init; }

    /// <summary>Wheels, once they are born.</summary>
    public ImmutableArray<BornWheel> Wheels { get; init; } = [];

    /// <summary>Curves read from meters' files.</summary>
    public ImmutableArray<MeterCurve> Curves { get; init; } = [];

    /// <summary>All events, with their numbers.</summary>
    public required ImmutableArray<LoggedMake> Log { get; init; }

    /// <summary>Sequences of events that were taken back.</summary>
    public ImmutableHashSet<int> Undone { get; init; } = [];

    /// <summary>The first step not done, or null when all are.</summary>
    public DayStep? Current => Steps.FirstOrDefault(step => step.Done is null);

    /// <summary>The step after the current one, or null.</summary>
    public DayStep? Next => Current is { } now ? Steps.FirstOrDefault(step => step.Number > now.Number && step.Done is null) : null;

    /// <summary>The last touch that can be taken back with one key, or null.</summary>
    public LoggedMake? LastDeed => Log.LastOrDefault(logged => logged.Event is StepStarted or StepDone && !Undone.Contains(logged.Sequence));

    /// <summary>Reads a make from its events.</summary>
    /// <param name="id">Which make.</param>
    /// <param name="log">All of its events, the beginning first.</param>
    /// <exception cref="ArgumentException">The first event is no beginning.</exception>
    public static Make Read(MakeId id, IReadOnlyList<LoggedMake> log)
    {
        if (log.Count == 0 || log[0].Event is not MakeBegun begun) throw new ArgumentException("A make's first event is its beginning.", nameof(log));
        var recipe = Recipe.Stored(begun.Recipe);
        var undone = log.Select(logged => logged.Event).OfType<DeedUndone>().Select(taken => taken.Sequence).ToImmutableHashSet();
        var make = new Make
        {
            Id = id,
            Begun = begun,
            Recipe = recipe,
            Steps = [.. recipe.Steps.Select((step, index) => new DayStep(index + 1, step, null, null, []))],
            Log = [.. log],
            Undone = undone,
        };
        return log.Where(logged => !undone.Contains(logged.Sequence)).Aggregate(make, (stands, logged) => stands.After(logged.Event));
    }

    private Make After(MakeEvent happened) => happened switch
    {
        StepStarted started => Change(started.Step, step => step with { Started = started.When }),
        StepDone done => Change(done.Step, step => step with { Done = done.Mark }),
        StepCorrected corrected => Change(corrected.Step, step => step with
        {
            Done = corrected.Mark,
            Was = step.Done is { } stood ? step.Was.Add(new(stood, corrected.At, corrected.Why)) : step.Was,
        }),
        WheelsBorn born => this with { Wheels = Wheels.AddRange(born.Wheels) },
        MeterRead read => this with { Curves = Curves.Add(read.Curve) },
        _ => this,
    };

    private Make Change(int number, Func<DayStep, DayStep> change) => this with { Steps = [.. Steps.Select(step => step.Number == number ? change(step) : step)] };
}
