using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;

namespace Trier.Trials.Tastings.Steps;

/// <summary>A tasting whose key is sealed and whose plates are dealt, before the first plate is out.</summary>
public sealed class SealedTasting : Tasting
{
    internal SealedTasting(DayBook book)
        : base(book)
    {
    }

    /// <summary>Puts a taster on the list and deals them a plate in the serving order least used so far.</summary>
    /// <inheritdoc cref="DraftTasting.AddTaster" path="/param"/>
    public Outcome<ImmutableArray<DayEvent>> AddTaster(DateTimeOffset at, TasterId id, string name, bool knowsTheKey, bool junior, int sitting)
    {
        var problems = CheckJoining(id, name, sitting);
        return problems.IsEmpty
            ? Do(NewTaster(at, id, name, knowsTheKey, junior, sitting), new PlateDealt(at, Dealing.NextPlate(Book, id)))
            : Outcome.Fault<ImmutableArray<DayEvent>>(problems);
    }

    /// <inheritdoc cref="DraftTasting.LetGo"/>
    public Outcome<ImmutableArray<DayEvent>> LetGo(DateTimeOffset at, TasterId taster) =>
        Book.Taster(taster) is { LetGo: false } ? Do(new TasterLetGo(at, taster)) : Fault("taster", "This taster is not on the list.");

    /// <summary>Says which wheels stay off a taster's plate and deals that plate again; the other samples keep their order.</summary>
    /// <inheritdoc cref="DraftTasting.LeaveOff" path="/param"/>
    public Outcome<ImmutableArray<DayEvent>> LeaveOff(DateTimeOffset at, TasterId taster, ImmutableArray<WheelId> wheels)
    {
        if (LeavingOff.Check(Book, taster, wheels) is { } problem) return Outcome.Fault<ImmutableArray<DayEvent>>([problem]);
        return Do(new SampleLeftOff(at, taster, wheels), new PlateDealt(at, Dealing.PlateWithout(Book, taster, wheels)));
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
        var repeat = Book.Repeat == wheel ? null : Book.Repeat;
        if (serveTwice is { } twice)
        {
            if (repeat is { } already && already != twice) return Fault("repeat", $"{Book.Entry(already)!.Name} is served twice already, and one hidden repeat is enough.");
            if (twice == wheel || !Book.Standing.Any(entry => entry.Wheel == twice)) return Fault("repeat", "Only a wheel that stays in the trial can be served twice.");
            repeat = twice;
        }

        var events = ImmutableArray.CreateBuilder<DayEvent>();
        events.Add(new WheelWithdrawn(at, wheel, reason.Trim(), decidedBy));
        if (repeat != Book.Repeat) events.Add(new RepeatChosen(at, repeat));
        var after = Later(events);
        if (!after.Standing.Skip(1).Any()) return Fault("wheel", "Without this wheel fewer than two are left: break the seal first, then there is nothing to compare.");
        var empty = LeavingOff.EmptyPlates(after).ToList();
        if (empty.Count > 0) return Outcome.Fault<ImmutableArray<DayEvent>>(empty);
        return KeyDraw.Draw(after, at, seed).Then(key => Do([.. events, key]));
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

    private DayBook Later(IEnumerable<DayEvent> events)
    {
        var log = Book.Log.ToBuilder();
        foreach (var happened in events) log.Add(new Logged(log.Count + 1, happened));
        return DayBookReading.Read(Book.Trial, log.ToImmutable());
    }
}
