namespace Trier.Storage;

/// <summary>Lets one writer at a time through: SQLite has one writer anyway, and reading before deciding must not be overtaken.</summary>
public sealed class WriterGate : IDisposable
{
    private readonly SemaphoreSlim _gate = new(1, 1);

    /// <summary>Waits for the turn.</summary>
    /// <param name="cancellation">Stops the wait.</param>
    /// <returns>The turn; disposing of it lets the next one through.</returns>
    public async Task<IDisposable> EnterAsync(CancellationToken cancellation)
    {
        await _gate.WaitAsync(cancellation);
        return new Turn(_gate);
    }

    /// <inheritdoc/>
    public void Dispose() => _gate.Dispose();

    private sealed class Turn(SemaphoreSlim gate) : IDisposable
    {
        private int _left;

        public void Dispose()
        {
            if (Interlocked.Exchange(ref _left, 1) == 0) gate.Release();
        }
    }
}
