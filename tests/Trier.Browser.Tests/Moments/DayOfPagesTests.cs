using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Moments;

/// <summary>The maker's and helpers' pages of the day, from the plan to numbered plates given out as people come, on phone and laptop.</summary>
public sealed class DayOfPagesTests(Chromium chromium)
{
    [Fact]
    public async Task Numbered_plates_are_planned_plated_and_given_to_whoever_comes()
    {
        await using var context = await chromium.PhoneAsync();
        await using var site = await HostedSite.StartAsync();
        var eye = new Eye();
        var maker = await context.NewPageAsync();
        await maker.GotoAsync(site.SignInLink);
        await maker.PressAsync("Sign in on this browser");
        await Expect(maker).ToHaveURLAsync($"{site.Address}/");
        await maker.GotoAsync($"{site.Address}/trials/new");
        await maker.Field("Title").FillAsync("Nine tommes");
        await maker.Field("The one question").FillAsync("Which again?");
        await maker.ChooseAsync("With numbers: whoever comes gets the next plate. Best when some may stay away.");
        await maker.Field("Samples a taster gets").FillAsync("4");
        await maker.Field("A warm-up sample").FillAsync("a mild tomme");
        await eye.BothAsync(maker, "new trial with serving");
        await maker.PressAsync("Begin this trial");
        await maker.SeesHeadingAsync("Which again?");
        var trial = maker.Url.Split('?', '#')[0];
        foreach (var name in new[] { "Amber", "Birk", "Corrie", "Dun", "Elm", "Fell", "Glen", "Holt", "Ives" })
        {
            var field = maker.Locator("form[action$='/wheels'] input[name='name']");
            if (!await field.IsVisibleAsync()) await maker.UnfoldAsync("Enter a wheel");
            await field.FillAsync(name);
            await maker.PressAsync("Enter this wheel");
            await Expect(maker.Row(name)).ToBeVisibleAsync();
        }

        foreach (var name in new[] { "Ada", "Bruno", "Cleo", "Dora", "Emil" })
        {
            await maker.Locator("input[name='taster']").FillAsync(name);
            await maker.PressAsync("Put on the list");
            await Expect(maker.Row(name)).ToBeVisibleAsync();
        }

        await maker.GetByRole(AriaRole.Link, new() { Name = "Ives" }).First.TapAsync();
        await maker.PressAsync("Serve it in a second flight");
        await Expect(maker.Row("Ives")).ToContainTextAsync("second flight");
        await maker.GetByRole(AriaRole.Link, new() { Name = "Bruno" }).First.TapAsync();
        await eye.BothAsync(maker, "a taster");
        await maker.Field("Who writes").FillAsync("Gus");
        await maker.RunAndWaitForResponseAsync(() => maker.Locator("form[action$='/scribe'] button").TapAsync(), answer => answer.Status == 200 && answer.Request.Method == "GET" && answer.Url.Contains("/tasters/", StringComparison.Ordinal));
        await maker.SettledAsync();
        await maker.ArriveAsync($"{trial}/practice");
        await maker.PressAsync("Lay a practice table");
        await maker.SeesHeadingAsync("The practice table is laid.");
        await eye.BothAsync(maker, "practice");
        await maker.PressAsync("End it and leave no trace");
        await maker.SeesHeadingAsync("Let one person walk the whole ballot.");

        await maker.GotoAsync(trial);
        await maker.PressAsync("Seal the key");
        await maker.SeesHeadingAsync("5 plates, 5 samples each.");
        await maker.SeesAsync("Everybody gets 4 of 8 samples");
        await eye.BothAsync(maker, "numbered plates");
        var plater = await maker.GetByRole(AriaRole.Link, new() { Name = "the plater’s page" }).GetAttributeAsync("href");
        var scribe = await maker.GetByRole(AriaRole.Link, new() { Name = "the scribe’s page" }).GetAttributeAsync("href");
        await maker.GotoAsync($"{trial}/cards?spares=1");
        await maker.SeesHeadingAsync("Plate 6");
        await eye.BothAsync(maker, "numbered cards");

        await maker.GotoAsync(site.Address + scribe);
        await maker.SeesAsync("The ballot of Bruno");
        await eye.BothAsync(maker, "scribe");
        await maker.GotoAsync(site.Address + plater);
        await maker.Field("Your name").FillAsync("Hugo");
        await maker.PressAsync("Open the plating list");
        await maker.PressAsync("Ready Plate 1");
        await maker.SeesAsync("1 of 5 plates are ready.");
        await eye.BothAsync(maker, "plating ticked");

        await maker.GotoAsync($"{trial}/plates");
        await maker.PressAsync("The wheels are out now");
        await maker.SeesAsync("The wheels left the cave at");
        await maker.PressAsync("Open the tasting");
        await maker.SeesHeadingAsync("0 ballots in, 0 still at the table.");
        await eye.BothAsync(maker, "board nobody here");
        await maker.Field("Who comes?").SelectOptionAsync(new SelectOptionValue { Label = "Ada" });
        await maker.PressAsync("Give this plate");
        await Expect(maker.Row("Ada")).ToContainTextAsync("plate 1");
        await eye.BothAsync(maker, "board one here");
        await maker.GotoAsync($"{trial}/room?still");
        await maker.SeesAsync("The wheels left the cold");
        await eye.BothAsync(maker, "room out of the cold");
        await maker.GotoAsync($"{trial}/plating");
        await maker.ChooseAsync("The maker: this is early, and the verdict will say so");
        await maker.PressAsync("Open the plating list");
        await maker.SeesHeadingAsync("Open the key before the ballots are closed?");
        await eye.BothAsync(maker, "asked twice");
        await maker.PressAsync("Leave it sealed");
        await maker.SeesHeadingAsync("0 ballots in, 1 still at the table.");
        Assert.Empty(site.Failures);
        eye.FoundNothing();
    }
}
