using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;

namespace Trier.Trials.Tastings.Steps;

/// <summary>What can be noted of the room from the first plate until the reveal. Every note can be taken back; nothing is erased.</summary>
public abstract class RoomTasting : Tasting
{
    private protected RoomTasting(DayBook book)
        : base(book)
    {
    }

    /// <summary>
    /// Withdraws a wheel that has been on the plates, with guests at the table or after the close: its codes are retired, ballots keep their
    /// order of the others.
    /// </summary>
    /// <param name="at">When.</param>
    /// <param name="wheel">Which wheel.</param>
    /// <param name="reason">Why.</param>
    /// <param name="decidedBy">Who decided, or null.</param>
    public Outcome<ImmutableArray<DayEvent>> Withdraw(DateTimeOffset at, WheelId wheel, string reason, string? decidedBy) =>
        Withdrawing.Check(Book, wheel, reason) is { } problem
            ? Outcome.Fault<ImmutableArray<DayEvent>>([problem])
            : Do(new WheelWithdrawn(at, wheel, reason.Trim(), decidedBy));

    /// <summary>A paper ballot was typed in a second time, and both entries agree on one version.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Whose.</param>
    /// <param name="revision">The version that stands.</param>
    /// <param name="by">Who typed it the second time.</param>
    public Outcome<ImmutableArray<DayEvent>> CheckPaper(DateTimeOffset at, TasterId taster, RevisionId revision, string by)
    {
        if (Book.Taster(taster) is null) return Fault("taster", "This taster is not on the list.");
        return string.IsNullOrWhiteSpace(by) ? Fault("by", "Say who types it in the second time: another person sees other slips.") : Do(new PaperChecked(at, taster, revision, by.Trim()));
    }

    /// <summary>A taster came after the first plates had gone out.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Who.</param>
    public Outcome<ImmutableArray<DayEvent>> CameLate(DateTimeOffset at, TasterId taster)
    {
        if (Book.Taster(taster) is not { } found) return Fault("taster", "This taster is not on the list.");
        return Book.Late.Any(late => late.Taster == taster) ? Fault("taster", $"{found.Name} is marked late already.") : Do(new TasterCameLate(at, taster));
    }

    /// <summary>A taster left before the end; what they said is kept.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Who.</param>
    public Outcome<ImmutableArray<DayEvent>> Leave(DateTimeOffset at, TasterId taster)
    {
        if (Book.Taster(taster) is not { } found) return Fault("taster", "This taster is not on the list.");
        return Book.Left.Any(left => left.Taster == taster) ? Fault("taster", $"{found.Name} is marked as having left already.") : Do(new TasterLeft(at, taster));
    }

    /// <summary>Two or more tasters compared notes.</summary>
    /// <param name="at">When.</param>
    /// <param name="tasters">Who.</param>
    public Outcome<ImmutableArray<DayEvent>> CompareNotes(DateTimeOffset at, IReadOnlyCollection<TasterId> tasters)
    {
        var distinct = tasters.Distinct().ToImmutableArray();
        if (distinct.Length < 2) return Fault("tasters", "Choose the two or more people who compared notes.");
        return distinct.Any(taster => Book.Taster(taster) is null)
            ? Fault("tasters", "One of these tasters is not on the list.")
            : Do(new NotesCompared(at, distinct));
    }

    /// <summary>Somebody said aloud what a code is.</summary>
    /// <param name="at">When.</param>
    /// <param name="code">Which code.</param>
    /// <param name="words">What was said, or null.</param>
    public Outcome<ImmutableArray<DayEvent>> SpeakAloud(DateTimeOffset at, BlindCode code, string? words) =>
        Book.Key?[code] is null ? Fault("code", $"No sample {code} is served here.") : Do(new IdentitySpoken(at, code, string.IsNullOrWhiteSpace(words) ? null : words.Trim()));

