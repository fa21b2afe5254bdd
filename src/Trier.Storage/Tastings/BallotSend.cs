using Trier.Trials.Common;
using Trier.Trials.Tastings;

namespace Trier.Storage.Tastings;

/// <summary>A ballot as it leaves its sender, checked at the edge.</summary>
/// <param name="Id">Made by the sender; the same id again is "already here".</param>
/// <param name="Taster">Whose ballot.</param>
/// <param name="Base">The revision the sender began from, or null for the first.</param>
/// <param name="Device">A name the sending page gave itself; 64 letters at most.</param>
/// <param name="Source">How it came in.</param>
/// <param name="Stage">Saved on the way, or sent.</param>
/// <param name="Content">What it says.</param>
public sealed record BallotSend(RevisionId Id, TasterId Taster, RevisionId? Base, string Device, BallotSource Source, BallotStage Stage, Ballot Content);

/// <summary>What became of a send. It is durable before this is returned.</summary>
/// <param name="Revision">The revision as stored: this send's, or the one that was here already under the same id.</param>
/// <param name="AlreadyHere">The same id was here before; nothing was stored again.</param>
/// <param name="MadeCurrent">It began from the current revision, or was the first.</param>
public sealed record BallotReceipt(BallotRevision Revision, bool AlreadyHere, bool MadeCurrent);
