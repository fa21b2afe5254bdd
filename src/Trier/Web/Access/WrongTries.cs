namespace Trier.Web.Access;

/// <summary>
/// Counts wrong typed codes: 60 a minute in all pass at full speed, after that each one waits. Guessing one of 64 million codes this way takes
/// far longer than an afternoon; a guest who mistypes never notices.
/// </summary>
/// <param name="clock">The host's clock.</param>
public sealed class WrongTries(TimeProvider clock)
{
    /// <summary>Wrong tries a minute before tries are slowed.</summary>
    public const int FreePerMinute = 60;

    private readonly Lock _lock = new();
    private readonly Queue<DateTimeOffset> _recent = new();

    /// <summary>How long a try made now has to wait.</summary>
    public TimeSpan Wait()
    {
        lock (_lock)
        {
            Forget();
            return _recent.Count < FreePerMinute ? TimeSpan.Zero : TimeSpan.FromSeconds(2);
        }
    }

    /// <summary>Counts a wrong try.</summary>
    public void Count()
    {
        lock (_lock)
        {
            Forget();
            _recent.Enqueue(clock.GetUtcNow());
        }
    }

    private void Forget()
    {
        var minuteAgo = clock.GetUtcNow() - TimeSpan.FromMinutes(1);
        while (_recent.TryPeek(out var oldest) && oldest < minuteAgo) _recent.Dequeue();
        while (_recent.Count > FreePerMinute * 10) _recent.Dequeue();
    }
}
