using System.Collections.Concurrent;
using Trier.Statistics.Randomness;
using Trier.Storage.Tastings;
using Trier.Storage.Verdicts;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Steps;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Web.Verdicts;

/// <summary>A verdict as far as it is worked out.</summary>
/// <param name="Tasting">The revealed tasting.</param>
/// <param name="Verdict">Its verdict.</param>
/// <param name="Progress">How far it is.</param>
internal sealed record JudgedTasting(RevealedTasting Tasting, Verdict Verdict, JudgingProgress Progress);

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
    /// <param name="patience">How long to wait for what takes longer; work that the maker stopped is waited for only where there is no end to patience.</param>
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

        if (patience == Timeout.InfiniteTimeSpan) judging.GoOn();
        var whole = judging.Whole(stop => Task.Run(() => WorkOutAsync(judging.Headline, judging, stop), lifetime.ApplicationStopping));
        // Where it takes longer, or could not be worked out, the page shows what there is.
        if (patience != TimeSpan.Zero) await Task.WhenAny(whole, Task.Delay(patience, cancellation));
        cancellation.ThrowIfCancellationRequested();
        if (whole.IsFaulted) judging.Forget(whole);
        if (judging.Owed is { } owed) await KeepAsync(judging.Headline, owed, judging);
        return whole.IsCompletedSuccessfully
            ? new(tasting, await whole, JudgingProgress.Whole)
            : new(tasting, judging.Headline, new(judging.Stopped ? JudgingState.Stopped : whole.IsFaulted ? JudgingState.Failed : JudgingState.Working, judging.Done));
    }

    /// <summary>Stops what is being worked out, between two of its parts; the headline stands.</summary>
    /// <param name="id">Which trial.</param>
    public void Stop(TrialId id)
    {
        if (_kept.TryGetValue(id, out var judging)) judging.Stop();
    }

    /// <summary>Lets it be worked out after all.</summary>
    /// <param name="id">Which trial.</param>
    public void GoOn(TrialId id)
    {
        if (_kept.TryGetValue(id, out var judging)) judging.GoOn();
    }

    /// <summary>The whole verdict of any record of a tasting, such as one that is published; kept like every other.</summary>
    /// <param name="id">Which tasting.</param>
    /// <param name="record">The record.</param>
    /// <param name="cancellation">Stops the wait, not the work.</param>
    public async Task<Verdict> WholeAsync(TrialId id, TastingRecord record, CancellationToken cancellation)
    {
        var headline = Judge.Headline(record, SeedOf(id));
        return await Task.Run(() => WorkOutAsync(headline, null, CancellationToken.None), lifetime.ApplicationStopping).WaitAsync(cancellation);
    }

    /// <summary>The seed is a number of the tasting, so that the same record gives the same verdict on every machine.</summary>
    /// <param name="id">Which tasting.</param>
    public static Seed SeedOf(TrialId id) => new(BitConverter.ToUInt64(id.Value.ToByteArray(), 8));

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var judging in _kept.Values) judging.Dispose();
        _turn.Dispose();
    }

    private async Task<Verdict> WorkOutAsync(Verdict headline, Judging? judging, CancellationToken stop)
    {
        using var ends = CancellationTokenSource.CreateLinkedTokenSource(stop, lifetime.ApplicationStopping);
        try
        {
            if (await findings.FindAsync(headline, ends.Token) is { } known) return headline.With(known);
            await _turn.WaitAsync(ends.Token);
            try
            {
                // Whoever had the turn before may have worked out the same.
                if (await findings.FindAsync(headline, ends.Token) is { } since) return headline.With(since);
                var deep = Judge.Deepen(headline, null, judging is null ? null : done => judging.Done = done, ends.Token);
                // Once it is worked out it is kept, whoever asks to stop now.
                await KeepAsync(headline, deep, judging);
                return headline.With(deep);
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

    // An answer is shown whether or not it can be kept: a full disk is no reason to work it out again.
    private async Task KeepAsync(Verdict headline, DeepFindings deep, Judging? judging)
    {
        var owed = deep;
        try
        {
            await findings.KeepAsync(headline, deep, lifetime.ApplicationStopping);
            owed = null;
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            log.LogError(fault, "A verdict was worked out to its end and could not be kept; the next look at it tries again.");
        }

        if (judging is not null) judging.Owed = owed;
    }
}
