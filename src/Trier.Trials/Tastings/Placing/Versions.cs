namespace Trier.Trials.Tastings.Placing;

/// <summary>What a taster's page goes on from, and which version waits for a choice.</summary>
public static class Versions
{
    /// <summary>The revision a page goes on from: the last that arrived and was not set aside, late ones included; null where nothing came in.</summary>
    /// <param name="history">The taster's revisions.</param>
    public static BallotRevision? Working(BallotHistory history) => history.All.LastOrDefault(revision => !history.Aside.Contains(revision));

    /// <summary>
    /// A ballot that was sent but began from an older one (two phones, or a page left open), and that no later send has settled; null where
    /// there is none.
    /// </summary>
    /// <param name="history">The taster's revisions.</param>
    public static BallotRevision? Unsettled(BallotHistory history)
    {
        var waiting = history.All.LastOrDefault(revision => revision.Stage == BallotStage.Sent && history.Aside.Contains(revision));
        if (waiting is null || history.Current is not { } current || current.Content.Equals(waiting.Content)) return null;
        var settled = history.All
            .SkipWhile(revision => revision != waiting)
            .Skip(1)
            .Any(revision => revision.Stage == BallotStage.Sent && revision.Standing == BallotStanding.InTime && !history.Aside.Contains(revision));
        return settled ? null : waiting;
    }

    /// <summary>Whether something was saved after the last send and not sent again.</summary>
    /// <param name="history">The taster's revisions.</param>
    public static bool ChangedSinceSent(BallotHistory history) =>
        history.Counted is { Stage: BallotStage.Sent } sent && history.Current is { Stage: BallotStage.Tasting } current && !current.Content.Equals(sent.Content);
}
