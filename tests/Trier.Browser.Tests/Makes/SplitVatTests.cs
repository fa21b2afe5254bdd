using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Makes;

/// <summary>A vat split into two, on a phone whose network goes away: deviations are said by the page itself, and the same words come from the host afterwards.</summary>
public sealed class SplitVatTests(Chromium chromium)
{
    [Fact]
    public async Task Both_parts_go_on_without_the_host_and_what_went_otherwise_is_said_at_once()
    {
        await using var context = await chromium.PhoneAsync();
        await using var site = await HostedSite.StartAsync();
        var page = await context.NewPageAsync();
        var eye = new Eye();
        await page.GotoAsync(site.SignInLink);
        await page.PressAsync("Sign in on this browser");
        await page.SeesHeadingAsync("Which of your recipes do people like best?");
        await page.GotoAsync($"{site.Address}/recipes/alpine/sheet?milk=24&fat=3,2&treatment=Pasteurised&lever=4&wheels=2");
        await page.PressAsync("Begin this make");
        for (var touch = 1; touch <= 7; touch++)
        {
            await page.SettledAsync();
            var before = await Shown(page).Locator("h1").InnerTextAsync();
            await Shown(page).Locator("form .plug-primary").TapAsync();
            await Expect(Shown(page).Locator("h1")).Not.ToHaveTextAsync(before);
            await Expect(page.Locator(".undobar")).ToBeVisibleAsync();
        }

        await HeadingAsync(page, "Cook the curd");
        await page.PressAsync("Split the vat here");
        await page.SeesHeadingAsync("Split the vat before “Cook the curd”.");
        await page.SettledAsync();
        await eye.BothAsync(page, "split form");
        await page.Locator("#name-1").FillAsync("hot");
        await page.Locator("#name-2").FillAsync("mild");
        await page.Locator("#what-2-1").SelectOptionAsync("7 celsius");
        await page.Locator("#value-2-1").FillAsync("48");
        await page.PressAsync("Split the vat");
        await Expect(page.Locator(".undobar-deed")).ToContainTextAsync("Split: hot, mild");
        await eye.PhoneAsync(page, "split vat");

        // Away: the other part is one touch further, and the page itself says what went otherwise.
        await page.SettledAsync();
        await context.SetOfflineAsync(true);
        await page.Locator("[data-to=\"2\"]").TapAsync();
        await HeadingAsync(page, "Cook the curd");
        await Expect(Shown(page).Locator(".vat-how")).ToContainTextAsync("48 °C");
        await page.Locator(".vat-lane:not([hidden]) .vat-step:not([hidden])").GetByText("Cooked, but not as planned").TapAsync();
        await Shown(page).Locator("input[name=celsius]").FillAsync("51,5");
        await Shown(page).GetByRole(AriaRole.Button, new() { Name = "Write it down" }).TapAsync();
        await HeadingAsync(page, "Stir at the top");
        var said = await page.Locator("[data-said]").InnerTextAsync();
        Assert.Contains("Cook the curd: 51,5 °C, 3,5 °C above the aim of 48 °C. Hotter curd loses more whey", said, StringComparison.Ordinal);
        Assert.Contains("Cook the curd: 60 min shorter than planned. Too fast a cook sets a skin on the grain and traps whey.", said, StringComparison.Ordinal);
        await eye.PhoneAsync(page, "said without the host");
        await Expect(page.Locator("[data-to=\"1\"] [data-part-now]")).ToContainTextAsync("Cook the curd");

        await context.SetOfflineAsync(false);
        await Expect(page.Locator(".undobar-deed")).ToContainTextAsync("Cook the curd · mild");
        await Expect(Shown(page).Locator("h1")).ToHaveTextAsync("Stir at the top");
        Assert.Equal(Lines(said), Lines(await page.Locator("[data-said]").InnerTextAsync()));
        await page.Locator("[data-to=\"1\"]").TapAsync();
        await HeadingAsync(page, "Cook the curd");
        await Expect(Shown(page).Locator(".vat-how")).ToContainTextAsync("52 °C");

        await page.GotoAsync($"{page.Url.Split('?')[0]}/record");
        await page.SeesAsync("Split from step 7 on: hot, 50 %: as the recipe; mild, 50 %: cook the curd 48 °C.");
        await eye.BothAsync(page, "record of a split vat");
        eye.FoundNothing();
        Assert.Empty(site.Failures);
    }

    private static List<string> Lines(string said) => [.. said.Split(["\n", "Otherwise."], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal)];

    private static ILocator Shown(IPage page) => page.Locator(".vat-lane:not([hidden]) .vat-step:not([hidden])");

    private static Task HeadingAsync(IPage page, string words) => Expect(Shown(page).Locator("h1")).ToHaveTextAsync(words);
}
