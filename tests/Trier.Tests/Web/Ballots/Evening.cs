using System.Collections.Immutable;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Trier.Statistics.Randomness;
using Trier.Storage.Access;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Access;
using Trier.Web.Hosting;

namespace Trier.Tests.Web.Ballots;

/// <summary>The real site on a free port with one invented tasting: four wheels, three tasters, nothing mocked.</summary>
internal sealed class Evening : IAsyncDisposable
{
    public static readonly string[] Names = ["Amberholt", "Birkmoor", "Corrieglen", "Dunfennel"];

    private readonly WebApplication _site;
    private readonly string _folder;

    private Evening(WebApplication site, string folder, TrialId trial)
    {
        (_site, _folder, Trial) = (site, folder, trial);
        Address = new Uri(site.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
    }

    public Uri Address { get; }

    public TrialId Trial { get; }

    public TrialStore Trials => _site.Services.GetRequiredService<TrialStore>();

    public IReadOnlyList<Endpoint> Endpoints => _site.Services.GetRequiredService<EndpointDataSource>().Endpoints;

    public IServiceProvider Services => _site.Services;

    /// <summary>Where copies of the database go.</summary>
    public string Copies => Path.Combine(_folder, "copies");

    public HelperDoors Helpers => _site.Services.GetRequiredService<HelperDoors>();

    public WalkIns Door => _site.Services.GetRequiredService<WalkIns>();

    public static async Task<Evening> BeginAsync(bool open = true, BallotPlan? asked = null)
    {
        var folder = Path.Combine(Path.GetTempPath(), $"trier-test-{Guid.NewGuid():N}");
        // Draws are the same in every run: three digits drawn at random would now and then equal a number that stands on a page for another reason.
        ulong drawn = 0;
        var site = await TrierHost.BuildAsync(new HostSettings(folder, 0, null), seeds: () => Interlocked.Increment(ref drawn));
        await site.StartAsync();
        var evening = new Evening(site, folder, new TrialId(Guid.NewGuid()));
        var trials = evening.Trials;
        var plan = new TrialPlan("Four tommes", "Which one again?", "An invented kitchen", new DateOnly(2026, 5, 2), CountingRule.Default, JuniorsCount: false, Invented: true) { Ballot = asked };
        await trials.BeginAsync(evening.Trial, DraftTasting.Begin(trials.Now, plan).Value);
        for (var i = 0; i < Names.Length; i++)
        {
            var facts = WheelFacts.Of(new Dictionary<string, string?>(StringComparer.Ordinal)
            {
                [WheelFacts.RecipeFact] = Names[i] + " recipe",
                [WheelFacts.MilkFact] = i == 0 ? "sheep, 40 l, lot 7" : "cow",
                [WheelFacts.HeatTreatmentFact] = i == 1 ? "raw" : "pasteurised",
                [WheelFacts.AllergensFact] = i == 2 ? "egg" : null,
            });
            var wheel = new Wheel(new WheelId(Guid.NewGuid()), Names[i], facts);
            await evening.ActAsync<DraftTasting>(draft => draft.Enter(trials.Now, wheel));
        }

        foreach (var name in new[] { "Ada", "Bruno", "Cleo" })
            await evening.ActAsync<DraftTasting>(draft => draft.AddTaster(trials.Now, new TasterId(Guid.NewGuid()), name, knowsTheKey: false, junior: false, 1));
        if (open) await evening.OpenAsync();
        return evening;
    }

    public async Task OpenAsync()
    {
        await ActAsync<DraftTasting>(draft => draft.Seal(Trials.Now, new Seed(7)));
        await ActAsync<SealedTasting>(ready => ready.Open(Trials.Now));
    }

    public async Task ActAsync<T>(Func<T, Outcome<ImmutableArray<DayEvent>>> act)
        where T : Tasting
    {
        var done = await Trials.ActAsync(Trial, tasting => act((T)tasting));
        Assert.True(done.Ok, done.Ok ? "" : done.Problems[0].Sentence);
    }

    public async Task<Tasting> TastingAsync() => (await Trials.FindAsync(Trial))!;

    public async Task<Taster> TasterAsync(string name) => (await TastingAsync()).Book.Tasters.Single(taster => taster.Name == name);

    public async Task<ImmutableArray<BlindCode>> ServedAsync(string name) => (await TastingAsync()).Book.Served((await TasterAsync(name)).Id);

    public async Task<BallotHistory> BallotAsync(string name) => await Trials.BallotAsync(await TastingAsync(), (await TasterAsync(name)).Id);

    public async Task<TasterDoor> DoorAsync(string name) =>
        (await _site.Services.GetRequiredService<TasterDoors>().OfAsync(await TastingAsync()))[(await TasterAsync(name)).Id];

    /// <summary>A browser without script: follows redirects, keeps cookies.</summary>
    public Phone NewPhone() => new(Address);

    /// <summary>The secret of a fresh one-time sign-in link.</summary>
    public Task<string> LinkAsync() => _site.Services.GetRequiredService<SignInLinks>().MakeAsync();

    public async Task<Phone> MakerAsync()
    {
        var phone = NewPhone();
        await phone.GetAsync($"/sign-in/{await LinkAsync()}");
        await phone.PressAsync();
        return phone;
    }

    public async ValueTask DisposeAsync()
    {
        await _site.StopAsync();
        await _site.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }
}
