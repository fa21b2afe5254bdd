namespace Trier.Web.Access;

/// <summary>
/// Slows down the guessing of typed codes: 60 wrong ones a minute in all pass at full speed, after that tries are taken one at a time with a
/// pause before each, however many come at once. Guessing one of 64 million codes this way takes far longer than an afternoon; a guest who
/// mistypes never notices.
/// </summary>
/// <param name="clock">The host's clock.</param>
public sealed class WrongTries(TimeProvider clock) : IDisposable
{
    /// <summary>Wrong tries a minute before tries are slowed.</summary>
    public const int FreePerMinute = 60;

    private readonly Lock _lock = new();
    private readonly List<DateTimeOffset> _recent = [];
    private readonly SemaphoreSlim _slow = new(1);

    /// <summary>The pause before each try while tries are slowed.</summary>
    public static TimeSpan Pause { get; } = TimeSpan.FromSeconds(2);

    /// <summary>How long a try waits for its turn before it is turned away.</summary>
    public static TimeSpan LongestWait { get; } = TimeSpan.FromSeconds(20);

    /// <summary>Waits for the turn of a try. It counts as wrong until <see cref="WasRight"/> says otherwise, so that many at once cannot slip through.</summary>
    /// <param name="gone">The guest has gone.</param>
    /// <returns>Whether the try may be made; false where too many wait.</returns>
    public async Task<bool> EnterAsync(CancellationToken gone)
    {
        if (CountFree()) return true;
        if (!await _slow.WaitAsync(LongestWait, gone)) return false;
        try
        {
            await Task.Delay(Pause, gone);
        }
        finally
        {
            _slow.Release();
        }

        lock (_lock) _recent.Add(clock.GetUtcNow());
        return true;
    }

    /// <summary>Takes back the count of a try that was right.</summary>
    public void WasRight()
    {
        lock (_lock)
        {
            if (_recent.Count > 0) _recent.RemoveAt(_recent.Count - 1);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _slow.Dispose();

    private bool CountFree()
    {
        lock (_lock)
        {
            var now = clock.GetUtcNow();
            _recent.RemoveAll(at => at < now - TimeSpan.FromMinutes(1));
            if (_recent.Count >= FreePerMinute) return false;
            _recent.Add(now);
            return true;
        }
    }
}
