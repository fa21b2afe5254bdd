using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Trier.Statistics.Randomness;
using Trier.Storage;
using Trier.Storage.Sqlite;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Access;
using Trier.Web.Hosting;

namespace Trier.Load;

/// <summary>A taster as the load knows them: their link and their codes.</summary>
internal sealed record Guest(string Path, ImmutableArray<BlindCode> Served, Guid Placed, Guid Sent);

/// <summary>Prepares a data folder, and looks afterwards what is in it.</summary>
internal static class Seeding
{
    public static async Task<(TrialId Trial, IReadOnlyList<Guest> Guests)> OpenTastingAsync(string folder, int tasters)
    {
        var databases = Databases(folder);
        await using (var db = databases.CreateDbContext()) await db.Database.MigrateAsync();
        using var writer = new WriterGate();
        var trials = new TrialStore(databases, writer, TimeProvider.System);
        var trial = new TrialId(Guid.NewGuid());
        var plan = new TrialPlan("A full barn", "Which way do you like best?", "An invented fair", null, CountingRule.Default, JuniorsCount: true, Invented: true);
        await trials.BeginAsync(trial, DraftTasting.Begin(trials.Now, plan).Value);
        foreach (var name in new[] { "Thistle", "Calf", "Nettle", "Ash", "Hay", "Stone" })
            await ActAsync<DraftTasting>(draft => draft.Enter(trials.Now, new Wheel(new WheelId(Guid.NewGuid()), name, WheelFacts.None)));
        for (var number = 1; number <= tasters; number++)
            await ActAsync<DraftTasting>(draft => draft.AddTaster(trials.Now, new TasterId(Guid.NewGuid()), $"Guest {number}", false, false, 1));
        await ActAsync<DraftTasting>(draft => draft.Seal(trials.Now, new Seed(200)));
        var open = await ActAsync<SealedTasting>(sealedTasting => sealedTasting.Open(trials.Now));
        var doors = await new TasterDoors(trials).OfAsync(open);
        return (trial, [.. open.Book.Present.Select(taster => new Guest(doors[taster.Id].Path, open.Book.Served(taster.Id), Guid.NewGuid(), Guid.NewGuid()))]);

        async Task<Tasting> ActAsync<TStep>(Func<TStep, Outcome<ImmutableArray<DayEvent>>> act)
            where TStep : Tasting => (await trials.ActAsync(trial, tasting => act((TStep)tasting))).Value;
    }

    /// <summary>How many acknowledged sends are not the counted ballot of anybody.</summary>
    public static async Task<int> MissingAsync(string folder, TrialId trial, IEnumerable<Guid> acknowledged)
    {
        using var writer = new WriterGate();
        var trials = new TrialStore(Databases(folder), writer, TimeProvider.System);
        var tasting = await trials.FindAsync(trial) ?? throw new InvalidOperationException("The trial is gone.");
        var counted = (await trials.BallotsAsync(tasting)).Values.Select(history => history.Counted).OfType<BallotRevision>();
        return acknowledged.Except(counted.Where(revision => revision.Stage == BallotStage.Sent).Select(revision => revision.Id.Value)).Count();
    }

    private static SqliteDatabases Databases(string folder) => new(new HostSettings(folder, 0, null).Database);
}
