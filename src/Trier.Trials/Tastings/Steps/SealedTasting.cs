using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Plates;

namespace Trier.Trials.Tastings.Steps;

/// <summary>A tasting whose key is sealed and whose plates are dealt, before the first plate is out.</summary>
public sealed class SealedTasting : Tasting
{
    internal SealedTasting(DayBook book)
        : base(book)
    {
    }

    /// <summary>Puts a taster on the list and deals them the next plate; where plates are given out as people come, they get theirs then.</summary>
    /// <inheritdoc cref="DraftTasting.AddTaster" path="/param"/>
    public Outcome<ImmutableArray<DayEvent>> AddTaster(DateTimeOffset at, TasterId id, string name, bool knowsTheKey, bool junior, int sitting)
    {
        var problems = CheckJoining(id, name, sitting);
        if (!problems.IsEmpty) return Outcome.Fault<ImmutableArray<DayEvent>>(problems);
        var added = NewTaster(at, id, name, knowsTheKey, junior, sitting);
        return Book.Plan.Serving is { AsTheyCome: true } || Book.Here is not null ? Do(added) : Do(added, new PlateDealt(at, NextPlates.For(Book, id)));
    }

    /// <inheritdoc cref="DraftTasting.LetGo"/>
    public Outcome<ImmutableArray<DayEvent>> LetGo(DateTimeOffset at, TasterId taster) =>
        Book.Taster(taster) is { LetGo: false } ? Do(new TasterLetGo(at, taster)) : Fault("taster", "This taster is not on the list.");

    /// <summary>
    /// Says which wheels stay off a taster's plate and makes that plate again, under codes of its own: the code missing from a plate like everybody's would name the wheel.
    /// Samples that stay keep their order. The key gets a new version.
    /// </summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Whose plate.</param>
    /// <param name="wheels">All wheels to leave off.</param>
    /// <param name="seed">Chance for the new codes.</param>
    public Outcome<ImmutableArray<DayEvent>> LeaveOff(DateTimeOffset at, TasterId taster, ImmutableArray<WheelId> wheels, Seed seed)
    {
        if (LeavingOff.Check(Book, taster, wheels) is { } problem) return Outcome.Fault<ImmutableArray<DayEvent>>([problem]);
        var off = new SampleLeftOff(at, taster, wheels);
        if (Book.PlannedPlates is null) return Do(off, new PlateDealt(at, UnnumberedPlates.PlateWithout(Book, taster, wheels)));
        var after = Later([off]);
        return KeyDraw.DrawOne(after, at, after.Taster(taster)!, seed).Then(key => Do(off, key));
    }

    /// <summary>Only some have come: plates are dealt anew to those who are here, so that they are even among them. Codes are kept; whoever comes later gets the next plate.</summary>
    /// <param name="at">When.</param>
    /// <param name="here">Who is here; at least one.</param>
    /// <param name="seed">Chance for the new draw.</param>
    public Outcome<ImmutableArray<DayEvent>> OnlyThese(DateTimeOffset at, IReadOnlyCollection<TasterId> here, Seed seed)
    {
        var distinct = here.Distinct().ToImmutableArray();
        if (distinct.IsEmpty) return Fault("here", "Tick everybody who is here.");
        if (distinct.Any(taster => Book.Taster(taster) is not { LetGo: false })) return Fault("here", "One of these tasters is not on the list.");
        var counted = new GuestsCounted(at, distinct);
        return KeyDraw.Draw(Later([counted]), at, seed).Then(key => Do(counted, key));
    }

    /// <summary>
    /// Withdraws a wheel: its codes are retired, orders and plates drawn again, the other codes kept. The free place can go to a hidden
    /// repeat, so that guests see no gap.
    /// </summary>
    /// <param name="at">When.</param>
    /// <param name="wheel">Which wheel.</param>
    /// <param name="reason">Why.</param>
    /// <param name="decidedBy">Who decided, or null.</param>
    /// <param name="serveTwice">The wheel that takes the free place under a second code, or null.</param>
    /// <param name="seed">Chance for the new draw.</param>
    public Outcome<ImmutableArray<DayEvent>> Withdraw(DateTimeOffset at, WheelId wheel, string reason, string? decidedBy, WheelId? serveTwice, Seed seed)
    {
        if (Withdrawing.Check(Book, wheel, reason) is { } problem) return Outcome.Fault<ImmutableArray<DayEvent>>([problem]);
        if (Book.Standing.Count(entry => entry.Wheel != wheel && !Book.SecondFlight.Contains(entry.Wheel)) < 2) return Fault("wheel", "Without this wheel fewer than two are left: break the seal first, then there is nothing to compare.");
        return Withdrawing.AndDraw(Book, at, wheel, reason, decidedBy, serveTwice, events => Later(events), after => KeyDraw.Draw(after, at, seed));
    }

    /// <summary>Breaks the seal: back to a draft, every code given out retired.</summary>
    /// <param name="at">When.</param>
    public Outcome<ImmutableArray<DayEvent>> BreakSeal(DateTimeOffset at) => Do(new SealBroken(at));

    /// <summary>Records that the page with the key was opened: by the helper who plates, or early by the maker.</summary>
    /// <param name="at">When.</param>
    /// <param name="by">Who.</param>
    /// <param name="early">True where this goes against the seal.</param>
    /// <param name="taster">The same person on the list of tasters, or null where they do not taste.</param>
    public Outcome<ImmutableArray<DayEvent>> OpenKey(DateTimeOffset at, string by, bool early, TasterId? taster) => Opening(at, by, early, taster);

    /// <summary>The first plate goes out.</summary>
    /// <param name="at">When.</param>
    public Outcome<ImmutableArray<DayEvent>> Open(DateTimeOffset at) => Do(new TastingOpened(at));
}
