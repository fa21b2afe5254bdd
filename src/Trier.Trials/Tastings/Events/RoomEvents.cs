using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Events;

/// <summary>A taster came after the first plates had gone out.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Who.</param>
public sealed record TasterCameLate(DateTimeOffset At, TasterId Taster) : DayEvent(At);

/// <summary>A taster left before the end. What they said is kept.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Who.</param>
public sealed record TasterLeft(DateTimeOffset At, TasterId Taster) : DayEvent(At);

/// <summary>Tasters compared notes: from now on they are one voice in every test.</summary>
/// <param name="At">When.</param>
/// <param name="Tasters">Two or more.</param>
public sealed record NotesCompared(DateTimeOffset At, ImmutableArray<TasterId> Tasters) : DayEvent(At);

/// <summary>Somebody said aloud what a code is, or thought they did.</summary>
/// <param name="At">When.</param>
/// <param name="Code">Which code.</param>
/// <param name="Words">What was said, or null.</param>
public sealed record IdentitySpoken(DateTimeOffset At, BlindCode Code, string? Words) : DayEvent(At);

/// <summary>Two codes stood on each other's sample on one plate. The plate as dealt stays; judging reads this plate the right way.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Whose plate.</param>
/// <param name="First">One code.</param>
/// <param name="Second">The other code.</param>
/// <param name="Reason">How it was noticed.</param>
/// <param name="Witness">Who saw it.</param>
public sealed record CodesSwapped(DateTimeOffset At, TasterId Taster, BlindCode First, BlindCode Second, string Reason, string Witness) : DayEvent(At);

/// <summary>Somebody opened the page with the key before the reveal.</summary>
/// <param name="At">When.</param>
/// <param name="By">Who: maker or helper.</param>
/// <param name="Early">
/// True where the maker opened it against the seal, so that later ballots are not blind on the maker's side; false for the plating
/// list, which is the helper's to open.
/// </param>
public sealed record KeyOpened(DateTimeOffset At, string By, bool Early) : DayEvent(At);

/// <summary>A taster got to know which code is which wheel: from then on no ballot of theirs is blind.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Who.</param>
public sealed record KeyLearned(DateTimeOffset At, TasterId Taster) : DayEvent(At);

/// <summary>An earlier event was taken back. It stays in the row; it no longer counts.</summary>
/// <param name="At">When.</param>
/// <param name="Sequence">Place of the event taken back.</param>
public sealed record Undone(DateTimeOffset At, int Sequence) : DayEvent(At);
