using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;

namespace Trier.Storage.Tastings;

/// <summary>
/// Trials and their ballots. Everything is appended in one durable transaction and only then acknowledged; an act reads the trial, decides
/// and appends under one writer, so that a send and a close cannot cross.
/// </summary>
/// <param name="databases">Opens the database.</param>
/// <param name="writer">The one writer of this database.</param>
/// <param name="clock">The host's clock.</param>
public sealed class TrialStore(IDbContextFactory<TrierDb> databases, WriterGate writer, TimeProvider clock)
{
    // Events are only ever appended, so a trial read at some length is the trial as long as the row has that length.
    private readonly ConcurrentDictionary<TrialId, Tasting> _lastRead = new();

    /// <summary>The host's time, with its offset.</summary>
    public DateTimeOffset Now => clock.GetLocalNow();

    /// <summary>Begins a trial.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="events">Its first events.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task BeginAsync(TrialId id, ImmutableArray<DayEvent> events, CancellationToken cancellation = default)
    {
        _ = Tasting.Read(id, [.. Number(events, 0)]);
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(cancellation);
        db.Trials.Add(new TrialRow { Id = id, BegunAt = Now.UtcTicks, LinkSecret = RandomNumberGenerator.GetBytes(32) });
        Append(db, id, events, 0);
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>All trials, newest first.</summary>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<ImmutableArray<Tasting>> AllAsync(CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var ids = await db.Trials.AsNoTracking().OrderByDescending(row => row.BegunAt).Select(row => row.Id).ToListAsync(cancellation);
        var found = ImmutableArray.CreateBuilder<Tasting>(ids.Count);
        foreach (var id in ids) found.Add((await ReadAsync(db, id, cancellation))!);
        return found.ToImmutable();
    }

    /// <summary>Where a trial stands, or null where there is none of this id.</summary>
    /// <param name="id">Which trial.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<Tasting?> FindAsync(TrialId id, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        return await ReadAsync(db, id, cancellation);
    }

    /// <summary>Does one act and appends what it yields.</summary>
    /// <param name="id">Which trial.</param>
    /// <param name="act">Decides on the trial as it stands now; may be refused.</param>
    /// <param name="cancellation">Stops the wait for the writer; once begun, the write is finished.</param>
    /// <returns>Where the trial stands afterwards, or what stood in the way.</returns>
    public async Task<Outcome<Tasting>> ActAsync(TrialId id, Func<Tasting, Outcome<ImmutableArray<DayEvent>>> act, CancellationToken cancellation = default)
    {
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(CancellationToken.None);
        if (await ReadAsync(db, id, CancellationToken.None) is not { } tasting) return Outcome.Fault<Tasting>("trial", "There is no such trial.");
        var log = tasting.Book.Log;
        var outcome = act(tasting);
        if (!outcome.TryGet(out var events)) return Outcome.Fault<Tasting>(outcome.Problems);
        // Read before it is written: what cannot be read must never reach the disk, or the trial could not be opened again.
        var after = Tasting.Read(id, [.. log, .. Number(events, log.Length)]);
        Append(db, id, events, log.Length);
        await db.SaveChangesAsync(CancellationToken.None);
        return Outcome.Of(after);
    }

    /// <summary>Takes a ballot in. When this returns, it is on the disk.</summary>
    /// <param name="id">Which trial.</param>
    /// <param name="send">The ballot.</param>
    /// <param name="cancellation">Stops the wait for the writer; once begun, the write is finished.</param>
    /// <returns>The receipt, or that the trial or taster is unknown or has no plate yet.</returns>
    public async Task<Outcome<BallotReceipt>> ReceiveAsync(TrialId id, BallotSend send, CancellationToken cancellation = default)
    {
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(CancellationToken.None);
        if (await ReadAsync(db, id, CancellationToken.None) is not { } tasting) return Outcome.Fault<BallotReceipt>("trial", "There is no such trial.");
        if (tasting.Book.Plate(send.Taster) is null) return Outcome.Fault<BallotReceipt>("taster", "There is no plate for this taster yet.");

        var rows = await db.BallotRevisions.AsNoTracking().Where(row => row.Trial == id && row.Taster == send.Taster).OrderBy(row => row.Arrival).ToListAsync(CancellationToken.None);
        var history = BallotHistory.Of(rows.Select(Revision), tasting.Book.Admitted);
        if (rows.Find(row => row.Id == send.Id) is { } here) return Outcome.Of(new BallotReceipt(Revision(here), AlreadyHere: true, history.Current?.Id == here.Id));
        if (await db.BallotRevisions.AnyAsync(row => row.Id == send.Id, CancellationToken.None)) return Outcome.Fault<BallotReceipt>("ballot", "This send bears the number of somebody else's: load the page again and send once more.");

        var standing = tasting switch
        {
            OpenTasting => BallotStanding.InTime,
            ClosedTasting => BallotStanding.AfterClose,
            RevealedTasting => BallotStanding.AfterReveal,
            _ => (BallotStanding?)null,
        };
        if (standing is null) return Outcome.Fault<BallotReceipt>("trial", "The tasting is not open yet.");
        var now = Now;
        var arrival = 1 + await db.BallotRevisions.Where(row => row.Trial == id).MaxAsync(row => (int?)row.Arrival, CancellationToken.None) ?? 1;
        var stored = new BallotRevisionRow
        {
            Id = send.Id,
            Trial = id,
            Arrival = arrival,
            Taster = send.Taster,
            Base = send.Base,
            Device = send.Device,
            Source = send.Source,
            Stage = send.Stage,
            Standing = standing.Value,
            ReceivedAt = now.UtcTicks,
            OffsetMinutes = (int)now.Offset.TotalMinutes,
            Json = RecordJson.Write(send.Content),
        };
        db.BallotRevisions.Add(stored);
        await db.SaveChangesAsync(CancellationToken.None);
        var after = BallotHistory.Of([.. history.All, Revision(stored)], tasting.Book.Admitted);
        return Outcome.Of(new BallotReceipt(Revision(stored), AlreadyHere: false, after.Current?.Id == send.Id));
    }

