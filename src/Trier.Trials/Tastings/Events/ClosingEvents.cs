using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Events;

/// <summary>Ballots are frozen.</summary>
/// <param name="At">When.</param>
public sealed record TastingClosed(DateTimeOffset At) : DayEvent(At);

/// <summary>A closed tasting was opened again while its key was sealed.</summary>
/// <param name="At">When.</param>
/// <param name="Reason">Why.</param>
public sealed record TastingReopened(DateTimeOffset At, string Reason) : DayEvent(At);

/// <summary>A ballot that came after the close was let in before the reveal.</summary>
/// <param name="At">When.</param>
/// <param name="Revision">Which send.</param>
public sealed record LateBallotAdmitted(DateTimeOffset At, RevisionId Revision) : DayEvent(At);

/// <summary>The key was opened for everyone. Nothing leaves this step.</summary>
/// <param name="At">When.</param>
public sealed record KeyRevealed(DateTimeOffset At) : DayEvent(At);
