using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Makes;

/// <summary>A whole vat day on a phone: a clock that jumps, the network cut twice, the host killed once, a slip corrected; nothing is lost.</summary>
public sealed class VatDayTests(Chromium chromium)
{
    private const string AwayOnce = "The Wi-Fi is away. What you touched is kept on this phone and goes out by itself.";

    [Fact]
    public async Task A_whole_day_loses_nothing()
    {
        await using var context = await chromium.PhoneAsync();
        await using var site = await ServedSite.StartAsync();
        var page = await context.NewPageAsync();
        var eye = new Eye();
        await page.GotoAsync(site.SignInLink);
        await page.PressAsync("Sign in on this browser");
        await page.SeesHeadingAsync("Which of your recipes do people like best?");
        await page.GotoAsync($"{site.Address}/recipes");
        await eye.BothAsync(page, "recipes");
        await page.GotoAsync($"{site.Address}/recipes/alpine/edit");
        await eye.BothAsync(page, "recipe form");
        await page.GotoAsync($"{site.Address}/recipes/compare?r=alpine&r=tomme");
        await eye.BothAsync(page, "compare");
        await page.GotoAsync($"{site.Address}/recipes/alpine/sheet");
        await eye.PhoneAsync(page, "sheet form");
        await page.GotoAsync($"{site.Address}/recipes/alpine/sheet?milk=20&fat=3,6&treatment=Raw&lever=4");
        await eye.BothAsync(page, "sheet");
        await page.PressAsync("Begin this make");
        await HeadingAsync(page, "Warm the milk");
        await eye.PhoneAsync(page, "vat day");
        var make = page.Url;

        await TouchAsync(page);
        await HeadingAsync(page, "Add thermophilic bulk or whey starter");
        await page.SeesAsync("Otherwise.");
        // The page says so by itself; the way back is the host's word that it has the touch.
        await Expect(page.Locator(".undobar-deed")).ToContainTextAsync("Warm the milk");

        // First cut: three touches go on without the host.
        await page.SettledAsync();
        await context.SetOfflineAsync(true);
        await TouchAsync(page);
        await page.SeesAsync(AwayOnce);
        await HeadingAsync(page, "Let it ripen");
        await Shown(page).Locator("input[name=pH]").FillAsync("6,75");
        await TouchAsync(page);
        await HeadingAsync(page, "Add the rennet");
        await TouchAsync(page);
        await HeadingAsync(page, "Wait for flocculation");
        await page.SeesAsync("Your 3 touches are kept on this phone and go out by themselves.");
        await Expect(Shown(page).Locator("[data-left]")).ToHaveTextAsync("16 min to go.");
        await context.SetOfflineAsync(false);
        await Expect(page.Locator(".undobar-deed")).ToContainTextAsync("Rennet in");
        await Expect(page.Locator(".vat-top")).ToContainTextAsync("step 4 of 17");

        // What is typed outlives a reload; a clock that jumps an hour is put right by the host.
        await page.UnfoldAsync("Flocculation seen, but not as planned");
        await Shown(page).Locator("input[name=note]").FillAsync("milk smelled of clover");
        await page.ReloadAsync();
        await Expect(Shown(page).Locator("input[name=note]")).ToHaveValueAsync("milk smelled of clover");
        await page.EvaluateAsync("() => { const real = Date.now; Date.now = () => real() + 3600000; }");
        await page.WaitForTimeoutAsync(2500);
        await Expect(Shown(page).Locator("[data-left]")).ToHaveTextAsync(Hand.Like("^1[56] min to go\\.$"));
        await page.ReloadAsync();

        // The host is killed between two touches.
        await site.KillAsync();
        await TouchAsync(page);
        await page.SeesAsync(AwayOnce);
        await HeadingAsync(page, "Cut the curd");
        await site.StartAgainAsync();
        await Expect(page.Locator(".undobar-deed")).ToContainTextAsync("Flocculation seen");

        // Second cut, with a reading the host refuses: it comes back with what was typed, the touch after it is in.
        await page.SettledAsync();
        await context.SetOfflineAsync(true);
        await Shown(page).Locator("input[name=pH]").FillAsync("66");
        await TouchAsync(page);
        // The page asks by itself before an odd reading goes out; said again, it goes.
        await page.SeesAsync("pH 66 is outside what milk and curd show, about 4,4 to 7,2: is the meter right? Touch again to keep it.");
        await HeadingAsync(page, "Cut the curd");
        await TouchAsync(page);
        await HeadingAsync(page, "Stir before the cook");
        await TouchAsync(page);
        await context.SetOfflineAsync(false);
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("pH is 66; it must be at least 0 and at most 14");
        await HeadingAsync(page, "Cut the curd");
        await Expect(Shown(page).Locator("input[name=pH]")).ToHaveValueAsync("66");
        await eye.PhoneAsync(page, "refused reading");
        await Shown(page).Locator("input[name=pH]").FillAsync("6,55");
        await TouchAsync(page);
        await HeadingAsync(page, "Cook the curd");
        await HeardAsync(page);

        // A touch too many is taken back; the rest of the day.
        await TouchAsync(page);
        await HeadingAsync(page, "Stir at the top");
        await HeardAsync(page);
        await page.Locator(".undobar-key").TapAsync();
        await HeadingAsync(page, "Cook the curd");
        for (var left = 11; left > 0; left--)
        {
            var before = await Shown(page).Locator("h1").InnerTextAsync();
            var step = await Shown(page).GetAttributeAsync("data-step");
            await TouchAsync(page);
            await Expect(page.Locator($".vat-step:not([hidden]):not([data-step=\"{step}\"])")).ToHaveCountAsync(1);
            await HeardAsync(page);
            Assert.NotEqual("All steps are done.", before);
        }

        await HeadingAsync(page, "All steps are done.");
        await Expect(page.Locator(".undobar-deed")).ToContainTextAsync("Dry off");
        await eye.PhoneAsync(page, "done");

        await page.GotoAsync($"{make}/steps/3");
        await page.Field("pH").FillAsync("6,57");
        await page.Field("Why it is changed").FillAsync("read the wrong buffer");
        await page.PressAsync("Keep the correction");
        await page.SeesAsync("read the wrong buffer");
        var record = await page.Locator("table").First.InnerTextAsync();
        Assert.Contains("6,75", record, StringComparison.Ordinal);
        Assert.Contains("6,57", record, StringComparison.Ordinal);
        Assert.Contains("milk smelled of clover", record, StringComparison.Ordinal);
        Assert.Equal(17, await page.Locator("tbody th a").CountAsync());
        await eye.BothAsync(page, "record");

        await page.GotoAsync($"{make}/wheels");
        await page.Field("Weight").FillAsync("1,82");
        await page.PressAsync("Number it");
        await page.SeesAsync("One wheel.");
        await eye.BothAsync(page, "wheels");
        await page.GotoAsync($"{make}/labels");
        await eye.PhoneAsync(page, "labels");
        await page.GotoAsync($"{site.Address}/wheels/1");
        await eye.PhoneAsync(page, "wheel");
        await page.GotoAsync($"{make}/meter");
        await eye.PhoneAsync(page, "meter");
        await page.GotoAsync($"{site.Address}/shelf");
        await eye.PhoneAsync(page, "shelf");
        eye.FoundNothing();
        Assert.Empty(site.Failures);
    }

    private static ILocator Shown(IPage page) => page.Locator(".vat-step:not([hidden])");

    private static Task HeadingAsync(IPage page, string words) => Expect(Shown(page).Locator("h1")).ToHaveTextAsync(words);

    /// <summary>Waits until the host has answered the touch that the page already shows: its own page then takes the place of this one, and a tap that falls into the change is never acknowledged by the browser.</summary>
    private static async Task HeardAsync(IPage page)
    {
        await Expect(page.Locator(".undobar-deed")).ToBeVisibleAsync();
        await page.SettledAsync();
    }

    private static Task TouchAsync(IPage page) => Shown(page).Locator("form .plug-primary").TapAsync();
}
