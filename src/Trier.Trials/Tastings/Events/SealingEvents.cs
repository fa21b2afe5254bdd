using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Commitments;

namespace Trier.Trials.Tastings.Events;

/// <summary>Codes, key and plates were drawn, and the plan fixed. A later sealing is a numbered new version of the key.</summary>
/// <param name="At">When.</param>
/// <param name="Key">The key.</param>
/// <param name="Orders">The codes of every numbered plate, spares included, in the order in which they are given out.</param>
/// <param name="Plates">The plates that are somebody's already.</param>
public sealed record KeySealed(
    DateTimeOffset At,
    Key Key,
    ImmutableArray<ImmutableArray<BlindCode>> Orders,
    ImmutableArray<Plate> Plates) : DayEvent(At)
{
    /// <summary>
    /// How many of the plates are planned for people on the list; those after them are spares. Null in a tasting sealed before plates had numbers: there, the
    /// orders are one square, dealt in turn.
    /// </summary>
    public int? Planned { get; init; }
}

/// <summary>What was fixed about the key just sealed. Tastings sealed before there were commitments have none.</summary>
/// <param name="At">When.</param>
/// <param name="Commitment">The commitment.</param>
public sealed record KeyCommitted(DateTimeOffset At, Commitment Commitment) : DayEvent(At);

/// <summary>The seal was broken before the first plate: the trial is a draft again and every code given out is retired.</summary>
/// <param name="At">When.</param>
public sealed record SealBroken(DateTimeOffset At) : DayEvent(At);

/// <summary>Who of those on the list has come before the first plate. Everybody else gets a plate when they come.</summary>
/// <param name="At">When.</param>
/// <param name="Here">Who is here.</param>
public sealed record GuestsCounted(DateTimeOffset At, ImmutableArray<TasterId> Here) : DayEvent(At);

/// <summary>One plate was dealt or dealt again: somebody joined or came, or a sample was left off.</summary>
/// <param name="At">When.</param>
/// <param name="Plate">The plate.</param>
public sealed record PlateDealt(DateTimeOffset At, Plate Plate) : DayEvent(At);

/// <summary>A wheel was taken out. Its codes are retired for good.</summary>
/// <param name="At">When.</param>
/// <param name="Wheel">Which wheel.</param>
/// <param name="Reason">Why.</param>
/// <param name="DecidedBy">Who decided, or null.</param>
public sealed record WheelWithdrawn(DateTimeOffset At, WheelId Wheel, string Reason, string? DecidedBy) : DayEvent(At);

/// <summary>The first plate went out.</summary>
/// <param name="At">When.</param>
public sealed record TastingOpened(DateTimeOffset At) : DayEvent(At);
