using System.Collections.Immutable;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using Trier.Statistics.Randomness;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Access;
using Trier.Web.Hosting;

namespace Trier.Browser.Tests.Kit;

/// <summary>A served site at which one invented tasting is open: four wheels, the given tasters.</summary>
internal sealed class Table : IAsyncDisposable
{
    private static readonly string[] Wheels = ["Amberholt", "Birkmoor", "Corrieglen", "Dunfennel"];

    private readonly IReadOnlyDictionary<string, (string Path, ImmutableArray<BlindCode> Plate)> _tasters;
    private readonly IReadOnlyDictionary<string, BlindCode> _codes;

    private Table(Site site, TrialId trial, Laid laid) => (Site, Trial, _tasters, _codes) = (site, trial, laid.Tasters, laid.Codes);

    public Site Site { get; }

    /// <summary>The site's own process, where the table was laid killable.</summary>
    public ServedSite Process => (ServedSite)Site;

    public TrialId Trial { get; }

    public static Task<Table> SetAsync(params string[] tasters) => SetAsync(new Setting(), tasters);

    /// <summary>The same with what the ballot asks.</summary>
    public static Task<Table> SetAsync(BallotPlan asked, params string[] tasters) => SetAsync(new Setting { Asked = asked }, tasters);

    /// <summary>The same, laid as a test needs it.</summary>
    public static async Task<Table> SetAsync(Setting setting, params string[] tasters)
    {
        var folder = Site.NewFolder();
        var trial = new TrialId(Guid.NewGuid());
        var laid = await PrepareAsync(folder, trial, setting, tasters);
        return new Table(setting.Killable ? await ServedSite.StartAsync(folder) : await HostedSite.StartAsync(folder), trial, laid);
    }

    /// <summary>A taster's link.</summary>
    public string LinkOf(string name) => Site.Address + _tasters[name].Path;

    /// <summary>The maker's browser, signed in.</summary>
    public async Task<IPage> MakerAsync(IBrowserContext context)
    {
        var page = await context.NewPageAsync();
        await page.GotoAsync(Site.SignInLink);
        await page.PressAsync("Sign in on this browser");
        await page.SeesHeadingAsync("One trial.");
        return page;
    }

    /// <summary>A page of the maker's about this trial.</summary>
    public string Of(string page) => $"{Site.Address}/trials/{Trial.Value}{(page.Length > 0 ? "/" : "")}{page}";

    /// <summary>A taster's codes in serving order.</summary>
    public IReadOnlyList<string> PlateOf(string name) => [.. _tasters[name].Plate.Select(code => code.ToString())];

    /// <summary>The code a wheel got when the key was sealed.</summary>
    public string CodeOf(string wheel) => _codes[wheel].ToString();

    public ValueTask DisposeAsync() => Site.DisposeAsync();

    // The day is written before the program starts: it reads what another run of it left behind.
    private static async Task<Laid> PrepareAsync(DirectoryInfo folder, TrialId trial, Setting setting, string[] names)
    {
        await using var site = await TrierHost.BuildAsync(new HostSettings(folder.FullName, 0, null));
        var trials = site.Services.GetRequiredService<TrialStore>();
        var plan = new TrialPlan("Four tommes", "Which one again?", "An invented kitchen", new DateOnly(2026, 5, 2), CountingRule.Default, JuniorsCount: true, Invented: true) { Ballot = setting.Asked };
        await trials.BeginAsync(trial, DraftTasting.Begin(trials.Now, plan).Value);
        foreach (var name in Wheels) await ActAsync<DraftTasting>(draft => draft.Enter(trials.Now, new Wheel(new WheelId(Guid.NewGuid()), name, setting.Facts.GetValueOrDefault(name) ?? WheelFacts.None)));
        foreach (var name in names) await ActAsync<DraftTasting>(draft => draft.AddTaster(trials.Now, new TasterId(Guid.NewGuid()), name, knowsTheKey: false, junior: false, 1));
        await ActAsync<DraftTasting>(draft => Chance.Committed(draft, draft.Seal(trials.Now, new Seed(7))));
        if (setting.Open) await ActAsync<SealedTasting>(ready => ready.Open(trials.Now));
        var book = (await trials.FindAsync(trial))!.Book;
        foreach (var name in setting.Sent) await SendAsync(book.Tasters.Single(taster => taster.Name == name).Id);
        var doors = await site.Services.GetRequiredService<TasterDoors>().OfAsync((await trials.FindAsync(trial))!);
        return new Laid(
            book.Tasters.ToDictionary(taster => taster.Name, taster => (doors[taster.Id].Path, book.Served(taster.Id)), StringComparer.Ordinal),
            book.Entries.ToDictionary(entry => entry.Name, entry => book.Key!.Of(entry.Wheel)[0].Code, StringComparer.Ordinal));

        async Task SendAsync(TasterId taster)
        {
            var ballot = Ballot.Of(book.Served(taster), book.Served(taster).Select(code => new[] { code }), []).Value;
            Assert.True((await trials.ReceiveAsync(trial, new BallotSend(new RevisionId(Guid.NewGuid()), taster, null, "a phone", BallotSource.Phone, BallotStage.Sent, ballot))).Ok);
        }

        async Task ActAsync<T>(Func<T, Outcome<ImmutableArray<DayEvent>>> act)
            where T : Tasting
        {
            var done = await trials.ActAsync(trial, tasting => act((T)tasting));
            Assert.True(done.Ok, done.Ok ? "" : done.Problems[0].Sentence);
        }
    }

    private sealed record Laid(IReadOnlyDictionary<string, (string Path, ImmutableArray<BlindCode> Plate)> Tasters, IReadOnlyDictionary<string, BlindCode> Codes);
}
