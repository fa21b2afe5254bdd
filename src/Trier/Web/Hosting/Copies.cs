using System.Globalization;
using Trier.Storage.Sqlite;
using Trier.Trials.Common;

namespace Trier.Web.Hosting;

/// <summary>Copies of the database, made at every close.</summary>
/// <param name="settings">Where they go.</param>
/// <param name="clock">The host's clock.</param>
public sealed class Copies(HostSettings settings, TimeProvider clock)
{
    /// <summary>Makes a copy and names it by time and trial.</summary>
    /// <param name="trial">The trial that was just closed.</param>
    /// <returns>The copy's file.</returns>
    public async Task<string> MakeAsync(TrialId trial)
    {
        Directory.CreateDirectory(settings.CopiesFolder);
        var stamp = clock.GetLocalNow().ToString("yyyy-MM-dd-HHmmss", CultureInfo.InvariantCulture);
        var file = Path.Combine(settings.CopiesFolder, $"trier-{stamp}-{trial.Value.ToString("N")[..8]}.db");
        await SqliteBackup.CopyAsync(settings.Database, file);
        return file;
    }
}
