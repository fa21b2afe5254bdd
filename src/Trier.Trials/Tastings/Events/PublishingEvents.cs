using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Events;

/// <summary>The verdict was published as it stood; each later one is a new version, and the earlier ones stay reachable.</summary>
/// <param name="At">When.</param>
/// <param name="Through">Place of the last event it was drawn from.</param>
public sealed record VerdictPublished(DateTimeOffset At, int Through) : DayEvent(At);

/// <summary>A ballot had been taken in wrongly and was put right after the reveal. What was sent stays; judging reads this instead.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Whose ballot.</param>
/// <param name="Ballot">The ballot as it should have been.</param>
/// <param name="Reason">How the slip was noticed.</param>
/// <param name="Witness">Who saw it.</param>
public sealed record BallotMended(DateTimeOffset At, TasterId Taster, Ballot Ballot, string Reason, string Witness) : DayEvent(At);
