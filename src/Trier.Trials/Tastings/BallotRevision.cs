using Trier.Trials.Common;

namespace Trier.Trials.Tastings;

/// <summary>One send of a ballot. Nothing is ever rewritten: a ballot is the row of its revisions.</summary>
/// <param name="Id">Made by the sender: the same id again is "already here".</param>
/// <param name="Taster">Whose ballot.</param>
/// <param name="Base">The revision the sender began from, or null for the first.</param>
/// <param name="Device">A name the sending page gave itself; tells two phones apart.</param>
/// <param name="Source">How it came in.</param>
/// <param name="Stage">Whether the taster is still at the samples or has sent.</param>
/// <param name="Standing">In time, after the close, or after the reveal; decided when it arrived.</param>
/// <param name="ReceivedAt">When it was taken in.</param>
/// <param name="Content">What it says.</param>
public sealed record BallotRevision(
    RevisionId Id,
    TasterId Taster,
    RevisionId? Base,
    string Device,
    BallotSource Source,
    BallotStage Stage,
    BallotStanding Standing,
    DateTimeOffset ReceivedAt,
    Ballot Content);

/// <summary>How a ballot came in.</summary>
public enum BallotSource
{
    /// <summary>From the taster's own page.</summary>
    Phone,

    /// <summary>Typed in from paper by the host.</summary>
    Paper,

    /// <summary>Read from a file.</summary>
    File,

    /// <summary>From the taster's own page, written by somebody for them.</summary>
    Scribe,
}

/// <summary>How far a ballot is.</summary>
public enum BallotStage
{
    /// <summary>Saved on the way; the taster has not sent. Its likings are kept, its places are not counted.</summary>
    Tasting,

    /// <summary>Sent by the taster.</summary>
    Sent,
}

/// <summary>When a send arrived.</summary>
public enum BallotStanding
{
    /// <summary>While the tasting was open.</summary>
    InTime,

    /// <summary>After the close: counts only if the maker admits it before the reveal.</summary>
    AfterClose,

    /// <summary>After the reveal: kept as a remark, never counted.</summary>
    AfterReveal,
}
