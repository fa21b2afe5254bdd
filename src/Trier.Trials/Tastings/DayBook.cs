using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Plans;
using Trier.Trials.Tastings.Commitments;
using Trier.Trials.Tastings.Events;

namespace Trier.Trials.Tastings;

/// <summary>Everything known of a trial's tasting, read from its events. Ballots lie apart.</summary>
public sealed record DayBook
{
    /// <summary>Which trial.</summary>
    public required TrialId Trial { get; init; }

    /// <summary>What is asked and how it will be answered.</summary>
    public required TrialPlan Plan { get; init; }

    /// <summary>Wheels entered, in the order they were entered; withdrawn ones stay.</summary>
    public ImmutableArray<Entry> Entries { get; init; } = [];

    /// <summary>Everyone ever put on the list, in order of their numbers; let-go ones stay.</summary>
    public ImmutableArray<Taster> Tasters { get; init; } = [];

    /// <summary>The wheel that is served twice, or null.</summary>
    public WheelId? Repeat { get; init; }

    /// <summary>Wheels served after the others, and not placed among them.</summary>
    public ImmutableHashSet<WheelId> SecondFlight { get; init; } = [];

    /// <summary>Who had come before the first plate, where that was counted; else null, and everybody on the list is expected.</summary>
    public ImmutableHashSet<TasterId>? Here { get; init; }

    /// <summary>The key once sealed; null in a draft.</summary>
    public Key? Key { get; init; }

    /// <summary>What was fixed about each key at its sealing, in order, those of broken seals included; empty for a tasting sealed before there were commitments.</summary>
    public ImmutableArray<Commitment> Commitments { get; init; } = [];

    /// <summary>The commitment about the key that stands, or null.</summary>
    public Commitment? Commitment => Key is { } key ? Commitments.LastOrDefault(commitment => commitment.KeyVersion == key.Version) : null;

    /// <summary>Codes given out under earlier keys that were broken; never drawn again.</summary>
    public ImmutableArray<BlindCode> RetiredBefore { get; init; } = [];

    /// <summary>How many plates are planned for people on the list, spares apart; null in a draft, and in a tasting sealed before plates had numbers.</summary>
    public int? PlannedPlates { get; init; }

    /// <summary>The codes of each numbered plate; in a tasting sealed before plates had numbers, the serving orders behind the plates.</summary>
    public ImmutableArray<ImmutableArray<BlindCode>> Orders { get; init; } = [];

    /// <summary>Plates as dealt.</summary>
    public ImmutableSortedDictionary<int, Plate> Plates { get; init; } = ImmutableSortedDictionary<int, Plate>.Empty;

    /// <summary>Wheels taken out.</summary>
    public ImmutableArray<Withdrawal> Withdrawals { get; init; } = [];

    /// <summary>Who came late.</summary>
    public ImmutableArray<TasterCameLate> Late { get; init; } = [];

    /// <summary>Who left before the end.</summary>
    public ImmutableArray<TasterLeft> Left { get; init; } = [];

    /// <summary>Who compared notes.</summary>
    public ImmutableArray<NotesCompared> Compared { get; init; } = [];

    /// <summary>What was said aloud.</summary>
    public ImmutableArray<IdentitySpoken> Spoken { get; init; } = [];

    /// <summary>When the wheels left the cave, or null where that was not noted.</summary>
    public DateTimeOffset? TakenOutAt { get; init; }

    /// <summary>Steps of the plating that are done: “cut W3”, “plate 7”.</summary>
    public ImmutableHashSet<string> Plated { get; init; } = [];

    /// <summary>Plates that were made again.</summary>
    public ImmutableArray<PlateMadeAgain> MadeAgain { get; init; } = [];

    /// <summary>Samples that fell.</summary>
    public ImmutableArray<SampleDropped> Dropped { get; init; } = [];

    /// <summary>Plates on which two codes stood wrong.</summary>
    public ImmutableArray<CodesSwapped> Swaps { get; init; } = [];

    /// <summary>Openings, before the reveal, of the key that stands; those of a key that was thrown away stay in <see cref="Log"/> alone.</summary>
    public ImmutableArray<KeyOpened> KeyOpenings { get; init; } = [];

    /// <summary>Tasters who got to know the key that stands.</summary>
    public ImmutableArray<KeyLearned> Learned { get; init; } = [];

    /// <summary>Ballots let in after the close.</summary>
    public ImmutableHashSet<RevisionId> Admitted { get; init; } = [];

    /// <summary>Paper ballots that were typed in twice and agree, by the version that stands.</summary>
    public ImmutableDictionary<RevisionId, PaperChecked> PaperChecks { get; init; } = ImmutableDictionary<RevisionId, PaperChecked>.Empty;

    /// <summary>What tasters said once the key was open.</summary>
    public ImmutableArray<SaidAfterReveal> AfterReveal { get; init; } = [];

