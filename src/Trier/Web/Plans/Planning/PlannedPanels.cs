using System.Collections.Concurrent;
using Trier.Storage.Plans;
using Trier.Trials.Plans;
using Trier.Trials.Plans.Panels;

namespace Trier.Web.Plans.Planning;

/// <summary>What panels could show, as far as it is worked out.</summary>
/// <param name="Findings">All of it; null until then.</param>
/// <param name="Done">How much is worked out, from 0 to 1; not a number where it failed.</param>
internal sealed record PanelProgress(PanelFindings? Findings, double Done);

/// <summary>Simulates panels in the background, one plan at a time, and keeps what was found in the database: a page never waits long, and no figure changes from one look to the next.</summary>
internal sealed class PlannedPanels(PanelStore store, IHostApplicationLifetime lifetime, ILogger<PlannedPanels> log) : IDisposable
{
    private const int MostKept = 64;

    private readonly ConcurrentDictionary<string, Working> _kept = new();
    private readonly SemaphoreSlim _turn = new(1, 1);

    /// <summary>What there is; work begins at the first look.</summary>
    /// <param name="outline">The plan.</param>
    /// <param name="patience">How long to wait for the whole.</param>
    /// <param name="cancellation">Stops the wait, not the work.</param>
    public async Task<PanelProgress> FindAsync(TrialOutline outline, TimeSpan patience, CancellationToken cancellation)
    {
        if (!PanelPlanning.Can(outline)) return new(null, 1);
        var key = PanelStore.Key(outline);
        // Found again in the database, so forgetting costs little.
        if (_kept.Count > MostKept) _kept.Clear();
        var working = _kept.GetOrAdd(key, _ => new Working());
        var whole = working.Whole(() => Task.Run(() => WorkOutAsync(key, outline, working), lifetime.ApplicationStopping));
        if (patience != TimeSpan.Zero) await Task.WhenAny(whole, Task.Delay(patience, cancellation));
        cancellation.ThrowIfCancellationRequested();
        return whole.IsCompletedSuccessfully ? new(await whole, 1) : new(null, whole.IsFaulted ? double.NaN : Math.Min(working.Done, 0.99));
    }

    /// <inheritdoc/>
    public void Dispose() => _turn.Dispose();

    private async Task<PanelFindings> WorkOutAsync(string key, TrialOutline outline, Working working)
    {
        var stopping = lifetime.ApplicationStopping;
        try
        {
            if (await store.FindAsync(key, stopping) is { } known) return known;
            await _turn.WaitAsync(stopping);
            try
            {
                var found = PanelPlanning.Find(outline, PanelPlanning.UsualPanels, done => working.Done = done, stopping);
                await store.KeepAsync(key, found, stopping);
                return found;
            }
            finally
            {
                _turn.Release();
            }
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            log.LogError(fault, "Panels could not be simulated.");
            throw;
        }
    }

    private sealed class Working
    {
        private readonly Lock _lock = new();
        private Task<PanelFindings>? _whole;

        public double Done { get; set; }

        public Task<PanelFindings> Whole(Func<Task<PanelFindings>> start)
        {
            lock (_lock) return _whole ??= start();
        }
    }
}
