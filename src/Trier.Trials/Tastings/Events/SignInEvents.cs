using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Events;

/// <summary>What a taster said at sign-in, before the first bite. A later one replaces it; who was marked as under 12 stays so.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Who.</param>
/// <param name="NoSmell">A cold, or little smell that day. Shown nowhere beside a name.</param>
/// <param name="AsksHost">There is something they may not eat that the page could not name: the host goes and asks.</param>
/// <param name="Junior">Under 12, and a parent said yes.</param>
public sealed record TasterSignedIn(DateTimeOffset At, TasterId Taster, bool NoSmell, bool AsksHost, bool Junior) : DayEvent(At);

/// <summary>What a taster agrees may be published, from now on. Possible at every step: a yes can be taken back at any time.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Who.</param>
/// <param name="Agreed">What they agree to.</param>
public sealed record AgreementGiven(DateTimeOffset At, TasterId Taster, Agreed Agreed) : DayEvent(At);

/// <summary>The language a taster reads their ballot in.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Who.</param>
/// <param name="Language">Its short name, such as "fr".</param>
public sealed record LanguageChosen(DateTimeOffset At, TasterId Taster, string Language) : DayEvent(At);

/// <summary>A taster said something once the key was open. Kept as that; no ballot moves.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Who.</param>
/// <param name="Words">What.</param>
public sealed record SaidAfterReveal(DateTimeOffset At, TasterId Taster, string Words) : DayEvent(At);

/// <summary>A paper ballot was typed in a second time and every difference is settled.</summary>
/// <param name="At">When.</param>
/// <param name="Taster">Whose ballot.</param>
/// <param name="Revision">The version that both entries agree on.</param>
/// <param name="By">Who typed it the second time.</param>
public sealed record PaperChecked(DateTimeOffset At, TasterId Taster, RevisionId Revision, string By) : DayEvent(At);
