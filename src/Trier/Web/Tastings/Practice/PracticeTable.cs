using System.Collections.Immutable;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Trier.Statistics.Randomness;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Access;
using Trier.Web.Hosting;

namespace Trier.Web.Tastings.Practice;

/// <summary>
/// A dry run: one person walks the whole ballot of a tasting of the same shape. It is a site of its own, with its own database in a folder of its own, links and codes
/// that open nothing here; when it ends, the folder is gone. So nothing of it can be mixed up with a real ballot.
/// </summary>
/// <param name="settings">Where the real site lives.</param>
public sealed class PracticeTable(HostSettings settings) : IAsyncDisposable
{
    private readonly SemaphoreSlim _one = new(1, 1);
    private (TrialId Of, WebApplication Site, string Folder, string Link)? _running;

    /// <summary>The practice ballot's whole address, or null where no dry run of this trial is going on.</summary>
    /// <param name="trial">Which trial.</param>
    public string? LinkOf(TrialId trial) => _running is { } running && running.Of == trial ? running.Link : null;

    /// <summary>Lays a practice table; one that stands already is cleared first.</summary>
    /// <param name="real">The trial whose shape it has.</param>
    public async Task StartAsync(DayBook real)
    {
        await _one.WaitAsync();
        try
        {
            await ClearAsync();
            var folder = Directory.CreateTempSubdirectory("trier-practice-").FullName;
            var site = await TrierHost.BuildAsync(new HostSettings(folder, 0, settings.Lan));
            await site.StartAsync();
            var path = await LayAsync(site, real);
            var addresses = site.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses;
            var address = addresses.FirstOrDefault(one => settings.Lan is { } lan && one.Contains(new UriBuilder { Host = lan.ToString() }.Host, StringComparison.Ordinal)) ?? addresses.First();
            _running = (real.Trial, site, folder, address.TrimEnd('/') + path);
        }
        finally
        {
            _one.Release();
        }
    }

    /// <summary>Clears the practice table; nothing of it is left.</summary>
    public async Task EndAsync()
    {
        await _one.WaitAsync();
        try
        {
            await ClearAsync();
        }
        finally
        {
            _one.Release();
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await ClearAsync();
        _one.Dispose();
    }

    private static async Task<string> LayAsync(WebApplication site, DayBook real)
    {
        var trials = site.Services.GetRequiredService<TrialStore>();
        var (trial, taster) = (new TrialId(Guid.CreateVersion7()), new TasterId(Guid.CreateVersion7()));
        await trials.BeginAsync(trial, DraftTasting.Begin(trials.Now, real.Plan with { Title = "A dry run" }).Value);
        var wheels = new Dictionary<WheelId, WheelId>();
        foreach (var entry in real.Standing)
        {
            // No name, and of the facts those alone that every guest is told of all wheels together: whoever practises learns no more than a guest.
            var wheel = new Wheel(new WheelId(Guid.CreateVersion7()), $"Practice {wheels.Count + 1}", entry.Facts.ToldToGuests());
            wheels[entry.Wheel] = wheel.Id;
            await DoAsync<DraftTasting>(draft => draft.Enter(trials.Now, wheel));
        }

        foreach (var late in real.SecondFlight.Where(wheels.ContainsKey)) await DoAsync<DraftTasting>(draft => draft.ChooseFlight(trials.Now, wheels[late], second: true));
        if (real.Repeat is { } twice) await DoAsync<DraftTasting>(draft => draft.ServeTwice(trials.Now, wheels[twice]));
        await DoAsync<DraftTasting>(draft => draft.AddTaster(trials.Now, taster, "Practice", knowsTheKey: false, junior: false, 1));
        await DoAsync<DraftTasting>(draft => draft.Seal(trials.Now, site.Services.GetRequiredService<Chance>().Draw()));
        await DoAsync<SealedTasting>(ready => ready.Open(trials.Now));
        return (await site.Services.GetRequiredService<TasterDoors>().OfAsync((await trials.FindAsync(trial))!))[taster].Path;

        async Task DoAsync<TStep>(Func<TStep, Outcome<ImmutableArray<DayEvent>>> act)
            where TStep : Tasting
        {
            var done = await trials.ActAsync(trial, tasting => act((TStep)tasting));
            if (!done.Ok) throw new InvalidOperationException(done.Problems[0].Sentence);
        }
    }

    private async Task ClearAsync()
    {
        if (_running is not { } running) return;
        _running = null;
        await running.Site.StopAsync();
        await running.Site.DisposeAsync();
        using (var last = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path.Combine(running.Folder, "trier.db")};Foreign Keys=True;Default Timeout=15")) Microsoft.Data.Sqlite.SqliteConnection.ClearPool(last);
        Directory.Delete(running.Folder, recursive: true);
    }
}
