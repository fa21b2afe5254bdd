using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Walk;

/// <summary>An invented tasting in the making: the served site, the maker's phone, and what has become known on the way.</summary>
internal sealed class Afternoon : IAsyncDisposable
{
    public const string Title = "Five tommes in November";
    public const string Question = "Which of the five would you eat again?";
    public const string Repeated = "Corrieglen";
    public const string Again = "Corrieglen again";
    public const string Withdrawn = "Elmwick";
    public const string Reason = "a soft grey patch under the rind";

    public static readonly string[] Wheels = ["Amberholt", "Birkmoor", Repeated, "Dunfennel", Withdrawn];
    public static readonly string[] Tasters = ["Ada", "Bruno", "Cleo", "Dora", "Emil", "Fay"];

    private readonly Chromium _chromium;
    private readonly List<IBrowserContext> _contexts = [];

    private Afternoon(Chromium chromium, ServedSite site) => (_chromium, Site) = (chromium, site);

    public ServedSite Site { get; }

    public Eye Eye { get; } = new();

    public IPage Maker { get; private set; } = null!;

    /// <summary>The path of the trial, once it is there.</summary>
    public string Trial { get; set; } = "";

    /// <summary>Each taster's link and typed code, as the page of the plates gives them.</summary>
    public Dictionary<string, (string Link, string Typed)> Doors { get; } = [];

    /// <summary>Wheel by code, as the helper reads it off the plating list.</summary>
    public Dictionary<string, string> Key { get; } = [];

    /// <summary>Who had tasted the withdrawn wheel by then.</summary>
    public HashSet<string> HadIt { get; } = [];

    /// <summary>What was sent and counts: each taster's wheels, best first.</summary>
    public Dictionary<string, string[]> Sent { get; } = [];

    public static async Task<Afternoon> BeginAsync(Chromium chromium)
    {
        _ = chromium.Needed;
        var afternoon = new Afternoon(chromium, await ServedSite.StartAsync());
        afternoon.Maker = await afternoon.NewPhoneAsync();
        return afternoon;
    }

    public async Task<IPage> NewPhoneAsync(bool script = true)
    {
        var context = await _chromium.PhoneAsync(script);
        _contexts.Add(context);
        return await context.NewPageAsync();
    }

    /// <summary>A taster takes up a phone that was not used before.</summary>
    public async Task<TasterPhone> TakesUpPhoneAsync(string taster, bool script = true) =>
        await new TasterPhone(await NewPhoneAsync(script)).OpenAsync(Doors[taster].Link);

    public string CodeOf(string wheel) => Key.Single(line => line.Value == wheel).Key;

    /// <summary>The codes of an order of wheels.</summary>
    public List<string> Codes(params IEnumerable<string> wheels) => [.. wheels.Select(CodeOf)];

    /// <summary>A liking that agrees with an order: the best gets 9, each next one less; what stands nowhere in it gets 5.</summary>
    public Func<string, int> LikingBy(string[] order) => code => Array.IndexOf(order, Key[code]) is >= 0 and var place ? 9 - place : 5;

    /// <summary>The maker looks at the board.</summary>
    public async Task LookAtBoardAsync(string heading)
    {
        await Maker.GotoAsync($"{Site.Address}{Trial}/board");
        await Maker.SeesHeadingAsync(heading);
        if (Doors.Count > 0 && heading.Contains("table", StringComparison.Ordinal)) await Maker.SeesAsync("no totals before the key is opened.");
    }

    /// <summary>What the board says of a taster.</summary>
    public Task BoardSaysAsync(string taster, string words) => Expect(Maker.Row(taster).First).ToContainTextAsync(words);

    public async ValueTask DisposeAsync()
    {
        foreach (var context in _contexts) await context.DisposeAsync();
        await Site.DisposeAsync();
    }
}
