using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Planning;

/// <summary>The planning page on phone and laptop: what differs, what it takes, and the trial that follows.</summary>
public sealed class PlanningPageTests(Chromium chromium)
{
    [Fact]
    public async Task A_draft_is_planned_on_a_phone_and_on_a_laptop()
    {
        await using var site = await HostedSite.StartAsync();
        await using var context = await chromium.PhoneAsync();
        var eye = new Eye();
        var maker = await context.NewPageAsync();
        await maker.GotoAsync(site.SignInLink);
        await maker.PressAsync("Sign in on this browser");
        await maker.PressAsync("Begin a trial");
        await maker.Field("Title").FillAsync("Thistle or calf?");
        await maker.Field("The one question").FillAsync("Which of our ways do members like best at about five months?");
        await maker.Field("Day of the tasting").FillAsync("30/08/2027");
        await maker.PressAsync("Begin this trial");
        await maker.PressAsync("What this trial can tell, and how many tasters it takes");
        await maker.SeesHeadingAsync("Nothing to plan with yet.");
        await eye.BothAsync(maker, "planning with nothing");

        var planning = maker.Url;
        var wheels = new[] { ("House", "House", "15/03/2027", "10 L"), ("Thistle", "Thistle", "22/03/2027", "10 L"), ("Hot", "Hot", "29/03/2027", "10 L"), ("House 2", "House", "12/04/2027", "10 L"), ("Old Hot", "Hot", "24/02/2026", "9 L"), ("Short brine", "Short brine", "", "10 L") };
        await maker.GotoAsync(planning.Replace("/planning", "", StringComparison.Ordinal));
        for (var i = 0; i < wheels.Length; i++)
        {
            var (name, recipe, made, milk) = wheels[i];
            if (i >= 2) await maker.UnfoldAsync("Enter a wheel");
            await maker.Field("Name one or two words").FillAsync(name);
            await maker.Field("Recipe").FillAsync(recipe);
            await maker.Field("Made on").FillAsync(made);
            await maker.Field("Milk").FillAsync($"sheep’s, {milk}");
            if (name == "Old Hot") await maker.Field("Additives").FillAsync("lysozyme");
            if (name == "Thistle") await maker.Field("Coagulant").FillAsync("cardoon");
            await maker.PressAsync("Enter this wheel");
            await Expect(maker.Row(name)).ToContainTextAsync($"W{i + 1}");
        }

        await maker.GotoAsync(planning);
        await maker.Field("Tasters expected").FillAsync("x");
        await maker.PressAsync("Work it out");
        await maker.SeesAsync("“x” is no number.");
        await eye.BothAsync(maker, "planning refused");
        await maker.Field("Tasters expected").FillAsync("14");
        await maker.Field("Age on the day").FillAsync("150");
        await maker.PressAsync("Work it out");
        // The page shows the panels by itself once they are worked out.
        await Expect(maker.GetByText("that it is ahead can be shown")).ToBeVisibleAsync(new() { Timeout = 240_000 });
        await Expect(maker.Row("Old Hot")).ToContainTextAsync("differs: 552 days");
        await Expect(maker.Row("14, expected")).ToBeVisibleAsync();
        await maker.SeesAsync("tasters are the fewest that would show it more often than not.");
        await eye.BothAsync(maker, "planning");

        await maker.UnfoldAsync("Other changes, and what each costs");
        await maker.PressAsync("Add a second Thistle make");
        await Expect(maker.Row("Thistle 2").First).ToBeVisibleAsync();
        Assert.Empty(site.Failures);
        eye.FoundNothing();
    }
}
