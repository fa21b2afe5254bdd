using System.Globalization;
using Microsoft.Data.Sqlite;
using Trier.Storage.Sqlite;
using Trier.Trials.Tastings.Steps;

namespace Trier.Web.Hosting;

/// <summary>Copies of the database, one for every close.</summary>
/// <param name="settings">Where they go.</param>
/// <param name="clock">The host's clock.</param>
/// <param name="log">Told where none can be made.</param>
public sealed class Copies(HostSettings settings, TimeProvider clock, ILogger<Copies> log) : IDisposable
{
    private const string Form = "yyyy-MM-dd-HHmmss";

    private readonly SemaphoreSlim _turn = new(1, 1);

    /// <summary>Makes the copy of a close where it is not there yet: when the ballots are closed, and where that failed at each later look at the board.</summary>
    /// <param name="tasting">A closed tasting.</param>
    /// <returns>Whether there is a copy.</returns>
    public async Task<bool> KeptAsync(ClosedTasting tasting)
    {
        await _turn.WaitAsync();
        try
        {
            Directory.CreateDirectory(settings.CopiesFolder);
            var (begins, ends) = ("trier-", $"-{tasting.Book.Trial.Value.ToString("N")[..8]}.db");
            var closed = begins + Stamp(tasting.Book.ClosedAt!.Value) + ends;
            if (Directory.EnumerateFiles(settings.CopiesFolder, $"{begins}*{ends}").Any(file => string.CompareOrdinal(Path.GetFileName(file), closed) >= 0)) return true;
            await SqliteBackup.CopyAsync(settings.Database, Path.Combine(settings.CopiesFolder, begins + Stamp(clock.GetLocalNow()) + ends));
            return true;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or SqliteException or InvalidDataException)
        {
            log.LogError(fault, "The copy of a close could not be made.");
            return false;
        }
        finally
        {
            _turn.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _turn.Dispose();

    private static string Stamp(DateTimeOffset time) => time.ToString(Form, CultureInfo.InvariantCulture);
}
