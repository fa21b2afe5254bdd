using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Trier.Trials.Common;

namespace Trier.Storage.Access;

/// <summary>Somebody who stands at the door and is not on the list.</summary>
/// <param name="Id">Names the request.</param>
/// <param name="Trial">Which trial.</param>
/// <param name="Name">Their name.</param>
/// <param name="Taster">The taster they became, or null.</param>
/// <param name="TurnedAway">Whether the maker said no.</param>
public sealed record WalkIn(Guid Id, TrialId Trial, string Name, TasterId? Taster, bool TurnedAway);

/// <summary>People at the door. Nobody becomes a taster until the maker accepts.</summary>
/// <param name="databases">Opens the database.</param>
/// <param name="writer">The one writer of this database.</param>
/// <param name="clock">The host's clock.</param>
public sealed class WalkIns(IDbContextFactory<TrierDb> databases, WriterGate writer, TimeProvider clock)
{
    /// <summary>Most people that can wait at one door.</summary>
    public const int MostWaiting = 50;

    /// <summary>Puts a name at the door.</summary>
    /// <param name="trial">Which trial.</param>
    /// <param name="name">1 to 60 letters.</param>
    /// <param name="cancellation">Stops the wait.</param>
    /// <returns>The request, or null where too many wait already.</returns>
    public async Task<WalkIn?> AskAsync(TrialId trial, string name, CancellationToken cancellation = default)
    {
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(cancellation);
        if (await db.WalkIns.CountAsync(row => row.Trial == trial && row.Taster == null && !row.TurnedAway, cancellation) >= MostWaiting) return null;
        var row = new WalkInRow { Id = Guid.NewGuid(), Trial = trial, Name = name, AskedAt = clock.GetUtcNow().UtcTicks };
        db.WalkIns.Add(row);
        await db.SaveChangesAsync(cancellation);
        return Seen(row);
    }

    /// <summary>Everyone who asked, in order.</summary>
    /// <param name="trial">Which trial.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<ImmutableArray<WalkIn>> OfAsync(TrialId trial, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var rows = await db.WalkIns.AsNoTracking().Where(row => row.Trial == trial).OrderBy(row => row.AskedAt).ToListAsync(cancellation);
        return [.. rows.Select(Seen)];
    }

    /// <summary>One request, or null.</summary>
    /// <param name="id">Which.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<WalkIn?> FindAsync(Guid id, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        return await db.WalkIns.AsNoTracking().FirstOrDefaultAsync(row => row.Id == id, cancellation) is { } row ? Seen(row) : null;
    }

    /// <summary>Records the maker's answer.</summary>
    /// <param name="id">Which request.</param>
    /// <param name="taster">The taster they became, or null where turned away.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task AnswerAsync(Guid id, TasterId? taster, CancellationToken cancellation = default)
    {
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(cancellation);
        await db.WalkIns
            .Where(row => row.Id == id)
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.Taster, taster).SetProperty(row => row.TurnedAway, taster == null), cancellation);
    }

    private static WalkIn Seen(WalkInRow row) => new(row.Id, row.Trial, row.Name, row.Taster, row.TurnedAway);
}
