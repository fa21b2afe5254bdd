using Trier.Trials.Common;

namespace Trier.Web.Hosting;

/// <summary>The address phones come in by, and the one that stands on what was printed: a card printed at home is dead on the club's Wi-Fi.</summary>
/// <param name="settings">Where the site lives.</param>
public sealed class PhoneAddress(HostSettings settings)
{
    /// <summary>The address now. Phones come in by the one the host let them in on; the maker's own browser may be at another.</summary>
    /// <param name="context">The maker's request.</param>
    public string Now(HttpContext context) =>
        settings.Lan is { } lan ? $"http://{new UriBuilder { Host = lan.ToString() }.Host}:{context.Connection.LocalPort}" : $"{context.Request.Scheme}://{context.Request.Host}";

    /// <summary>Whether an address is one of this machine alone, which no phone can follow.</summary>
    /// <param name="address">The address.</param>
    public static bool IsOnlyHere(string address) => Uri.TryCreate(address, UriKind.Absolute, out var known) && known.IsLoopback;

    /// <summary>Notes that something with the address on it was laid out for printing.</summary>
    /// <param name="trial">Which trial.</param>
    /// <param name="address">The address on it.</param>
    public async Task NoteAsync(TrialId trial, string address)
    {
        Directory.CreateDirectory(settings.PrintedFolder);
        await File.WriteAllTextAsync(FileOf(trial), address);
    }

    /// <summary>The address on what was printed last, where phones no longer come in by it; null where all is well or nothing was printed.</summary>
    /// <param name="trial">Which trial.</param>
    /// <param name="context">The maker's request.</param>
    public async Task<string?> OutdatedAsync(TrialId trial, HttpContext context) =>
        File.Exists(FileOf(trial)) && (await File.ReadAllTextAsync(FileOf(trial))).Trim() is var printed && printed != Now(context) ? printed : null;

    private string FileOf(TrialId trial) => Path.Combine(settings.PrintedFolder, trial.Value.ToString("N"));
}
