using System.Globalization;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace Trier.Browser.Tests.Kit;

/// <summary>
/// Looks at a page as a whole: axe (WCAG 2.0 to 2.2, A and AA, and best practice, with everything unfolded), nothing wider than the screen
/// at 390 and 320 px, and a picture where TRIER_SCREENSHOTS names a folder. Gathers what it finds, so that one run tells all.
/// </summary>
internal sealed class Eye
{
    public const int PhoneWidth = 390;
    public const int PhoneHeight = 844;
    public const int LaptopWidth = 1280;
    public const int LaptopHeight = 900;
    private const int NarrowWidth = 320;

    // Run on the page itself, which has no frames: the package's own call opens a second page each time, and takes three times as long.
    private static readonly string Axe = new BundledAxeScriptProvider().GetScript();

    private const string RunAxe = """
        async () => {
          const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa', 'best-practice'];
          const { violations } = await axe.run(document, { runOnly: { type: 'tag', values: tags }, resultTypes: ['violations'] });
          return violations.flatMap((rule) => rule.nodes.map((node) => `axe ${rule.id} (${rule.help}) at ${node.html}`));
        }
        """;

    private readonly List<string> _found = [];
    private int _looks;

    private static string? Pictures => Environment.GetEnvironmentVariable("TRIER_SCREENSHOTS") is { Length: > 0 } folder ? folder : null;

    /// <summary>Looks at a page on a phone.</summary>
    public Task PhoneAsync(IPage page, string name) => LookAsync(page, name, laptop: false);

    /// <summary>Looks at a page on a phone and on a laptop.</summary>
    public Task BothAsync(IPage page, string name) => LookAsync(page, name, laptop: true);

    /// <summary>Everything that was found, one line each; the assertion of the walk.</summary>
    public void FoundNothing()
    {
        Assert.True(_looks > 0, "No page was looked at.");
        Assert.True(_found.Count == 0, string.Join(Environment.NewLine, _found));
    }

    private async Task LookAsync(IPage page, string name, bool laptop)
    {
        _looks++;
        for (var tries = 1; ; tries++)
        {
            try
            {
                await LookOnceAsync(page, name, laptop);
                return;
            }
            catch (PlaywrightException moved) when (tries < 3 && moved.Message.Contains("Execution context was destroyed", StringComparison.Ordinal))
            {
                // The page was still on its way from the press before: the next look waits for it.
            }
        }
    }

    private async Task LookOnceAsync(IPage page, string name, bool laptop)
    {
        // Its first words can be seen before its style has come, and then every key is too small.
        await page.SettledAsync();
        await LookAsync(page, name, PhoneWidth);
        await page.SetViewportSizeAsync(NarrowWidth, PhoneHeight);
        await NothingSidewaysAsync(page, name, NarrowWidth);
        if (laptop)
        {
            await page.SetViewportSizeAsync(LaptopWidth, LaptopHeight);
            await LookAsync(page, name, LaptopWidth);
        }

        await page.SetViewportSizeAsync(PhoneWidth, PhoneHeight);
    }

    private async Task LookAsync(IPage page, string name, int width)
    {
        if (Pictures is { } folder)
        {
            var file = string.Create(CultureInfo.InvariantCulture, $"{_looks:00}-{name.Replace(' ', '-')}-{width}.png");
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, file), FullPage = true });
        }

        // Widths are the page's own once its letters have come; until then another font stands in.
        await page.EvaluateAsync("async () => { await document.fonts.ready; }");
        await NothingSidewaysAsync(page, name, width);
        await page.EvaluateAsync("() => document.querySelectorAll('details:not([open])').forEach(part => { part.open = true; part.dataset.unfolded = ''; })");
        if (!await page.EvaluateAsync<bool>("() => 'axe' in window")) await page.EvaluateAsync(Axe);
        var violations = await page.EvaluateAsync<string[]>(RunAxe);
        await page.EvaluateAsync("() => document.querySelectorAll('details[data-unfolded]').forEach(part => { part.open = false; delete part.dataset.unfolded; })");
        _found.AddRange(violations.Select(violation => $"{name} at {width} px: {violation}"));
    }

    private async Task NothingSidewaysAsync(IPage page, string name, int width)
    {
        var needed = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth");
        if (needed > width) _found.Add($"{name} at {width} px: the page is {needed} px wide.");
    }
}
