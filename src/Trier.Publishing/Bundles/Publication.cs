using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Commitments;
using Trier.Trials.Verdicts;

namespace Trier.Publishing.Bundles;

/// <summary>What is published: a verdict drawn from the record as strangers may read it, and what belongs beside it.</summary>
public sealed record Publication
{
    /// <summary>The verdict of a published record.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>1 at first, 1 more for each correction.</summary>
    public int Version { get; init; } = 1;

    /// <summary>The day this version was made, or null where it is not recorded.</summary>
    public DateOnly? Day { get; init; }

    /// <summary>What was put right since the first version, oldest first, dated, one sentence or two each.</summary>
    public ImmutableArray<string> Corrections { get; init; } = [];

    /// <summary>What was taken out of this very version after it was published, oldest first, dated, one sentence each.</summary>
    public ImmutableArray<string> TakenOut { get; init; } = [];

    /// <summary>Every dated note a reader of this version must see.</summary>
    public ImmutableArray<string> Changes => [.. Corrections, .. TakenOut];

    /// <summary>When the key was opened, or null where that is not recorded.</summary>
    public DateTimeOffset? OpenedAt { get; init; }

    /// <summary>What was fixed about the key before the tasting, or null where nothing was.</summary>
    public PublishedKey? Key { get; init; }
}

/// <summary>What was fixed about a key, for anybody to check.</summary>
/// <param name="Tasting">Which tasting.</param>
/// <param name="Commitments">Every commitment, in order.</param>
/// <param name="Words">The words of the one that stands, or null.</param>
public sealed record PublishedKey(TrialId Tasting, ImmutableArray<Commitment> Commitments, string? Words);
