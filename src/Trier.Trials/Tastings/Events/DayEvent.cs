using System.Text.Json.Serialization;

namespace Trier.Trials.Tastings.Events;

/// <summary>
/// Something that happened to a trial. Events are appended and never changed; what a trial is now is read from all of them, so every
/// old value stays in the record.
/// </summary>
/// <param name="At">When it happened.</param>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "event")]
[JsonDerivedType(typeof(TrialPlanned), "planned")]
[JsonDerivedType(typeof(EntryAdded), "entry added")]
[JsonDerivedType(typeof(EntryRemoved), "entry removed")]
[JsonDerivedType(typeof(EntryCorrected), "entry corrected")]
[JsonDerivedType(typeof(RepeatChosen), "repeat chosen")]
[JsonDerivedType(typeof(FlightChosen), "flight chosen")]
[JsonDerivedType(typeof(GroupJoined), "group joined")]
[JsonDerivedType(typeof(GuestsCounted), "guests counted")]
[JsonDerivedType(typeof(TasterAdded), "taster added")]
[JsonDerivedType(typeof(TasterLetGo), "taster let go")]
[JsonDerivedType(typeof(TasterCorrected), "taster corrected")]
[JsonDerivedType(typeof(SampleLeftOff), "sample left off")]
[JsonDerivedType(typeof(TasteDeclared), "taste declared")]
[JsonDerivedType(typeof(TasterSignedIn), "signed in")]
[JsonDerivedType(typeof(AgreementGiven), "agreement given")]
[JsonDerivedType(typeof(LanguageChosen), "language chosen")]
[JsonDerivedType(typeof(SaidAfterReveal), "said after the reveal")]
[JsonDerivedType(typeof(PaperChecked), "paper checked")]
[JsonDerivedType(typeof(KeySealed), "key sealed")]
[JsonDerivedType(typeof(KeyCommitted), "key committed")]
[JsonDerivedType(typeof(PlateDealt), "plate dealt")]
[JsonDerivedType(typeof(WheelWithdrawn), "wheel withdrawn")]
[JsonDerivedType(typeof(WheelsTakenOut), "wheels taken out")]
[JsonDerivedType(typeof(PlatingTicked), "plating ticked")]
[JsonDerivedType(typeof(PlateMadeAgain), "plate made again")]
[JsonDerivedType(typeof(SampleDropped), "sample dropped")]
[JsonDerivedType(typeof(ScribeNamed), "scribe named")]
[JsonDerivedType(typeof(TastingOpened), "opened")]
[JsonDerivedType(typeof(SealBroken), "seal broken")]
[JsonDerivedType(typeof(TasterCameLate), "taster came late")]
[JsonDerivedType(typeof(TasterLeft), "taster left")]
[JsonDerivedType(typeof(NotesCompared), "notes compared")]
[JsonDerivedType(typeof(IdentitySpoken), "identity spoken")]
[JsonDerivedType(typeof(CodesSwapped), "codes swapped")]
[JsonDerivedType(typeof(KeyOpened), "key opened")]
[JsonDerivedType(typeof(KeyLearned), "key learned")]
[JsonDerivedType(typeof(Undone), "undone")]
[JsonDerivedType(typeof(TastingClosed), "closed")]
[JsonDerivedType(typeof(TastingReopened), "reopened")]
[JsonDerivedType(typeof(LateBallotAdmitted), "late ballot admitted")]
[JsonDerivedType(typeof(KeyRevealed), "revealed")]
[JsonDerivedType(typeof(VerdictPublished), "verdict published")]
[JsonDerivedType(typeof(BallotMended), "ballot mended")]
public abstract record DayEvent(DateTimeOffset At);

/// <summary>An event with its place in the row.</summary>
/// <param name="Sequence">1, 2, 3 ... within the trial.</param>
/// <param name="Event">What happened.</param>
public sealed record Logged(int Sequence, DayEvent Event);
