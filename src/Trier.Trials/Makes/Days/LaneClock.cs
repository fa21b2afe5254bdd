using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Makes.Days;

/// <summary>When steps are due, counted from what was really done. Every moment is absolute, so a countdown survives sleep and reload.</summary>
public sealed partial record Lane
{
    /// <summary>
    /// When a step begins or began: after the one before it. The cut comes flocculation times multiplier after rennet; a cut is stamped as it begins, so what follows
    /// waits for its time and rest.
    /// </summary>
    /// <param name="number">The step's number.</param>
    public DateTimeOffset StartOf(int number)
    {
        var start = Begins;
        foreach (var step in Steps.Where(step => step.Number < number))
        {
            start = step switch
            {
                { Step.Kind: StepKind.Renneting, Started: { } rennet } => CutAfter(step, rennet),
                { Step.Kind: StepKind.Cut, Done: { } cut } => cut.When + (step.Step.Takes ?? TimeSpan.Zero),
                { Done: { } done } => done.When,
                _ => start + (step.Step.Takes ?? TimeSpan.Zero),
            };
        }

        return start;
    }

    /// <summary>
    /// When the touch of a step is due: for a cut, for renneting before the rennet is in and for a step without a time its beginning; for renneting afterwards the
    /// flocculation; else its end.
    /// </summary>
    /// <param name="step">One of the lane's steps.</param>
    public DateTimeOffset DueOf(DayStep step)
    {
        var start = StartOf(step.Number);
        return step.Step.Kind switch
        {
            StepKind.Cut => start,
            StepKind.Renneting => step.Started is { } rennet ? rennet.AddMinutes(step.Step[Target.FlocMinutes]!.Value) : start,
            _ => start + (step.Step.Takes ?? TimeSpan.Zero),
        };
    }

    /// <summary>The moment the plan names for a step, whatever was done: the touch, not always the end.</summary>
    /// <param name="step">One of the lane's steps.</param>
    public DateTimeOffset PlannedFor(DayStep step)
    {
        var start = Begins + Steps.Where(before => before.Number < step.Number).Aggregate(TimeSpan.Zero, (sum, before) => sum + (before.Step.Takes ?? TimeSpan.Zero));
        return step.Step.Kind switch
        {
            StepKind.Cut => start,
            StepKind.Renneting => start.AddMinutes(step.Step[Target.FlocMinutes]!.Value),
            _ => start + (step.Step.Takes ?? TimeSpan.Zero),
        };
    }

    private static DateTimeOffset CutAfter(DayStep step, DateTimeOffset rennet) =>
        rennet + ((step.Flocculation ?? TimeSpan.FromMinutes(step.Step[Target.FlocMinutes]!.Value)) * step.Step[Target.Multiplier]!.Value);
}
