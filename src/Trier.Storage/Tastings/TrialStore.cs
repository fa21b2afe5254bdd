using System.Collections.Immutable;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;

namespace Trier.Storage.Tastings;

/// <summary>
/// Trials and their ballots. Everything is appended durably and only then acknowledged; acts and sends wait in one queue, and each is decided on the
/// trial as the one before it left it, so that a send and a close cannot cross.
/// </summary>
public sealed class TrialStore
{
    private const int TriesBeside = 4;

    private readonly IDbContextFactory<TrierDb> _databases;
    private readonly WriterGate _writer;
    private readonly TimeProvider _clock;
    private readonly HeldTrials _held;
    private readonly TrialQueue _queue;

    /// <summary>A store on a database that no other program writes to meanwhile.</summary>
    /// <param name="databases">Opens the database.</param>
    /// <param name="writer">The one writer of this database.</param>
    /// <param name="clock">The host's clock.</param>
    public TrialStore(IDbContextFactory<TrierDb> databases, WriterGate writer, TimeProvider clock)
    {
        (_databases, _writer, _clock) = (databases, writer, clock);
        _held = new HeldTrials(databases);
        _queue = new TrialQueue(databases, writer, _held);
    }

    /// <summary>The host's time, with its offset.</summary>
    public DateTimeOffset Now => _clock.GetLocalNow();

    /// <summary>Begins a trial.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="events">Its first events.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task BeginAsync(TrialId id, ImmutableArray<DayEvent> events, CancellationToken cancellation = default)
    {
        var first = DayEventRow.Number(events, 0);
        _ = Tasting.Read(id, first);
        using var turn = await _writer.EnterAsync(cancellation);
        await using var db = await _databases.CreateDbContextAsync(cancellation);
        db.Trials.Add(new TrialRow { Id = id, BegunAt = Now.UtcTicks, LinkSecret = RandomNumberGenerator.GetBytes(32) });
        db.DayEvents.AddRange(DayEventRow.Of(id, first));
        await db.SaveChangesAsync(cancellation);
    }

    /// <summary>All trials, newest first.</summary>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<ImmutableArray<Tasting>> AllAsync(CancellationToken cancellation = default)
    {
        await using var db = await _databases.CreateDbContextAsync(cancellation);
        var ids = await db.Trials.AsNoTracking().OrderByDescending(row => row.BegunAt).Select(row => row.Id).ToListAsync(cancellation);
        var found = ImmutableArray.CreateBuilder<Tasting>(ids.Count);
        foreach (var id in ids) found.Add((await _held.TastingAsync(id, cancellation))!);
        return found.ToImmutable();
    }

    /// <summary>Where a trial stands, or null where there is none of this id.</summary>
    /// <param name="id">Which trial.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<Tasting?> FindAsync(TrialId id, CancellationToken cancellation = default) => await _held.TastingAsync(id, cancellation);

    /// <summary>Does one act and appends what it yields.</summary>
    /// <param name="id">Which trial.</param>
    /// <param name="act">Decides on the trial as it stands now; may be refused. Where a write fails it may be asked again.</param>
    /// <param name="cancellation">Stops the wait for the writer; once begun, the write is finished.</param>
    /// <returns>Where the trial stands afterwards, or what stood in the way.</returns>
    public Task<Outcome<Tasting>> ActAsync(TrialId id, Func<Tasting, Outcome<ImmutableArray<DayEvent>>> act, CancellationToken cancellation = default) =>
        ActAsync(id, (tasting, _) => act(tasting), cancellation);

    /// <summary>
    /// Does one act that takes long to decide, such as one that commits to a key. It is decided beside the queue, so that nobody's ballot waits for it, and appended
    /// where by then nothing else was appended to the trial and nobody has sent a first ballot; else it is decided anew.
    /// </summary>
    /// <param name="id">Which trial.</param>
    /// <param name="act">Decides on the trial as it stands and on who has sent a ballot, this one or an earlier; may be refused, and may be asked several times.</param>
    /// <param name="cancellation">Stops the wait for the writer; once begun, the write is finished.</param>
    /// <returns>Where the trial stands afterwards, or what stood in the way.</returns>
    public async Task<Outcome<Tasting>> ActBesideAsync(TrialId id, Func<Tasting, IReadOnlySet<TasterId>, Outcome<ImmutableArray<DayEvent>>> act, CancellationToken cancellation = default)
    {
        for (var left = TriesBeside; left > 0; left--)
        {
            if (await FindAsync(id, cancellation) is not { } seen) return Outcome.Fault<Tasting>("trial", "There is no such trial.");
            var said = Said(await _held.BoxAsync(id, cancellation));
            var decided = act(seen, said);
            if (!decided.TryGet(out var events)) return Outcome.Fault<Tasting>(decided.Problems);
            var after = await _queue.WriteAsync(id, trial => trial.Tasting is { } now && now.Book.Log.Length == seen.Book.Log.Length && said.SetEquals(trial.Ballots.ByTaster.Keys) ? trial.Append(events) : null, cancellation);
            if (after is not null) return Outcome.Of(after);
        }

        // Where others are always quicker, the rest must wait once.
        return await ActAsync(id, act, cancellation);
    }

