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

    /// <summary>Freezes the ballots.</summary>
    /// <param name="at">When.</param>
    public Outcome<ImmutableArray<DayEvent>> Close(DateTimeOffset at) => Do(new TastingClosed(at));
}
