using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings;

/// <summary>One taster's revisions in order of arrival, and which of them is current.</summary>
/// <remarks>
/// A revision becomes current when it began from the current one. One that began from an older revision (two phones, or a page left
/// open) is kept and not made current: the taster is shown both.
/// </remarks>
public sealed class BallotHistory
{
    private BallotHistory(ImmutableArray<BallotRevision> all, BallotRevision? current, BallotRevision? counted, ImmutableArray<BallotRevision> aside)
    {
        All = all;
        Current = current;
        Counted = counted;
        Aside = aside;
    }

    /// <summary>Nothing has come in.</summary>
    public static BallotHistory None { get; } = new([], null, null, []);

    /// <summary>Every revision in order of arrival.</summary>
    public ImmutableArray<BallotRevision> All { get; }

    /// <summary>The revision the taster's page goes on from, or null.</summary>
    public BallotRevision? Current { get; }

    /// <summary>
    /// The revision that is judged: the last one sent, even where the taster has changed something since and not sent again; where none was
    /// sent, the last one saved (then only its likings count); null where nothing came in.
    /// </summary>
    public BallotRevision? Counted { get; }

    /// <summary>Revisions that were kept but did not become current because they began from an older one.</summary>
    public ImmutableArray<BallotRevision> Aside { get; }

    /// <summary>Reads a taster's history.</summary>
    /// <param name="arrived">This taster's revisions in order of arrival.</param>
    /// <param name="admitted">Revisions that came after the close and were let in.</param>
    public static BallotHistory Of(IEnumerable<BallotRevision> arrived, IReadOnlySet<RevisionId> admitted)
    {
        BallotRevision? current = null, sent = null;
        var aside = ImmutableArray.CreateBuilder<BallotRevision>();
        var all = arrived.ToImmutableArray();
        foreach (var revision in all)
        {
            var counts = revision.Standing == BallotStanding.InTime || (revision.Standing == BallotStanding.AfterClose && admitted.Contains(revision.Id));
            if (!counts) continue;
            var admittedLate = revision.Standing == BallotStanding.AfterClose;
            if (!admittedLate && revision.Base != current?.Id)
            {
                aside.Add(revision);
                continue;
            }

            current = revision;
            if (revision.Stage == BallotStage.Sent) sent = revision;
        }

        return new(all, current, sent ?? current, aside.ToImmutable());
    }
}
