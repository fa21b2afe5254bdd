using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;

namespace Trier.Trials.Tastings.Steps;

/// <summary>A tasting under way: plates are out and ballots come in.</summary>
public sealed class OpenTasting : RoomTasting
{
    internal OpenTasting(DayBook book)
        : base(book)
    {
    }

    /// <summary>A taster joins while guests are at the table: dealt the serving order least used so far, marked late.</summary>
    /// <inheritdoc cref="DraftTasting.AddTaster" path="/param"/>
    public Outcome<ImmutableArray<DayEvent>> AddTaster(DateTimeOffset at, TasterId id, string name, bool knowsTheKey, bool junior, int sitting)
    {
        var problems = CheckJoining(id, name, sitting);
        return problems.IsEmpty
            ? Do(NewTaster(at, id, name, knowsTheKey, junior, sitting), new PlateDealt(at, Dealing.NextPlate(Book, id)), new TasterCameLate(at, id))
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
        return Do(new SampleLeftOff(at, taster, wheels), new PlateDealt(at, Dealing.PlateWithout(Book, taster, wheels)));
    }

    /// <summary>Freezes the ballots.</summary>
    /// <param name="at">When.</param>
    public Outcome<ImmutableArray<DayEvent>> Close(DateTimeOffset at) => Do(new TastingClosed(at));
}
