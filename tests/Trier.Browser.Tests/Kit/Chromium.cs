using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Trier.Browser.Tests.Kit.Chromium))]

namespace Trier.Browser.Tests.Kit;

/// <summary>The machine's own Chromium, started once for all tests; absent where there is none.</summary>
public sealed class Chromium : IAsyncLifetime
{
    /// <summary>What every browser test says when it skips.</summary>
    public const string Absent = "No Chromium on this machine: install it, or name one in TRIER_CHROMIUM, and the browser tests run.";

    private const float Patience = 30_000;

    private static readonly string[] Flags =
        ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>The program, or null. One that is named and not there is never replaced by another.</summary>
    private static string? Program
    {
        get
        {
            var path = Environment.GetEnvironmentVariable("TRIER_CHROMIUM") is { Length: > 0 } named ? named : "/usr/bin/chromium";
            return File.Exists(path) ? path : null;
        }
    }

    /// <summary>The browser; skips the test where there is none.</summary>
    public IBrowser Needed
    {
        get
        {
            Assert.SkipUnless(_browser is not null, Absent);
            return _browser!;
        }
    }

    public async ValueTask InitializeAsync()
    {
        if (Program is not { } program) return;
        Assertions.SetDefaultExpectTimeout(Patience);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = program, Args = Flags });
    }

    /// <summary>A phone: 390 by 844, touch.</summary>
    /// <param name="script">Whether it runs scripts.</param>
    public Task<IBrowserContext> PhoneAsync(bool script = true) => ContextAsync(new()
    {
        ViewportSize = new() { Width = Eye.PhoneWidth, Height = Eye.PhoneHeight },
        HasTouch = true,
        IsMobile = true,
        JavaScriptEnabled = script,
        Locale = "en-GB",
    });

    /// <summary>A laptop: 1280 by 900. It can be touched too, so that the same hand works it.</summary>
    /// <param name="script">Whether it runs scripts.</param>
    public Task<IBrowserContext> LaptopAsync(bool script = true) => ContextAsync(new()
    {
        ViewportSize = new() { Width = Eye.LaptopWidth, Height = Eye.LaptopHeight },
        HasTouch = true,
        JavaScriptEnabled = script,
        Locale = "en-GB",
    });

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null) await _browser.DisposeAsync();
        _playwright?.Dispose();
    }

    private async Task<IBrowserContext> ContextAsync(BrowserNewContextOptions options)
    {
        var context = await Needed.NewContextAsync(options);
        context.SetDefaultTimeout(Patience);
        return context;
    }
}
