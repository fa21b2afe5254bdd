using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Plates;

namespace Trier.Trials.Tastings.Steps;

/// <summary>A tasting under way: plates are out and ballots come in.</summary>
public sealed class OpenTasting : RoomTasting
{
    internal OpenTasting(DayBook book)
        : base(book)
    {
    }

    /// <summary>A taster joins while guests are at the table: dealt the next plate, marked late.</summary>
    /// <inheritdoc cref="DraftTasting.AddTaster" path="/param"/>
    public Outcome<ImmutableArray<DayEvent>> AddTaster(DateTimeOffset at, TasterId id, string name, bool knowsTheKey, bool junior, int sitting)
    {
        var problems = CheckJoining(id, name, sitting);
        return problems.IsEmpty
            ? Do(NewTaster(at, id, name, knowsTheKey, junior, sitting), new PlateDealt(at, NextPlates.For(Book, id)), new TasterCameLate(at, id))
            : Outcome.Fault<ImmutableArray<DayEvent>>(problems);
    }

    /// <inheritdoc cref="DraftTasting.LetGo"/>
    public Outcome<ImmutableArray<DayEvent>> LetGo(DateTimeOffset at, TasterId taster) =>
        Book.Taster(taster) is { LetGo: false } ? Do(new TasterLetGo(at, taster)) : Fault("taster", "This taster is not on the list.");

    /// <summary>
    /// Says which wheels stay off a taster's plate and deals it again, for somebody who has not begun: what was said of a sample must never
    /// lose its place on the plate.
    /// </summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Whose plate.</param>
    /// <param name="wheels">All wheels to leave off.</param>
    /// <param name="begun">Whether anything of theirs has come in.</param>
    public Outcome<ImmutableArray<DayEvent>> LeaveOff(DateTimeOffset at, TasterId taster, ImmutableArray<WheelId> wheels, bool begun)
    {
        if (begun) return Fault("wheels", "This ballot has begun: the sample can stay untouched, and the ballot then counts without it.");
        if (LeavingOff.Check(Book, taster, wheels) is { } problem) return Outcome.Fault<ImmutableArray<DayEvent>>([problem]);
        return Book.Plate(taster) is null ? Do(new SampleLeftOff(at, taster, wheels)) : Do(new SampleLeftOff(at, taster, wheels), new PlateDealt(at, PlateNow.Without(Book, taster, wheels)));
    }

    /// <summary>Numbers of plates that can be given out, lowest first.</summary>
    public IEnumerable<int> FreePlates => NextPlates.Free(Book);

    /// <summary>Somebody on the list has come and gets a plate: the next one, or the one that stands before them.</summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Who.</param>
    /// <param name="number">The number on the plate, or null for the next.</param>
    public Outcome<ImmutableArray<DayEvent>> HandOut(DateTimeOffset at, TasterId taster, int? number)
    {
        if (Book.Taster(taster) is not { LetGo: false } found) return Fault("taster", "This taster is not on the list.");
        if (Book.Plate(taster) is not null) return Fault("plate", $"{found.Name} has a plate already.");
        var free = FreePlates.ToList();
        return number is { } chosen && !free.Contains(chosen)
            ? Fault("plate", $"Plate {chosen} is not free: look at the number on the card again.")
            : Do(new PlateDealt(at, NextPlates.Numbered(Book, taster, number ?? free[0])));
    }

    /// <summary>
    /// Two people answered by one link: the second gets a ballot and a plate of their own, and the two are one voice, because each has seen what the other said.
    /// </summary>
    /// <param name="at">When.</param>
    /// <param name="taster">Whose link it was.</param>
    /// <param name="second">Id of the second person.</param>
    /// <param name="name">Their name.</param>
    public Outcome<ImmutableArray<DayEvent>> PartLink(DateTimeOffset at, TasterId taster, TasterId second, string name)
    {
        if (Book.Taster(taster) is not { LetGo: false } found) return Fault("taster", "This taster is not on the list.");
        var problems = CheckJoining(second, name, found.Sitting);
        return problems.IsEmpty
            ? Do(NewTaster(at, second, name, false, false, found.Sitting), new PlateDealt(at, NextPlates.For(Book, second)), new NotesCompared(at, [taster, second]))
            : Outcome.Fault<ImmutableArray<DayEvent>>(problems);
    }

    /// <summary>
    /// Withdraws a wheel with guests at the table: its codes are retired, whoever has begun keeps their plate without it, and all other plates are made again. The free place can
    /// go to a hidden repeat there.
    /// </summary>
    /// <param name="at">When.</param>
    /// <param name="wheel">Which wheel.</param>
    /// <param name="reason">Why.</param>
    /// <param name="decidedBy">Who decided, or null.</param>
    /// <param name="begun">Who has begun their plate.</param>
    /// <param name="serveTwice">The wheel that takes the free place under a second code, or null.</param>
    /// <param name="seed">Chance for the new draw.</param>
    public Outcome<ImmutableArray<DayEvent>> WithdrawAndDraw(DateTimeOffset at, WheelId wheel, string reason, string? decidedBy, IReadOnlySet<TasterId> begun, WheelId? serveTwice, Seed seed)
    {
        // A tasting sealed before plates had numbers, or with nothing left to compare, only loses the wheel.
        if (Book.PlannedPlates is null || Book.Standing.Count(entry => entry.Wheel != wheel && !Book.SecondFlight.Contains(entry.Wheel)) < 2) return Withdraw(at, wheel, reason, decidedBy);
        var drawn = Withdrawing.AndDraw(Book, at, wheel, reason, decidedBy, serveTwice, events => Later(events), after => KeyDraw.Draw(after, at, seed, begun));
        // Whatever hinders a new draw, a wheel that should not be eaten comes off.
        return drawn.Ok || serveTwice is not null ? drawn : Withdraw(at, wheel, reason, decidedBy);
    }

    /// <summary>Freezes the ballots.</summary>
    /// <param name="at">When.</param>
    public Outcome<ImmutableArray<DayEvent>> Close(DateTimeOffset at) => Do(new TastingClosed(at));
}
