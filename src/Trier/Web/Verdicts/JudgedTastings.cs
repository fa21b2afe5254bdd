using System.Collections.Concurrent;
using Trier.Statistics.Randomness;
using Trier.Storage.Tastings;
using Trier.Storage.Verdicts;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Steps;
using Trier.Trials.Verdicts;

namespace Trier.Web.Verdicts;

/// <summary>A verdict as far as it is worked out.</summary>
/// <param name="Tasting">The revealed tasting.</param>
/// <param name="Verdict">Its verdict.</param>
/// <param name="Done">How much is worked out, from 0 to 1; 1 where all is, not a number where the rest failed.</param>
internal sealed record JudgedTasting(RevealedTasting Tasting, Verdict Verdict, double Done);

/// <summary>
/// Judges revealed tastings: the headline at once, the rest in the background, one tasting at a time, kept in the database. A correction
/// makes another record, which is judged anew.
/// </summary>
internal sealed class JudgedTastings(TrialStore trials, FindingsStore findings, IHostApplicationLifetime lifetime, ILogger<JudgedTastings> log) : IDisposable
{
    private readonly ConcurrentDictionary<TrialId, Judging> _kept = new();
    private readonly SemaphoreSlim _turn = new(1, 1);

    /// <summary>The verdict, or null where there is no such trial or its key is not open.</summary>
    /// <param name="id">Which trial.</param>
    /// <param name="patience">How long to wait for what takes longer.</param>
    /// <param name="cancellation">Stops the wait, not the work.</param>
    public async Task<JudgedTasting?> FindAsync(TrialId id, TimeSpan patience, CancellationToken cancellation)
    {
        if (await trials.FindAsync(id, cancellation) is not RevealedTasting tasting) return null;
        var events = tasting.Book.Log.Length;
        if (!_kept.TryGetValue(id, out var judging) || judging.Events != events)
        {
            var record = tasting.Record(await trials.BallotsAsync(tasting, cancellation));
            var fresh = new Judging(events, Judge.Headline(record, SeedOf(id)));
            judging = _kept.AddOrUpdate(id, fresh, (_, old) => old.Events == events ? old : fresh);
        }

        var whole = judging.Whole(() => Task.Run(() => WorkOutAsync(judging), lifetime.ApplicationStopping));
        // Where it takes longer, or could not be worked out, the page shows what there is.
        if (patience != TimeSpan.Zero) await Task.WhenAny(whole, Task.Delay(patience, cancellation));
        cancellation.ThrowIfCancellationRequested();
        return whole.IsCompletedSuccessfully ? new(tasting, await whole, 1) : new(tasting, judging.Headline, whole.IsFaulted ? double.NaN : judging.Done);
    }

    /// <summary>The whole verdict of any record of a tasting, such as one that is published; kept like every other.</summary>
    /// <param name="id">Which tasting.</param>
    /// <param name="record">The record.</param>
    /// <param name="cancellation">Stops the wait, not the work.</param>
    public async Task<Verdict> WholeAsync(TrialId id, TastingRecord record, CancellationToken cancellation)
    {
        var judging = new Judging(0, Judge.Headline(record, SeedOf(id)));
        return await judging.Whole(() => Task.Run(() => WorkOutAsync(judging), lifetime.ApplicationStopping)).WaitAsync(cancellation);
    }

    /// <summary>The seed is a number of the tasting, so that the same record gives the same verdict on every machine.</summary>
    /// <param name="id">Which tasting.</param>
    public static Seed SeedOf(TrialId id) => new(BitConverter.ToUInt64(id.Value.ToByteArray(), 8));

    /// <inheritdoc/>
    public void Dispose() => _turn.Dispose();

    private async Task<Verdict> WorkOutAsync(Judging judging)
    {
        var stopping = lifetime.ApplicationStopping;
        try
        {
            if (await findings.FindAsync(judging.Headline, stopping) is { } known) return judging.Headline.With(known);
            await _turn.WaitAsync(stopping);
            try
            {
                var deep = Judge.Deepen(judging.Headline, null, done => judging.Done = done, stopping);
                await findings.KeepAsync(judging.Headline, deep, stopping);
                return judging.Headline.With(deep);
            }
            finally
            {
                _turn.Release();
            }
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            log.LogError(fault, "A verdict could not be worked out to its end.");
            throw;
        }
    }

    private sealed class Judging(int events, Verdict headline)
    {
        private readonly Lock _lock = new();
        private Task<Verdict>? _whole;

        public int Events { get; } = events;

        public Verdict Headline { get; } = headline;

        public double Done { get; set; }

        public Task<Verdict> Whole(Func<Task<Verdict>> start)
        {
            lock (_lock) return _whole ??= start();
        }
    }
}
