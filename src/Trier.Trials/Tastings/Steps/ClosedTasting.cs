using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;

namespace Trier.Trials.Tastings.Steps;

/// <summary>A tasting whose ballots are frozen and whose key is still sealed.</summary>
public sealed class ClosedTasting : RoomTasting
{
    internal ClosedTasting(DayBook book)
        : base(book)
    {
    }

    /// <summary>Opens the tasting again. Recorded, and said in the verdict.</summary>
    /// <param name="at">When.</param>
    /// <param name="reason">Why.</param>
    public Outcome<ImmutableArray<DayEvent>> Reopen(DateTimeOffset at, string reason) =>
        string.IsNullOrWhiteSpace(reason) ? Fault("reason", "Say why the tasting is opened again: the verdict will tell it.") : Do(new TastingReopened(at, reason.Trim()));

    /// <summary>Lets in a ballot that came after the close.</summary>
    /// <param name="at">When.</param>
    /// <param name="revision">The send.</param>
    public Outcome<ImmutableArray<DayEvent>> Admit(DateTimeOffset at, BallotRevision revision)
    {
        if (revision.Standing != BallotStanding.AfterClose) return Fault("ballot", "Only a ballot that came after the close can be let in.");
        if (revision.Stage != BallotStage.Sent) return Fault("ballot", "This one was saved on the way and never sent.");
        return Book.Admitted.Contains(revision.Id) ? Fault("ballot", "This ballot is let in already.") : Do(new LateBallotAdmitted(at, revision.Id));
    }

    /// <summary>Opens the key for everyone. Nothing leaves this step.</summary>
    /// <param name="at">When.</param>
    public Outcome<ImmutableArray<DayEvent>> Reveal(DateTimeOffset at) => Do(new KeyRevealed(at));
}
