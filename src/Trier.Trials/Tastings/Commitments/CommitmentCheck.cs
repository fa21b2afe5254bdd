using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Commitments;

/// <summary>One commitment worked out again.</summary>
/// <param name="Commitment">The commitment as it stands in the record.</param>
/// <param name="WordsHold">Salt and lines give the words.</param>
/// <param name="ChainHolds">Its lines name the words of the commitment before it, this tasting and the right key.</param>
public sealed record CheckedCommitment(Commitment Commitment, bool WordsHold, bool ChainHolds);

/// <summary>
/// Every commitment of a tasting worked out again. That all holds says that no list was changed after its words were read aloud. It does not say
/// that the plates were filled by the list, or that nobody looked.
/// </summary>
/// <param name="Commitments">In order; at least one.</param>
public sealed record CommitmentCheck(ImmutableArray<CheckedCommitment> Commitments)
{
    /// <summary>Whether everything holds.</summary>
    public bool Holds => Commitments.All(one => one is { WordsHold: true, ChainHolds: true });

    /// <summary>Works them out again: about a second each.</summary>
    /// <param name="tasting">Which tasting.</param>
    /// <param name="commitments">All of its commitments in order; at least one.</param>
    /// <exception cref="ArgumentException">There is none.</exception>
    public static CommitmentCheck Of(TrialId tasting, ImmutableArray<Commitment> commitments)
    {
        if (commitments.IsDefaultOrEmpty) throw new ArgumentException("There is no commitment to check.", nameof(commitments));
        return new([.. commitments.Select((one, index) => new CheckedCommitment(one, one.Holds(), Chained(tasting, one, index, index == 0 ? null : commitments[index - 1].Words)))]);
    }

    private static bool Chained(TrialId tasting, Commitment one, int index, string? before) =>
        one.Number == index + 1
        && one.Lines.Length > 4
        && one.Lines[0] == Statement.Form
        && one.Lines[1] == $"tasting {tasting.Value:D}"
        && one.Lines[2] == FormattableString.Invariant($"key {one.KeyVersion}")
        && one.Lines[3] == Statement.Previous(before);
}