    /// <summary>Every taster's ballot history.</summary>
    /// <param name="tasting">The trial as read; says which late ballots were let in.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<IReadOnlyDictionary<TasterId, BallotHistory>> BallotsAsync(Tasting tasting, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var rows = await db.BallotRevisions.AsNoTracking().Where(row => row.Trial == tasting.Book.Trial).OrderBy(row => row.Arrival).ToListAsync(cancellation);
        return rows.GroupBy(row => row.Taster).ToDictionary(group => group.Key, group => BallotHistory.Of(group.Select(Revision), tasting.Book.Admitted));
    }

    /// <summary>One taster's ballot history.</summary>
    /// <param name="tasting">The trial as read.</param>
    /// <param name="taster">Whose.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<BallotHistory> BallotAsync(Tasting tasting, TasterId taster, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var rows = await db.BallotRevisions.AsNoTracking()
            .Where(row => row.Trial == tasting.Book.Trial && row.Taster == taster)
            .OrderBy(row => row.Arrival)
            .ToListAsync(cancellation);
        return BallotHistory.Of(rows.Select(Revision), tasting.Book.Admitted);
    }

    /// <summary>The secret that a trial's taster links and typed codes are derived from, or null where there is no such trial.</summary>
    /// <param name="id">Which trial.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<byte[]?> LinkSecretAsync(TrialId id, CancellationToken cancellation = default)
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        return await db.Trials.AsNoTracking().Where(row => row.Id == id).Select(row => row.LinkSecret).FirstOrDefaultAsync(cancellation);
    }

    private async Task<Tasting?> ReadAsync(TrierDb db, TrialId id, CancellationToken cancellation)
    {
        var length = await db.DayEvents.Where(row => row.Trial == id).MaxAsync(row => (int?)row.Sequence, cancellation) ?? 0;
        if (length == 0) return null;
        if (_lastRead.TryGetValue(id, out var known) && known.Book.Log.Length == length) return known;
        return _lastRead[id] = Tasting.Read(id, await LogAsync(db, id, cancellation));
    }

    private static async Task<List<Logged>> LogAsync(TrierDb db, TrialId id, CancellationToken cancellation)
    {
        var rows = await db.DayEvents.AsNoTracking().Where(row => row.Trial == id).OrderBy(row => row.Sequence).Select(row => new { row.Sequence, row.Json }).ToListAsync(cancellation);
        return rows.ConvertAll(row => new Logged(row.Sequence, RecordJson.Read<DayEvent>(row.Json)));
    }

    private static void Append(TrierDb db, TrialId id, ImmutableArray<DayEvent> events, int after)
    {
        foreach (var logged in Number(events, after))
        {
            db.DayEvents.Add(new DayEventRow { Trial = id, Sequence = logged.Sequence, At = logged.Event.At.UtcTicks, Json = RecordJson.Write(logged.Event) });
        }
    }

    private static IEnumerable<Logged> Number(ImmutableArray<DayEvent> events, int after) => events.Select((happened, index) => new Logged(after + index + 1, happened));

    private static BallotRevision Revision(BallotRevisionRow row) =>
        new(row.Id, row.Taster, row.Base, row.Device, row.Source, row.Stage, row.Standing, new DateTimeOffset(row.ReceivedAt, TimeSpan.Zero).ToOffset(TimeSpan.FromMinutes(row.OffsetMinutes)), RecordJson.Read<Ballot>(row.Json));
}
