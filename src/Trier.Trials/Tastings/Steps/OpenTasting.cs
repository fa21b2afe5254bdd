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
        if (CheckName(name, null) is { } problem) return Outcome.Fault<ImmutableArray<DayEvent>>([problem]);
        return Do(NewTaster(at, id, name, knowsTheKey, junior, sitting), new PlateDealt(at, Dealing.NextPlate(Book, id)), new TasterCameLate(at, id));
    }

    /// <inheritdoc cref="DraftTasting.LetGo"/>
    public Outcome<ImmutableArray<DayEvent>> LetGo(DateTimeOffset at, TasterId taster) =>
        Book.Taster(taster) is { LetGo: false } ? Do(new TasterLetGo(at, taster)) : Fault("taster", "This taster is not on the list.");

    /// <summary>Withdraws a wheel with guests at the table: its codes are retired, ballots keep their order of the others.</summary>
    /// <param name="at">When.</param>
    /// <param name="wheel">Which wheel.</param>
    /// <param name="reason">Why.</param>
    /// <param name="decidedBy">Who decided, or null.</param>
    public Outcome<ImmutableArray<DayEvent>> Withdraw(DateTimeOffset at, WheelId wheel, string reason, string? decidedBy) =>
        Withdrawing.Check(Book, wheel, reason) is { } problem
            ? Outcome.Fault<ImmutableArray<DayEvent>>([problem])
            : Do(new WheelWithdrawn(at, wheel, reason.Trim(), decidedBy));

    /// <summary>Freezes the ballots.</summary>
    /// <param name="at">When.</param>
    public Outcome<ImmutableArray<DayEvent>> Close(DateTimeOffset at) => Do(new TastingClosed(at));
}
