using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Web.Verdicts;

/// <summary>How far a verdict is worked out.</summary>
public enum JudgingState
{
    /// <summary>To its end.</summary>
    Whole,

    /// <summary>The headline stands, the rest is being worked out.</summary>
    Working,

    /// <summary>The maker stopped the rest.</summary>
    Stopped,

    /// <summary>The rest could not be worked out.</summary>
    Failed,
}

/// <summary>How far a verdict is worked out, and how much of it.</summary>
/// <param name="State">How far.</param>
/// <param name="Done">The share that is done, from 0 to 1.</param>
public sealed record JudgingProgress(JudgingState State, double Done)
{
    /// <summary>All is worked out.</summary>
    public static JudgingProgress Whole { get; } = new(JudgingState.Whole, 1);
}

/// <summary>One verdict being worked out: begun once, stopped and begun again as the maker likes.</summary>
/// <param name="events">How many events the tasting had.</param>
/// <param name="headline">The headline.</param>
internal sealed class Judging(int events, Verdict headline) : IDisposable
{
    private readonly Lock _lock = new();
    private CancellationTokenSource _stop = new();
    private Task<Verdict>? _whole;

    public int Events { get; } = events;

    public Verdict Headline { get; } = headline;

    public double Done { get; set; }

    /// <summary>Whether the maker stopped it before it was done.</summary>
    public bool Stopped
    {
        get
        {
            lock (_lock) return _stop.IsCancellationRequested && _whole is not { IsCompletedSuccessfully: true };
        }
    }

    /// <summary>The work, begun if it was not.</summary>
    /// <param name="start">Begins it.</param>
    public Task<Verdict> Whole(Func<CancellationToken, Task<Verdict>> start)
    {
        lock (_lock)
        {
            if (_whole is null && _stop.IsCancellationRequested) return Task.FromCanceled<Verdict>(_stop.Token);
            return _whole ??= start(_stop.Token);
        }
    }

    /// <summary>What was worked out and could not be kept, or null.</summary>
    public DeepFindings? Owed { get; set; }

    /// <summary>Forgets work that went wrong, so that the next look begins it again.</summary>
    /// <param name="failed">The work as <see cref="Whole"/> gave it.</param>
    public void Forget(Task<Verdict> failed)
    {
        lock (_lock)
        {
            if (failed.IsFaulted && _whole == failed) (_whole, Done) = (null, 0);
        }
    }

    public void Stop()
    {
        lock (_lock) _stop.Cancel();
    }

    public void GoOn()
    {
        lock (_lock)
        {
            if (!_stop.IsCancellationRequested || _whole is { IsCompletedSuccessfully: true }) return;
            _stop.Dispose();
            (_stop, _whole, Done) = (new(), null, 0);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _stop.Dispose();
}
