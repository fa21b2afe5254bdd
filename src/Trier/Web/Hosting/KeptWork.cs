using System.Collections.Concurrent;
using Trier.Storage.Verdicts;

namespace Trier.Web.Hosting;

/// <summary>Something that takes long, as far as it is worked out.</summary>
/// <typeparam name="T">What is found.</typeparam>
/// <param name="Found">All of it; null until then.</param>
/// <param name="Done">How much is worked out, from 0 to 1; not a number where it failed.</param>
internal sealed record KeptProgress<T>(T? Found, double Done)
    where T : class;

/// <summary>Works things out in the background, one at a time, and keeps what was found in the database: a page never waits long, and no figure changes from one look to the next.</summary>
internal sealed class KeptWork(KeptStore store, IHostApplicationLifetime lifetime, ILogger<KeptWork> log) : IDisposable
{
    private const int MostKept = 64;

    private readonly ConcurrentDictionary<string, Working> _kept = new();
    private readonly SemaphoreSlim _turn = new(1, 1);

    /// <summary>What there is; work begins at the first look.</summary>
    /// <typeparam name="T">What is found.</typeparam>
    /// <param name="key">The hash of all that it depends on.</param>
    /// <param name="work">Works it out; is given a way to tell the share done, and what stops it.</param>
    /// <param name="patience">How long to wait for the whole.</param>
    /// <param name="cancellation">Stops the wait, not the work.</param>
    public async Task<KeptProgress<T>> FindAsync<T>(string key, Func<Action<double>, CancellationToken, T> work, TimeSpan patience, CancellationToken cancellation)
        where T : class
    {
        // Found again in the database, so forgetting costs little.
        if (_kept.Count > MostKept) _kept.Clear();
        var working = _kept.GetOrAdd(key, _ => new Working());
        var whole = working.Whole(() => Task.Run<object>(async () => await WorkOutAsync(key, work, working), lifetime.ApplicationStopping));
        if (patience != TimeSpan.Zero) await Task.WhenAny(whole, Task.Delay(patience, cancellation));
        cancellation.ThrowIfCancellationRequested();
        if (whole.IsFaulted) working.Forget(whole);
        if (working.Owed is T owed) await KeepAsync(key, owed, working);
        return whole.IsCompletedSuccessfully ? new((T)await whole, 1) : new(null, whole.IsFaulted ? double.NaN : Math.Min(working.Done, 0.99));
    }

    /// <inheritdoc/>
    public void Dispose() => _turn.Dispose();

    private async Task<T> WorkOutAsync<T>(string key, Func<Action<double>, CancellationToken, T> work, Working working)
        where T : class
    {
        var stopping = lifetime.ApplicationStopping;
        try
        {
            if (await store.FindAsync<T>(key, stopping) is { } known) return known;
            await _turn.WaitAsync(stopping);
            try
            {
                var found = work(done => working.Done = done, stopping);
                await KeepAsync(key, found, working);
                return found;
            }
            finally
            {
                _turn.Release();
            }
        }
        // Where the site closes meanwhile, whoever waits is gone as well.
        catch (Exception fault) when (fault is not (OperationCanceledException or ObjectDisposedException))
        {
            log.LogError(fault, "Something that takes long could not be worked out.");
            throw;
        }
    }

    // An answer is shown whether or not it can be kept: a full disk is no reason to work it out again.
    private async Task KeepAsync<T>(string key, T found, Working working)
        where T : class
    {
        T? owed = found;
        try
        {
            await store.KeepAsync(key, found, lifetime.ApplicationStopping);
            owed = null;
        }
        catch (Exception fault) when (fault is not (OperationCanceledException or ObjectDisposedException))
        {
            log.LogError(fault, "Something was worked out and could not be kept; the next look at it tries again.");
        }

        working.Owed = owed;
    }

    private sealed class Working
    {
        private readonly Lock _lock = new();
        private Task<object>? _whole;

        public double Done { get; set; }

        /// <summary>What was worked out and could not be kept, or null.</summary>
        public object? Owed { get; set; }

        public Task<object> Whole(Func<Task<object>> start)
        {
            lock (_lock) return _whole ??= start();
        }

        /// <summary>Forgets work that went wrong, so that the next look begins it again.</summary>
        public void Forget(Task<object> failed)
        {
            lock (_lock)
            {
                if (_whole == failed) (_whole, Done) = (null, 0);
            }
        }
    }
}
