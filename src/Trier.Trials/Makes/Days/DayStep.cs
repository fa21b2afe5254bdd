using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Makes.Days;

/// <summary>A step of the day: what was planned, what was done, what was written before a correction.</summary>
/// <param name="Number">1, 2, 3 ...</param>
/// <param name="Part">Which part of a split vat it was done with; null where it was done with the whole vat.</param>
/// <param name="Step">The recipe's step, with the part's own aims.</param>
/// <param name="Started">When the rennet went in; only for renneting.</param>
/// <param name="Done">What stands, or null while the step is to come.</param>
/// <param name="Was">Earlier values, oldest first, with when each was written over.</param>
/// <param name="StartedWith">The lot that went in as it was started; only for renneting.</param>
public sealed record DayStep(int Number, int? Part, Step Step, DateTimeOffset? Started, StepMark? Done, ImmutableArray<FormerMark> Was, ThingId? StartedWith = null)
{
    /// <summary>The flocculation time seen at a renneting step, or null.</summary>
    public TimeSpan? Flocculation => this is { Step.Kind: StepKind.Renneting, Started: { } rennet, Done: { } seen } ? seen.When - rennet : null;
}

/// <summary>A value that was corrected.</summary>
/// <param name="Mark">What stood.</param>
/// <param name="CorrectedAt">When it was written over.</param>
/// <param name="Why">Why; may be empty.</param>
/// <param name="Started">When the rennet was said to have gone in, where that was corrected; else null.</param>
public sealed record FormerMark(StepMark Mark, DateTimeOffset CorrectedAt, string Why, DateTimeOffset? Started = null);
