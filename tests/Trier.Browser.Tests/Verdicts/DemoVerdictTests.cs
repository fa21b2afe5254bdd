using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using Trier.Demo;
using Trier.Web.Hosting;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Verdicts;

/// <summary>The moments that only the verdict can get right, read off the page of the invented trial that ships.</summary>
public sealed class DemoVerdictTests(Chromium chromium)
{
    private static readonly string[] Told =
    [
        // Two tie for the most firsts, and another has the best average place: both are named, and why they part.
        "House and Old Hot tie for the most firsts, 4 each, but Thistle has the best average place.",
        "The two ways of counting part because firsts look at the top of each ballot alone",
        // The maker's own ballot stands apart.
        "With Benedita’s own ballot, not blind, Thistle still leads and Old Hot has the most firsts, 5 to 4.",
        // The most firsts and the most lasts.
        "Opinions part over Old Hot: 4 put it first and 5 last, of 12.",
        // A wheel much older than the others.
        "Old Hot was 553 days old, the next oldest 168: what people said of it may be its age",
        // Two makes of one recipe as far apart as two recipes.
        "one make differs from the next at least as much, so nothing is said of recipes.",
        // One cheese under two codes.
        "House was served twice, and tasters put its two servings 1,5 places apart on average",
        "two servings of one cheese would land within 0,7 average places of each other in 9 panels of 10",
        // A lead that luck may explain, and what to do all the same.
        "Thistle came out ahead: a hint, not proof, for even if all wheels tasted alike, ballots this uneven would turn up about 1 time in 16.",
        "Next. Split the vat and make both House, for those who like it milder, and Hot (to be kept as long as Old Hot, 553 days, for its age may be what they liked), for those who like it stronger. For one that is to please them all, Thistle is the bet.",
    ];

    [Fact]
    public async Task Ties_camps_ages_makes_and_the_repeat_are_told_on_phone_and_laptop_with_script_and_without()
    {
        await using var seeing = await chromium.PhoneAsync();
        await using var plain = await chromium.PhoneAsync(script: false);
        var folder = Site.NewFolder();
        var trial = await DemoTrial.SeedAsync(new HostSettings(folder.FullName, 0, null));
        await using var site = await HostedSite.StartAsync(folder);
        var eye = new Eye();
        var maker = await seeing.NewPageAsync();
        await maker.GotoAsync(site.SignInLink);
        await maker.PressAsync("Sign in on this browser");
        await maker.SeesAsync("Thistle or calf?");
        await maker.GotoAsync($"{site.Address}/trials/{trial.Value}/verdict");
        await Expect(maker.GetByText("are still being worked out")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        foreach (var sentence in Told) await maker.SeesAsync(sentence);
        await eye.BothAsync(maker, "the verdict of the demo");

        await plain.AddCookiesAsync((await seeing.CookiesAsync()).Select(cookie => new Cookie { Name = cookie.Name, Value = cookie.Value, Domain = cookie.Domain, Path = cookie.Path }));
        var read = await plain.NewPageAsync();
        await read.GotoAsync($"{site.Address}/trials/{trial.Value}/verdict");
        foreach (var sentence in Told) await read.SeesAsync(sentence);
        Assert.Empty(site.Failures);
        eye.FoundNothing();
    }
}
