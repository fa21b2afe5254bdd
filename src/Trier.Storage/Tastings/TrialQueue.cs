using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Trier.Trials.Common;

namespace Trier.Storage.Tastings;

/// <summary>
/// The one queue of everything that is appended to trials. Whoever gets the writer first takes all who wait by then as one batch: each decides in
/// turn on the trials as those before left them, all rows are committed together, with one sync of the disk, and only then is anybody answered.
/// </summary>
/// <param name="databases">Opens the database.</param>
/// <param name="writer">The one writer of this database.</param>
/// <param name="held">What is known of the trials; told of each batch once it is committed.</param>
internal sealed class TrialQueue(IDbContextFactory<TrierDb> databases, WriterGate writer, HeldTrials held)
{
    // SQLite's result code of a row that a key or a rule of its table refuses. What fails otherwise (a full disk, say) would fail alone as well.
    private const int Constraint = 19;

    private readonly Lock _lock = new();
    private List<QueuedWork> _waiting = [];

    /// <summary>Waits in the queue.</summary>
    /// <param name="trial">Which trial.</param>
    /// <param name="decide">Decides on the trial as it stands then, and appends to it. Where the batch fails it is asked once more, alone.</param>
    /// <param name="cancellation">Stops the wait for the turn; once begun, the write is finished.</param>
    /// <returns>What was decided, once what was appended is on the disk.</returns>
    public async Task<T> WriteAsync<T>(TrialId trial, Func<TrialTurn, T> decide, CancellationToken cancellation)
    {
        // A trial that cannot be read is the trouble of whoever asked for it, and of nobody else in a batch.
        await held.TastingAsync(trial, cancellation);
        await held.BoxAsync(trial, cancellation);
        var work = new QueuedWork<T>(trial, decide, cancellation);
        lock (_lock) _waiting.Add(work);
        _ = TakeTurnAsync();
        return await work.Answered;
    }

    private async Task TakeTurnAsync()
    {
        try
        {
            using var turn = await writer.EnterAsync(CancellationToken.None);
            var batch = TakeWaiting().FindAll(work => !work.GivenUp);
            // Somebody ahead may have written for this one too.
            if (batch.Count > 0) await CommitAsync(batch, again: true);
        }
        catch (ObjectDisposedException closed)
        {
            foreach (var work in TakeWaiting()) work.Fail(closed);
        }
    }

    private List<QueuedWork> TakeWaiting()
    {
        lock (_lock)
        {
            var waiting = _waiting;
            _waiting = [];
            return waiting;
        }
    }

    private async Task CommitAsync(List<QueuedWork> batch, bool again)
    {
        try
        {
            await using var db = await databases.CreateDbContextAsync();
            var turns = new Dictionary<TrialId, TrialTurn>();
            foreach (var work in batch)
            {
                if (!turns.TryGetValue(work.Trial, out var turn))
                    turns[work.Trial] = turn = new(db, work.Trial, await held.TastingAsync(work.Trial, CancellationToken.None), await held.BoxAsync(work.Trial, CancellationToken.None));
                work.Decide(turn);
            }

            await db.SaveChangesAsync();
            foreach (var turn in turns.Values)
            {
                if (turn.Tasting is { } tasting) held.Keep(tasting);
                held.Keep(turn.Id, turn.Ballots);
            }
        }
        catch (DbUpdateException refused) when (again && refused.InnerException is SqliteException { SqliteErrorCode: Constraint })
        {
            // One that is refused must not take the others along, and the disk may hold more than was known: each alone, on what is read anew.
            foreach (var work in batch) held.Forget(work.Trial);
            foreach (var work in batch) await CommitAsync([work], again: false);
            return;
        }
        catch (Exception fault)
        {
            foreach (var work in batch) work.Fail(fault);
            return;
        }

        foreach (var work in batch) work.Answer();
    }
}
