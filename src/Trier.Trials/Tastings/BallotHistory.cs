using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings;

/// <summary>One taster's revisions in order of arrival, and which of them is current.</summary>
/// <remarks>
/// A revision becomes current when it began from the current one. One that began from an older revision (two phones, or a page left
/// open) is kept and not made current: the taster is shown both. A ballot let in after the close never unseats one that came in time later,
/// when the tasting had been opened again; and whoever goes on from their own send of after the close has missed nothing.
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

    /// <summary>The history as it stood at a moment.</summary>
    /// <param name="moment">Revisions received later are left out.</param>
    /// <param name="admitted">Revisions that came after the close and were let in.</param>
    public BallotHistory Until(DateTimeOffset moment, IReadOnlySet<RevisionId> admitted) => Of(All.Where(revision => revision.ReceivedAt <= moment), admitted);

    /// <summary>Reads a taster's history.</summary>
    /// <param name="arrived">This taster's revisions in order of arrival.</param>
    /// <param name="admitted">Revisions that came after the close and were let in.</param>
    public static BallotHistory Of(IEnumerable<BallotRevision> arrived, IReadOnlySet<RevisionId> admitted)
    {
        BallotRevision? current = null, sent = null;
        var aside = ImmutableArray.CreateBuilder<BallotRevision>();
        var all = arrived.ToImmutableArray();
        var upToDate = new HashSet<RevisionId?> { null };
        foreach (var revision in all)
        {
            if (revision.Standing == BallotStanding.AfterReveal) continue;
            if (revision.Standing == BallotStanding.AfterClose)
            {
                var letIn = admitted.Contains(revision.Id);
                if (letIn || upToDate.Contains(revision.Base)) upToDate.Add(revision.Id);
                if (!letIn) continue;
            }
            else if (upToDate.Contains(revision.Base))
            {
                upToDate = [revision.Id];
            }
            else
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