    /// <summary>What the ballot asks: as fixed by the plan, or likings and remarks where the plan says nothing.</summary>
    public BallotPlan Asked => Plan.Ballot ?? BallotPlan.Usual;

    /// <summary>
    /// Corrections after sealing that the verdict tells: of wheels, and of who is under 12. The old values stay in the earlier events.
    /// </summary>
    public ImmutableArray<DayEvent> Corrections { get; init; } = [];

    /// <summary>Reopenings after a close.</summary>
    public ImmutableArray<TastingReopened> Reopenings { get; init; } = [];

    /// <summary>When the key was last sealed.</summary>
    public DateTimeOffset? SealedAt { get; init; }

    /// <summary>When the first plate went out.</summary>
    public DateTimeOffset? OpenedAt { get; init; }

    /// <summary>When ballots were last frozen; null while open.</summary>
    public DateTimeOffset? ClosedAt { get; init; }

    /// <summary>When the key was opened for everyone.</summary>
    public DateTimeOffset? RevealedAt { get; init; }

    /// <summary>Every event, undone ones included.</summary>
    public ImmutableArray<Logged> Log { get; init; } = [];

    /// <summary>Places in the row of the events that were taken back.</summary>
    public ImmutableHashSet<int> Undone { get; init; } = [];

    /// <summary>Entries that are not withdrawn.</summary>
    public IEnumerable<Entry> Standing => Entries.Where(entry => !IsWithdrawn(entry.Wheel));

    /// <summary>Versions of the verdict that were published, in order.</summary>
    public ImmutableArray<PublishedVersion> Published { get; init; } = [];

    /// <summary>Ballots put right after the reveal, in order; the last one of a taster stands.</summary>
    public ImmutableArray<BallotMended> Mended { get; init; } = [];

    /// <summary>How a taster's ballot was put right after the reveal, or null.</summary>
    /// <param name="taster">Whose.</param>
    public BallotMended? MendedOf(TasterId taster) => Mended.LastOrDefault(mended => mended.Taster == taster);

    /// <summary>Tasters still on the list.</summary>
    public IEnumerable<Taster> Present => Tasters.Where(taster => !taster.LetGo);

    /// <summary>Whether a plate is planned for a taster: as long as nobody was counted, for everybody on the list.</summary>
    /// <param name="taster">Who.</param>
    public bool IsExpected(Taster taster) => !taster.LetGo && (Here?.Contains(taster.Id) ?? true);

    /// <summary>Whether a code stands for a sample of the second flight, which is liked and not placed.</summary>
    /// <param name="code">The code.</param>
    public bool IsUnplaced(BlindCode code) => Key?[code] is { } line && SecondFlight.Contains(line.Wheel);

    /// <summary>Whether a wheel was taken out.</summary>
    /// <param name="wheel">The wheel.</param>
    public bool IsWithdrawn(WheelId wheel) => Withdrawals.Any(withdrawal => withdrawal.Wheel == wheel);

    /// <summary>The entry of a wheel, or null.</summary>
    /// <param name="wheel">The wheel.</param>
    public Entry? Entry(WheelId wheel) => Entries.FirstOrDefault(entry => entry.Wheel == wheel);

    /// <summary>A taster by id, or null.</summary>
    /// <param name="id">The id.</param>
    public Taster? Taster(TasterId id) => Tasters.FirstOrDefault(taster => taster.Id == id);

    /// <summary>The plate as dealt, or null where none was.</summary>
    /// <param name="taster">Whose.</param>
    public Plate? Plate(TasterId taster) => Taster(taster) is { } found && Plates.TryGetValue(found.Number, out var plate) ? plate : null;

    /// <summary>The code that belonged on the sample that stood under a code on one plate: another one only where two had changed places.</summary>
    /// <param name="taster">Whose plate.</param>
    /// <param name="code">The code on the plate and on the ballot.</param>
    public BlindCode PutRight(TasterId taster, BlindCode code) =>
        Swaps.Where(swap => swap.Taster == taster).Aggregate(code, (stood, swap) => stood == swap.First ? swap.Second : stood == swap.Second ? swap.First : stood);

    /// <summary>The part of <see cref="Served"/> that is put in places: the first flight.</summary>
    /// <param name="taster">Whose.</param>
    public ImmutableArray<BlindCode> Placed(TasterId taster) => [.. Served(taster).Where(code => !IsUnplaced(code))];

    /// <summary>The plate as it is served now: as dealt, without the codes of wheels withdrawn since and of samples that fell and were not replaced.</summary>
    /// <param name="taster">Whose.</param>
    public ImmutableArray<BlindCode> Served(TasterId taster) =>
        Plate(taster) is { } plate && Key is { } key
            ? [.. plate.Codes.Where(code => key[code] is { } line && !IsWithdrawn(line.Wheel) && !IsLost(taster, code))]
            : [];

    private bool IsLost(TasterId taster, BlindCode code) => Dropped.Any(fallen => fallen.Taster == taster && fallen.Code == code && !fallen.Replaced);
}
