using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Trier.Trials.Common;
using Trier.Trials.Makes;

namespace Trier.Storage.Makes;

/// <summary>Wheels, each a row of revisions.</summary>
/// <param name="databases">Opens the database.</param>
/// <param name="writer">The one writer of this database.</param>
/// <param name="clock">The host's clock.</param>
public sealed class WheelStore(IDbContextFactory<TrierDb> databases, WriterGate writer, TimeProvider clock)
{
    /// <summary>Writes down what is known of a wheel from now on.</summary>
    /// <param name="wheel">The wheel, new or changed.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task SaveAsync(Wheel wheel, CancellationToken cancellation = default)
    {
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var last = await db.WheelRevisions.Where(row => row.Wheel == wheel.Id).MaxAsync(row => (int?)row.Revision, cancellation) ?? 0;
        db.WheelRevisions.Add(new WheelRevisionRow { Wheel = wheel.Id, Revision = last + 1, At = clock.GetUtcNow().UtcTicks, Json = RecordJson.Write(wheel) });
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>Every wheel as it stands now.</summary>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<ImmutableArray<Wheel>> AllAsync(CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var rows = await db.WheelRevisions.AsNoTracking().OrderBy(row => row.Revision).ToListAsync(cancellation);
        return [.. rows.GroupBy(row => row.Wheel).OrderBy(group => group.First().At).Select(group => RecordJson.Read<Wheel>(group.Last().Json))];
    }

    /// <summary>A wheel's revisions, first to last; empty where there is no such wheel.</summary>
    /// <param name="id">Which wheel.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<ImmutableArray<Wheel>> HistoryAsync(WheelId id, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var rows = await db.WheelRevisions.AsNoTracking().Where(row => row.Wheel == id).OrderBy(row => row.Revision).Select(row => row.Json).ToListAsync(cancellation);
        return [.. rows.Select(RecordJson.Read<Wheel>)];
    }
}
