using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Makes.Days;

/// <summary>When and how a step was done.</summary>
/// <param name="When">The moment: the end of the step, for a cut its beginning, for renneting the flocculation.</param>
/// <param name="Readings">What was read, by target key, in the target's unit.</param>
/// <param name="Note">A few words; may be empty.</param>
/// <param name="Used">The lot that went in or the brine it lay in, or null where none was named.</param>
public sealed record StepMark(DateTimeOffset When, ImmutableArray<StepReading> Readings, string Note = "", ThingId? Used = null)
{
    /// <summary>The value read for a target, or null.</summary>
    /// <param name="target">The target.</param>
    public double? this[Recipes.Target target] => Readings.FirstOrDefault(reading => reading.Key == target.Key)?.Value;

    /// <inheritdoc/>
    public bool Equals(StepMark? other) => other is not null && When == other.When && Note == other.Note && Used == other.Used && Readings.SequenceEqual(other.Readings);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(When, Note, Used, Readings.Length);
}

/// <summary>One reading.</summary>
/// <param name="Key">The target's key.</param>
/// <param name="Value">The value in the target's unit.</param>
public sealed record StepReading(string Key, double Value);
