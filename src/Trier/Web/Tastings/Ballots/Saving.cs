using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Placing;

namespace Trier.Web.Tastings.Ballots;

/// <summary>Takes what a taster's page posts into the ballot.</summary>
/// <param name="visits">Finds the taster.</param>
/// <param name="trials">Takes the ballot in.</param>
public sealed class Saving(Visits visits, TrialStore trials)
{
    /// <summary>How often a save that another phone overtook is tried again on the newer ballot.</summary>
    public const int Tries = 3;

    /// <summary>
    /// Saves a change on the way: merges it into the ballot as it stands now. When another save came between, it is read and merged again.
    /// The id is the page's own, so that the same post twice is stored once.
    /// </summary>
    /// <param name="visit">The taster.</param>
    /// <param name="id">The page's send id.</param>
    /// <param name="device">Which phone.</param>
    /// <param name="change">Makes the new ballot out of the one that stands.</param>
    /// <returns>The receipt, or what is wrong with the input.</returns>
    public async Task<Outcome<BallotReceipt>> SaveAsync(Visit visit, RevisionId id, string device, Func<Visit, Outcome<Ballot>> change)
    {
        for (var attempt = 1; ; attempt++)
        {
            var changed = change(visit);
            if (!changed.TryGet(out var ballot)) return Outcome.Fault<BallotReceipt>(changed.Problems);
            var send = new BallotSend(id, visit.Taster.Id, visit.History.Current?.Id, device, BallotSource.Phone, BallotStage.Tasting, ballot);
            var received = await trials.ReceiveAsync(visit.Door.Trial, send);
            if (!received.TryGet(out var receipt) || !Overtaken(receipt) || attempt == Tries) return received;
            visit = await visits.FindAsync(visit.Door.Token) ?? throw new InvalidOperationException("A taster vanished while saving.");
            id = new RevisionId(Guid.NewGuid());
        }
    }

    /// <summary>Sends the ballot a taster has looked over: exactly the version the page showed.</summary>
    /// <param name="visit">The taster.</param>
    /// <param name="id">The page's send id.</param>
    /// <param name="shown">The version the page showed, or null where it showed none.</param>
    /// <param name="newest">Whether it shall count whatever else came in: the taster chose between two.</param>
    /// <param name="device">Which phone.</param>
    public async Task<Outcome<BallotReceipt>> SendAsync(Visit visit, RevisionId id, RevisionId? shown, bool newest, string device)
    {
        if (visit.History.All.FirstOrDefault(revision => revision.Id == shown) is not { } version || version.Content.Equals(Ballot.Empty))
            return Outcome.Fault<BallotReceipt>("ballot", "This page is older than the ballot: reload it and send again.");
        var begunFrom = newest || version.Standing != BallotStanding.InTime ? visit.History.Current?.Id : version.Id;
        return await trials.ReceiveAsync(visit.Door.Trial, new BallotSend(id, visit.Taster.Id, begunFrom, device, BallotSource.Phone, BallotStage.Sent, version.Content));
    }

    private static bool Overtaken(BallotReceipt receipt) => receipt is { AlreadyHere: false, MadeCurrent: false, Revision.Standing: BallotStanding.InTime };
}
