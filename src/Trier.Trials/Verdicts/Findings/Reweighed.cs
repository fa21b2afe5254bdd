using System.Collections.Immutable;

namespace Trier.Trials.Verdicts.Findings;

/// <summary>The tally by place points with other weights than the planned ones: a count, never the verdict.</summary>
/// <param name="Weights">Points of the first place, the second and so on, one for each wheel.</param>
/// <param name="Lines">Every wheel, in the order of the verdict's wheels.</param>
/// <param name="Leaders">Ids of the leaders by these weights; several where they tie, none where nothing can be counted.</param>
public sealed record Reweighed(ImmutableArray<decimal> Weights, ImmutableArray<WeighedLine> Lines, ImmutableArray<string> Leaders)
{
    /// <summary>Whether these weights name other leaders than a verdict does.</summary>
    /// <param name="verdict">The verdict of the same record.</param>
    public bool ChangesTheLeader(Verdict verdict) => !Leaders.Order(StringComparer.Ordinal).SequenceEqual(verdict.Leaders.Order(StringComparer.Ordinal), StringComparer.Ordinal);
}

/// <summary>One wheel's place points.</summary>
/// <param name="Id">The wheel.</param>
/// <param name="Points">In all; null where ballots differ in length, for then a sum says who was served more often.</param>
/// <param name="Average">A ballot, adjusted for what each was served where ballots differ; null where nothing compares it.</param>
public sealed record WeighedLine(string Id, double? Points, double? Average);
