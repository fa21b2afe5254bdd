using System.Collections.Immutable;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;

namespace Trier.Trials.Verdicts;

/// <summary>
/// Everything a verdict may look at, with the key applied: a revealed tasting or a ballot file, in one shape. Codes swapped on a
/// plate are already put right and withdrawn wheels already out of the places; both are still told in <see cref="Withdrawals"/>
/// and <see cref="Notes"/>.
/// </summary>
/// <param name="Head">What the trial is called and asked.</param>
/// <param name="Plan">What was fixed at sealing.</param>
/// <param name="Samples">Wheels that were served, and second servings of them. Ids are unique.</param>
/// <param name="Voters">Everyone who has a plate, the maker included. Ids are unique.</param>
/// <param name="Withdrawals">Wheels taken out of the trial.</param>
/// <param name="Notes">What happened on the day and must be said.</param>
public sealed record TastingRecord(
    RecordHead Head,
    JudgingPlan Plan,
    ImmutableArray<SampleRecord> Samples,
    ImmutableArray<VoterRecord> Voters,
    ImmutableArray<WithdrawalRecord> Withdrawals,
    ImmutableArray<DayNote> Notes)
{
    /// <summary>What reading the input noticed and the verdict must pass on, one sentence each; empty for a revealed tasting.</summary>
    public ImmutableArray<string> InputCautions { get; init; } = [];

    /// <summary>What was asked besides, where the record keeps how many and not who; null where the answers themselves say it.</summary>
    public AskedCounts? Asked { get; init; }
}

/// <summary>What the trial is called and asked.</summary>
/// <param name="Title">Short title; for a file its name.</param>
/// <param name="Question">The one question, or null where none was recorded.</param>
/// <param name="Host">Who held the tasting, or null.</param>
/// <param name="Day">Day of the tasting, or null.</param>
/// <param name="Invented">Whether the data are an invented example; then every rendering says so.</param>
/// <param name="FromFile">Whether this comes from a ballot file alone, which knows nothing of the day.</param>
public sealed record RecordHead(string Title, string? Question, string? Host, DateOnly? Day, bool Invented, bool FromFile);

/// <summary>What was fixed before the first plate.</summary>
/// <param name="Rule">The rule that names the leader.</param>
/// <param name="JuniorsCount">Whether tasters under 12 count in the headline.</param>
public sealed record JudgingPlan(CountingRule Rule, bool JuniorsCount);

/// <summary>One sample: a wheel's portion under its code.</summary>
/// <param name="Id">Stable id: the wheel's label (W1) in a trial, the code in a file.</param>
/// <param name="Name">What people call the wheel: "Thistle".</param>
/// <param name="Code">The blind code it was served under; where each taster had own codes, null.</param>
/// <param name="RepeatOf">For the second serving that is only a check: the id of the sample that counts; else null.</param>
/// <param name="Mark">How the wheel is drawn; null for files.</param>
/// <param name="Facts">The wheel's facts as frozen at sealing, with later corrections; none for files.</param>
public sealed record SampleRecord(string Id, string Name, string? Code, string? RepeatOf, WheelMark? Mark, WheelFacts Facts);

/// <summary>One taster and what they said, in sample ids.</summary>
/// <param name="Id">Stable id.</param>
/// <param name="Name">Name for the page; the id again where names are not known.</param>
/// <param name="Role">Guest, or someone who knew the key.</param>
/// <param name="Marks">Marks of the day.</param>
/// <param name="Remarks">Quiet marks in words for the page: "came 16:31", "no Old Hot". Never a reason of health.</param>
/// <param name="Taste">What they said before tasting that they usually like.</param>
/// <param name="Voice">Tasters with the same number compared notes and are one voice; null: a voice of their own.</param>
/// <param name="ServingOrder">Ids of the samples on their plate, in serving order; empty where not recorded.</param>
/// <param name="Places">Groups of sample ids, best first, tied inside a group. Empty: no places given.</param>
/// <param name="Below">Ids served and left below the placed ones, where the ballot asked for "your best few"; else empty.</param>
/// <param name="Answers">What they said of single samples, by sample id.</param>
public sealed record VoterRecord(
    string Id,
    string Name,
    VoterRole Role,
    VoterMarks Marks,
    ImmutableArray<string> Remarks,
    DeclaredTaste? Taste,
    int? Voice,
    ImmutableArray<string> ServingOrder,
    ImmutableArray<ImmutableArray<string>> Places,
    ImmutableArray<string> Below,
    ImmutableSortedDictionary<string, SampleAnswer> Answers)
{
    /// <summary>Ids of samples on their plate whose wheel had been said aloud before the ballot came in.</summary>
    public ImmutableArray<string> Named { get; init; } = [];

    /// <summary>Which sitting they came to, from 1; null where not recorded.</summary>
    public int? Sitting { get; init; }

    /// <summary>The group they tasted together with, or null.</summary>
    public string? Group { get; init; }

    /// <summary>What they agreed may be published: nothing, unless they said so.</summary>
    public Agreed Agreed { get; init; } = Agreed.ToNothing;
}

