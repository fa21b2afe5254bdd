using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Trials.Makes.Days;

/// <summary>A vat day as it stands, read from its events.</summary>
public sealed partial record Make
{
    /// <summary>Which make.</summary>
    public required MakeId Id { get; init; }

    /// <summary>How it was begun.</summary>
    public required MakeBegun Begun { get; init; }

    /// <summary>The recipe as it was when the make began.</summary>
    public required Recipe Recipe { get; init; }

    /// <summary>The ways through the steps: one, or one a part once the vat was split; at least one.</summary>
    public required ImmutableArray<Lane> Lanes { get; init; }

    /// <summary>How the vat was split, or null.</summary>
    public VatSplit? Split { get; init; }

    /// <summary>Wheels, once they are born.</summary>
    public ImmutableArray<BornWheel> Wheels { get; init; } = [];

    /// <summary>Weights of wheels that were corrected, oldest first.</summary>
    public ImmutableArray<FormerWeight> FormerWeights { get; init; } = [];

    /// <summary>Curves read from meters' files.</summary>
    public ImmutableArray<MeterCurve> Curves { get; init; } = [];

    /// <summary>All events, with their numbers.</summary>
    public required ImmutableArray<LoggedMake> Log { get; init; }

    /// <summary>Sequences of events that were taken back.</summary>
    public ImmutableHashSet<int> Undone { get; init; } = [];

    /// <summary>Every step once: those of the whole vat, then those of the parts, by number and part.</summary>
    public ImmutableArray<DayStep> AllSteps => [.. Lanes.SelectMany(lane => lane.Steps).DistinctBy(step => (step.Number, step.Part)).OrderBy(step => step.Number).ThenBy(step => step.Part)];

    /// <summary>Whether every step of every part is done.</summary>
    public bool AllDone => Lanes.All(lane => lane.Current is null);

    /// <summary>The last touch that can be taken back with one key, or null.</summary>
    public LoggedMake? LastDeed => Log.LastOrDefault(logged => logged.Event is StepStarted or StepDone or VatSplit && !Undone.Contains(logged.Sequence));

    /// <summary>The lane of a part; the first one where there is no such part.</summary>
    /// <param name="part">The part's number, or null.</param>
    public Lane LaneOf(int? part) => Lanes.FirstOrDefault(lane => lane.Part == part) ?? Lanes[0];

    /// <summary>A step of the whole vat, or of a part once it was split; null where there is none.</summary>
    /// <param name="number">The step's number.</param>
    /// <param name="part">The part's number; null for the whole vat.</param>
    public DayStep? Find(int number, int? part) => AllSteps.FirstOrDefault(step => step.Number == number && step.Part == part);

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
            Lanes = [new Lane { Recipe = recipe, Begins = begun.Begins, Steps = [.. recipe.Steps.Select((step, index) => new DayStep(index + 1, null, step, null, null, []))] }],
            Log = [.. log],
            Undone = undone,
        };
        return log.Where(logged => !undone.Contains(logged.Sequence)).Aggregate(make, (stands, logged) => stands.After(logged.Event));
    }

    private Make After(MakeEvent happened) => happened switch
    {
        StepStarted started => Change(started.Step, started.Part, step => step with { Started = started.When, StartedWith = started.Used }),
        StepDone done => Change(done.Step, done.Part, step => step with { Done = done.Mark }),
        StepCorrected corrected => Change(corrected.Step, corrected.Part, step => step with
        {
            Done = corrected.Mark,
            Started = corrected.Started ?? step.Started,
            Was = step.Done is { } stood ? step.Was.Add(new(stood, corrected.At, corrected.Why, corrected.Started is null ? null : step.Started)) : step.Was,
        }),
        VatSplit split => this with { Split = split, Lanes = [.. split.Parts.Select((part, index) => Parted(split.From, part, index + 1))] },
        WheelsBorn born => this with { Wheels = Wheels.AddRange(born.Wheels) },
        WheelWeighed weighed => this with
        {
            Wheels = [.. Wheels.Select(wheel => wheel.Number == weighed.Number ? wheel with { Kilograms = weighed.Kilograms } : wheel)],
            FormerWeights = FormerWeights.Add(new(weighed.Number, Wheels.FirstOrDefault(wheel => wheel.Number == weighed.Number)?.Kilograms, weighed.At, weighed.Why)),
        },
        MeterRead read => this with { Curves = Curves.Add(read.Curve) },
        _ => this,
    };

    private Lane Parted(int from, VatPart part, int number)
    {
        var recipe = part.Of(Recipe);
        return new Lane
        {
            Part = number,
            Called = part,
            Recipe = recipe,
            Begins = Begun.Begins,
            Steps =
            [
                .. Lanes[0].Steps.Where(step => step.Number < from),
                .. Lanes[0].Steps.Where(step => step.Number >= from && !part.LeavesOut(step.Number)).Select(step => new DayStep(step.Number, number, recipe.Steps[step.Number - 1], null, null, [])),
            ],
        };
    }

    private Make Change(int number, int? part, Func<DayStep, DayStep> change) =>
        this with { Lanes = [.. Lanes.Select(lane => lane with { Steps = [.. lane.Steps.Select(step => step.Number == number && step.Part == part ? change(step) : step)] })] };
}
