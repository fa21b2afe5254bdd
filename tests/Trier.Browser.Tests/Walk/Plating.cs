using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Walk;

/// <summary>Sealing, cards and plates, until the first plate is out.</summary>
internal static class Plating
{
    public static async Task SealsAsync(this Afternoon day)
    {
        var maker = day.Maker;
        await maker.PressAsync("Seal the key");
        await maker.SeesHeadingAsync("6 plates, 6 samples each.");
        await maker.SeesAsync("nobody has opened it");
        await maker.SeesAsync("Every sample is served in every position once.");
        foreach (var name in Afternoon.Tasters)
        {
            var ways = maker.GetByRole(AriaRole.Region, new() { Name = "Ways in" }).GetByRole(AriaRole.Row).Filter(new() { HasText = name });
            var link = await ways.GetByRole(AriaRole.Link, new() { Name = $"the ballot of {name}" }).GetAttributeAsync("href");
            day.Doors[name] = (day.Site.Address + link, await ways.GetByRole(AriaRole.Cell).First.InnerTextAsync());
        }

        await day.Eye.BothAsync(maker, "the plates");
    }

    /// <summary>The helper, who does not taste, reads which code is which wheel.</summary>
    public static async Task HelperPlatesAsync(this Afternoon day)
    {
        var maker = day.Maker;
        await maker.PressAsync("The plating list");
        await maker.SeesHeadingAsync("Who opens the plating list?");
        await day.Eye.BothAsync(maker, "the plating list shut");
        await maker.ChooseAsync("A helper who plates");
        await maker.Field("The helper’s name").FillAsync("Gus");
        await maker.PressAsync("Open the plating list");
        await maker.SeesHeadingAsync("Wheel by wheel, then plate by plate.");
        await maker.SeesAsync("This page shows which code is which wheel.");
        var lines = maker.GetByRole(AriaRole.Region, new() { Name = "What to cut" }).GetByRole(AriaRole.Row);
        foreach (var wheel in Afternoon.Wheels.Append(Afternoon.Again))
        {
            var line = lines.Filter(new() { Has = maker.GetByRole(AriaRole.Rowheader, new() { NameRegex = Hand.Like($"^{wheel} W[1-5]") }) });
            day.Key[await line.GetByRole(AriaRole.Cell).First.InnerTextAsync()] = wheel;
        }

        Assert.Equal(6, day.Key.Count);
        await day.Eye.BothAsync(maker, "the plating list");
        await maker.GotoAsync($"{day.Site.Address}{day.Trial}/plates");
        await maker.SeesAsync("known to Gus");
    }

    public static async Task PrintsAsync(this Afternoon day)
    {
        var maker = day.Maker;
        await maker.PressAsync("Cards for the plates");
        await maker.SeesHeadingAsync("Plate cards");
        foreach (var name in Afternoon.Tasters) await maker.SeesHeadingAsync(name);
        await day.Eye.BothAsync(maker, "plate cards");
        await maker.GotoAsync($"{day.Site.Address}{day.Trial}/plates");
        await maker.PressAsync("Paper ballots");
        await maker.SeesHeadingAsync("Paper ballots");
        await maker.SeesAsync("At the end: which do you like best?");
        await day.Eye.BothAsync(maker, "paper ballots");
        foreach (var wheel in Afternoon.Wheels) await maker.DoesNotSeeAsync(wheel);
    }

    public static async Task OpensAsync(this Afternoon day)
    {
        var early = await day.TakesUpPhoneAsync("Ada");
        await early.Page.SeesHeadingAsync("Welcome, Ada.");
        await early.Page.SeesAsync("The tasting has not begun.");
        await day.Eye.PhoneAsync(early.Page, "welcome too early");

        var maker = day.Maker;
        await maker.GotoAsync($"{day.Site.Address}{day.Trial}/plates");
        await maker.PressAsync("Open the tasting");
        await maker.SeesHeadingAsync("0 ballots in, 6 still at the table.");
        await Expect(maker.Row("Ada")).ToContainTextAsync("nothing yet");
        await day.Eye.BothAsync(maker, "the board");
    }
}
