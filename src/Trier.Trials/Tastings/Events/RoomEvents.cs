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

/// <summary>The wheels left the cave: from now on the minutes out of the cold are counted.</summary>
/// <param name="At">When.</param>
public sealed record WheelsTakenOut(DateTimeOffset At) : DayEvent(At);

/// <summary>A step of the plating was ticked as done, or the tick taken away.</summary>
/// <param name="At">When.</param>
/// <param name="Work">Which step: “cut W3” or “plate 7”.</param>
/// <param name="Done">Whether it is done.</param>
public sealed record PlatingTicked(DateTimeOffset At, string Work, bool Done) : DayEvent(At);

/// <summary>One plate is made again from the spare, with the same codes in the same order.</summary>
/// <param name="At">When.</param>
/// <param name="Number">Its number.</param>
/// <param name="Reason">Why.</param>
public sealed record PlateMadeAgain(DateTimeOffset At, int Number, string Reason) : DayEvent(At);

/// <summary>A sample fell, or was lost in another way.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Whose.</param>
/// <param name="Code">Its code on that plate.</param>
/// <param name="Replaced">Whether another was brought from the spare; otherwise the plate goes without it.</param>
public sealed record SampleDropped(DateTimeOffset At, TasterId Taster, BlindCode Code, bool Replaced) : DayEvent(At);

/// <summary>Somebody writes a taster's ballot down for them, or no longer does.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Whose ballot.</param>
/// <param name="By">Who writes, or null for nobody.</param>
public sealed record ScribeNamed(DateTimeOffset At, TasterId Taster, string? By) : DayEvent(At);

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