    /// <summary>Two codes stood on each other's sample on one plate.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Whose plate.</param>
    /// <param name="first">One code.</param>
    /// <param name="second">The other code.</param>
    /// <param name="reason">How it was noticed.</param>
    /// <param name="witness">Who saw it.</param>
    public Outcome<ImmutableArray<DayEvent>> SwapCodes(DateTimeOffset at, TasterId taster, BlindCode first, BlindCode second, string reason, string witness)
    {
        var problems = new List<Problem>();
        if (Book.Plate(taster) is not { } plate) return Fault("taster", "This taster has no plate.");
        if (first == second) problems.Add(new("codes", "Choose two different codes."));
        if (!plate.Codes.Contains(first)) problems.Add(new("first", $"Sample {first} is not on this plate."));
        if (!plate.Codes.Contains(second)) problems.Add(new("second", $"Sample {second} is not on this plate."));
        // Put right twice, they would stand wrong again.
        if (Book.Swaps.Any(swap => swap.Taster == taster && ((swap.First, swap.Second) == (first, second) || (swap.Second, swap.First) == (first, second))))
            problems.Add(new("codes", $"Samples {first} and {second} on this plate are put right already."));
        if (string.IsNullOrWhiteSpace(reason)) problems.Add(new("reason", "Say how it was noticed."));
        if (string.IsNullOrWhiteSpace(witness)) problems.Add(new("witness", "Say who saw it."));
        return problems.Count > 0 ? Outcome.Fault<ImmutableArray<DayEvent>>(problems) : Do(new CodesSwapped(at, taster, first, second, reason.Trim(), witness.Trim()));
    }

    /// <summary>A sample fell. Another comes from the spare, or the plate goes without it.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Whose.</param>
    /// <param name="code">Its code on that plate.</param>
    /// <param name="replaced">Whether another is brought.</param>
    public Outcome<ImmutableArray<DayEvent>> Drop(DateTimeOffset at, TasterId taster, BlindCode code, bool replaced)
    {
        if (Book.Taster(taster) is not { } found) return Fault("taster", "This taster is not on the list.");
        return Book.Served(taster).Contains(code) ? Do(new SampleDropped(at, taster, code, replaced)) : Fault("dropped", $"Sample {code} is not on the plate of {found.Name}.");
    }

    /// <summary>Records that the page with the key was opened before the reveal.</summary>
    /// <param name="at">When.</param>
    /// <param name="by">Who.</param>
    /// <param name="early">True where this goes against the seal: every later ballot is then marked.</param>
    /// <param name="taster">The same person on the list of tasters, or null where they do not taste.</param>
    public Outcome<ImmutableArray<DayEvent>> OpenKey(DateTimeOffset at, string by, bool early, TasterId? taster) => Opening(at, by, early, taster);

    /// <summary>A taster got to know which code is which wheel: a ballot they send from now on is kept apart.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Who.</param>
    public Outcome<ImmutableArray<DayEvent>> LearnKey(DateTimeOffset at, TasterId taster) =>
        Book.Taster(taster) is not { } found ? Fault("taster", "This taster is not on the list.")
        : Knows(found) ? Fault("taster", $"{found.Name} is marked as knowing the key already.")
        : Do(new KeyLearned(at, taster));

    /// <summary>Takes a note of the room back. The note stays in the record as taken back.</summary>
    /// <param name="at">When.</param>
    /// <param name="sequence">The note's place in the row.</param>
    public Outcome<ImmutableArray<DayEvent>> Undo(DateTimeOffset at, int sequence)
    {
        var logged = Book.Log.FirstOrDefault(candidate => candidate.Sequence == sequence);
        return logged is not null && CanUndo(logged) ? Do(new Undone(at, sequence)) : Fault("undo", "This cannot be taken back.");
    }

    /// <summary>Whether a note can still be taken back.</summary>
    /// <param name="logged">The note.</param>
    public bool CanUndo(Logged logged) =>
        !Book.Undone.Contains(logged.Sequence)
        && logged.Event switch
        {
            TasterCameLate or TasterLeft or NotesCompared or IdentitySpoken or CodesSwapped or KeyLearned or SampleDropped or WheelsTakenOut => true,
            // Only somebody with a plate can come back to the table, and under a name nobody has taken since.
            TasterLetGo gone => Book.Plate(gone.Taster) is not null && CheckName(Book.Taster(gone.Taster)!.Name, gone.Taster) is null,
            _ => false,
        };
}
