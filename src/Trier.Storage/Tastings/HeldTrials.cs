using System.Collections.Concurrent;
using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;

namespace Trier.Storage.Tastings;

/// <summary>
/// Trials and their ballots held in memory, so that nobody reads again what is known. One program has a database to itself, and rows are only ever
/// appended: of two readings the longer is the newer, and what was written by another program shows at the latest when a row's key is taken.
/// </summary>
/// <param name="databases">Opens the database.</param>
internal sealed class HeldTrials(IDbContextFactory<TrierDb> databases)
{
    private readonly ConcurrentDictionary<TrialId, Tasting> _tastings = new();
    private readonly ConcurrentDictionary<TrialId, BallotBox> _boxes = new();

    /// <summary>Where a trial stands, or null where there is none of this id.</summary>
    public async ValueTask<Tasting?> TastingAsync(TrialId id, CancellationToken cancellation)
    {
        if (_tastings.TryGetValue(id, out var held)) return held;
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var rows = await db.DayEvents.AsNoTracking().Where(row => row.Trial == id).OrderBy(row => row.Sequence).Select(row => new { row.Sequence, row.Json }).ToListAsync(cancellation);
        return rows.Count == 0 ? null : Keep(Tasting.Read(id, rows.ConvertAll(row => new Logged(row.Sequence, RecordJson.Read<DayEvent>(row.Json)))));
    }

    /// <summary>What has arrived for a trial.</summary>
    public async ValueTask<BallotBox> BoxAsync(TrialId id, CancellationToken cancellation)
    {
        if (_boxes.TryGetValue(id, out var held)) return held;
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var rows = await db.BallotRevisions.AsNoTracking().Where(row => row.Trial == id).OrderBy(row => row.Arrival).ToListAsync(cancellation);
        var byTaster = rows.GroupBy(row => row.Taster).ToImmutableDictionary(group => group.Key, group => group.Select(row => row.Revision()).ToImmutableArray());
        return Keep(id, new BallotBox(rows.Count == 0 ? 0 : rows[^1].Arrival, byTaster));
    }

    public Tasting Keep(Tasting tasting) =>
        _tastings.AddOrUpdate(tasting.Book.Trial, tasting, (_, held) => held.Book.Log.Length > tasting.Book.Log.Length ? held : tasting);

    public BallotBox Keep(TrialId id, BallotBox box) => _boxes.AddOrUpdate(id, box, (_, held) => held.Arrived > box.Arrived ? held : box);

    /// <summary>Has a trial read anew when it is asked for next.</summary>
    public void Forget(TrialId id)
    {
        _tastings.TryRemove(id, out _);
        _boxes.TryRemove(id, out _);
    }
}