    private Task<Outcome<Tasting>> ActAsync(TrialId id, Func<Tasting, IReadOnlySet<TasterId>, Outcome<ImmutableArray<DayEvent>>> act, CancellationToken cancellation) =>
        _queue.WriteAsync(
            id,
            trial => trial.Tasting is { } tasting
                ? act(tasting, Said(trial.Ballots)).Then(events => Outcome.Of(trial.Append(events)))
                : Outcome.Fault<Tasting>("trial", "There is no such trial."),
            cancellation);

    private static HashSet<TasterId> Said(BallotBox box) => [.. box.ByTaster.Keys];

    /// <summary>Takes a ballot in. When this returns, it is on the disk.</summary>
    /// <param name="id">Which trial.</param>
    /// <param name="send">The ballot.</param>
    /// <param name="cancellation">Stops the wait for the writer; once begun, the write is finished.</param>
    /// <returns>The receipt, or that the trial or taster is unknown or has no plate yet.</returns>
    public async Task<Outcome<BallotReceipt>> ReceiveAsync(TrialId id, BallotSend send, CancellationToken cancellation = default)
    {
        try
        {
            return await _queue.WriteAsync(id, trial => Receive(trial, send), cancellation);
        }
        catch (DbUpdateException)
        {
            await using var db = await _databases.CreateDbContextAsync(CancellationToken.None);
            if (!await db.BallotRevisions.AnyAsync(row => row.Id == send.Id, CancellationToken.None)) throw;
            return Outcome.Fault<BallotReceipt>("ballot", "This send bears the number of somebody else's: load the page again and send once more.");
        }
    }

    private Outcome<BallotReceipt> Receive(TrialTurn trial, BallotSend send)
    {
        if (trial.Tasting is not { } tasting) return Outcome.Fault<BallotReceipt>("trial", "There is no such trial.");
        if (tasting.Book.Plate(send.Taster) is null) return Outcome.Fault<BallotReceipt>("taster", "There is no plate for this taster yet.");

        var before = trial.Ballots.Of(send.Taster);
        if (before.FirstOrDefault(revision => revision.Id == send.Id) is { } here)
            return Outcome.Of(new BallotReceipt(here, AlreadyHere: true, BallotHistory.Of(before, tasting.Book.Admitted).Current?.Id == here.Id));

        var standing = tasting switch
        {
            OpenTasting => BallotStanding.InTime,
            ClosedTasting => BallotStanding.AfterClose,
            RevealedTasting => BallotStanding.AfterReveal,
            _ => (BallotStanding?)null,
        };
        if (standing is null) return Outcome.Fault<BallotReceipt>("trial", "The tasting is not open yet.");
        var revision = new BallotRevision(send.Id, send.Taster, send.Base, send.Device, send.Source, send.Stage, standing.Value, Now, send.Content);
        trial.Append(revision);
        return Outcome.Of(new BallotReceipt(revision, AlreadyHere: false, BallotHistory.Of([.. before, revision], tasting.Book.Admitted).Current?.Id == send.Id));
    }

    /// <summary>Every taster's ballot history.</summary>
    /// <param name="tasting">The trial as read; says which late ballots were let in.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<IReadOnlyDictionary<TasterId, BallotHistory>> BallotsAsync(Tasting tasting, CancellationToken cancellation = default)
    {
        var box = await _held.BoxAsync(tasting.Book.Trial, cancellation);
        return box.ByTaster.ToDictionary(pair => pair.Key, pair => BallotHistory.Of(pair.Value, tasting.Book.Admitted));
    }

    /// <summary>One taster's ballot history.</summary>
    /// <param name="tasting">The trial as read.</param>
    /// <param name="taster">Whose.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<BallotHistory> BallotAsync(Tasting tasting, TasterId taster, CancellationToken cancellation = default)
    {
        var box = await _held.BoxAsync(tasting.Book.Trial, cancellation);
        return BallotHistory.Of(box.Of(taster), tasting.Book.Admitted);
    }

    /// <summary>The secret that a trial's taster links and typed codes are derived from, or null where there is no such trial.</summary>
    /// <param name="id">Which trial.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<byte[]?> LinkSecretAsync(TrialId id, CancellationToken cancellation = default)
    {
        await using var db = await _databases.CreateDbContextAsync(cancellation);
        return await db.Trials.AsNoTracking().Where(row => row.Id == id).Select(row => row.LinkSecret).FirstOrDefaultAsync(cancellation);
    }
}
