using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Verdicts;

/// <summary>After a tasting: the trial that follows from its verdict, several tastings together, a recipe's record.</summary>
public sealed class TogetherPageTests(Chromium chromium)
{
    [Fact]
    public async Task What_follows_and_what_stands_together_can_be_read_on_phone_and_laptop()
    {
        await using var context = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync("Ada", "Bruno", "Cleo", "Dora");
        var eye = new Eye();
        var maker = await context.NewPageAsync();
        await maker.GotoAsync(table.Site.SignInLink);
        await maker.PressAsync("Sign in on this browser");
        await maker.SeesAsync("Four tommes");
        await maker.GotoAsync($"{table.Site.Address}/together");
        await maker.SeesHeadingAsync("No tasting to look back on yet.");
        await eye.BothAsync(maker, "together with nothing");

        await maker.GotoAsync($"{table.Site.Address}/trials/{table.Trial.Value}/board");
        await maker.PressAsync("Close the ballots");
        await maker.PressAsync("Open the key and read the verdict");
        await maker.SeesAsync("Plan the next trial");
        await maker.PressAsync("Plan the next trial");
        await maker.SeesAsync("It follows an earlier trial");
        await maker.SeesAsync("There were too few answers to judge, so the two that came first are asked again.");
        await Expect(maker.GetByText("that it is ahead can be shown")).ToBeVisibleAsync(new() { Timeout = 240_000 });
        await eye.BothAsync(maker, "follow up");

        await maker.GotoAsync(table.Site.Address);
        await maker.PressAsync("Several tastings together");
        await maker.SeesHeadingAsync("One tasting so far.");
        await Expect(maker.Row("Amberholt").First).ToBeVisibleAsync();
        await eye.BothAsync(maker, "together");
        await maker.PressAsync("Amberholt");
        await maker.SeesHeadingAsync("Amberholt");
        await maker.SeesAsync("That is one make so far: it says what this wheel did, and not yet what the recipe does.");
        await eye.BothAsync(maker, "a record");
        Assert.Empty(table.Site.Failures);
        eye.FoundNothing();
    }
}
