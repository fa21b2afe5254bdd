using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;

namespace Trier.Storage.Tastings;

/// <summary>A trial as it stands within a batch: what was appended earlier in the batch is seen here, and nowhere else before the commit.</summary>
/// <param name="db">Takes the rows up until they are committed.</param>
/// <param name="id">Which trial.</param>
/// <param name="tasting">Where it stood before the batch, or null where there is none of this id.</param>
/// <param name="ballots">What had arrived before the batch.</param>
internal sealed class TrialTurn(TrierDb db, TrialId id, Tasting? tasting, BallotBox ballots)
{
    public TrialId Id => id;

    public Tasting? Tasting { get; private set; } = tasting;

    public BallotBox Ballots { get; private set; } = ballots;

    /// <summary>Appends what an act yielded.</summary>
    /// <returns>Where the trial stands then.</returns>
    public Tasting Append(ImmutableArray<DayEvent> events)
    {
        var log = Tasting!.Book.Log;
        var added = DayEventRow.Number(events, log.Length);
        // Read before it is written: what cannot be read must never reach the disk, or the trial could not be opened again.
        var after = Tasting.Read(id, [.. log, .. added]);
        db.DayEvents.AddRange(DayEventRow.Of(id, added));
        return Tasting = after;
    }

    /// <summary>Appends a send.</summary>
    public void Append(BallotRevision revision)
    {
        db.BallotRevisions.Add(BallotRevisionRow.Of(id, Ballots.Arrived + 1, revision));
        Ballots = Ballots.With(revision);
    }
}