/// <summary>Whether a voter was blind.</summary>
public enum VoterRole
{
    /// <summary>Tasted blind.</summary>
    Guest,

    /// <summary>The maker, a plater, or anyone who knew the key: shown apart, never tested.</summary>
    KnewTheKey,
}

/// <summary>Marks that stay on a ballot for good and that the verdict reports on.</summary>
[Flags]
public enum VoterMarks
{
    /// <summary>Nothing special.</summary>
    None = 0,

    /// <summary>Left before the end.</summary>
    LeftEarly = 1,

    /// <summary>Came after the first plates had gone out.</summary>
    Late = 2,

    /// <summary>Under 12.</summary>
    Junior = 4,

    /// <summary>An answer was corrected as a slip, or codes on the plate were put right.</summary>
    Corrected = 8,

    /// <summary>Compared notes with somebody.</summary>
    ComparedNotes = 16,

    /// <summary>The ballot arrived after the close and the maker admitted it before the reveal.</summary>
    AdmittedAfterClose = 32,

    /// <summary>A sample was left off the plate beforehand or the ballot places fewer wheels than were served to others.</summary>
    FewerSamples = 64,

    /// <summary>Sent after the key had been opened early: not blind.</summary>
    AfterKeyOpened = 128,

    /// <summary>Signed in with a cold, or little smell. A reason of health: counted in a variant, told beside no name.</summary>
    LittleSmell = 256,

    /// <summary>A place on paper could not be read for certain and stands as a tie.</summary>
    Unclear = 512,
}

/// <summary>A wheel that was taken out of the trial.</summary>
/// <param name="Id">Sample id (wheel label).</param>
/// <param name="Name">What people call the wheel.</param>
/// <param name="At">When.</param>
/// <param name="Reason">Why, in the maker's words.</param>
/// <param name="WhileTasting">Whether guests already had plates with it.</param>
/// <param name="HadIt">Names of those who had already tasted it.</param>
/// <param name="Mark">How the wheel is drawn, or null.</param>
public sealed record WithdrawalRecord(string Id, string Name, DateTimeOffset At, string Reason, bool WhileTasting, ImmutableArray<string> HadIt, WheelMark? Mark);

/// <summary>Something that happened and must be said.</summary>
/// <param name="Kind">What kind of thing.</param>
/// <param name="At">When.</param>
/// <param name="Sentence">One plain sentence.</param>
public sealed record DayNote(DayNoteKind Kind, DateTimeOffset At, string Sentence)
{
    /// <summary>The same without names and without anybody's own words, as strangers may read it; empty where nothing may be told.</summary>
    public string Published { get; init; } = "";
}

/// <summary>Kinds of thing that the verdict reports.</summary>
public enum DayNoteKind
{
    /// <summary>The key was opened before the reveal.</summary>
    KeyOpenedEarly,

    /// <summary>What a code is was said aloud.</summary>
    SpokenAloud,

    /// <summary>A taster got to know the key.</summary>
    KeyLearned,

    /// <summary>The tasting was closed and opened again.</summary>
    Reopened,

    /// <summary>A ballot came after the close and was let in, or was not.</summary>
    LateBallot,

    /// <summary>Codes on a plate were put right.</summary>
    CodesSwapped,

    /// <summary>A name or a fact was corrected.</summary>
    Correction,

    /// <summary>Anything else.</summary>
    Other,
}
