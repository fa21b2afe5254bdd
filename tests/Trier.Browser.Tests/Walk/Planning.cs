using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Walk;

/// <summary>The maker signs in and plans: question, wheels, hidden repeat, tasters.</summary>
internal static class Planning
{
    public static async Task SignsInAsync(this Afternoon day)
    {
        var maker = day.Maker;
        await maker.GotoAsync(day.Site.Address);
        await maker.SeesHeadingAsync("The maker signs in with a link.");
        await day.Eye.BothAsync(maker, "the door shut");

        await maker.GotoAsync(day.Site.SignInLink);
        await maker.SeesHeadingAsync("Come in.");
        await day.Eye.BothAsync(maker, "sign in");
        await maker.PressAsync("Sign in on this browser");
        await maker.SeesHeadingAsync("Which of your recipes do people like best?");
        await maker.SeesAsync("No trial yet.");
        await day.Eye.BothAsync(maker, "an empty start");

        var stranger = await day.NewPhoneAsync();
        await stranger.GotoAsync(day.Site.SignInLink);
        await stranger.PressAsync("Sign in on this browser");
        await stranger.SeesHeadingAsync("This link has been used, or is older than ten minutes.");
        await day.Eye.BothAsync(stranger, "sign in spent");
    }

    public static async Task BeginsATrialAsync(this Afternoon day)
    {
        var maker = day.Maker;
        await maker.PressAsync("Begin a trial");
        await maker.SeesHeadingAsync("What do you want to know?");
        await day.Eye.BothAsync(maker, "a new trial");
        await maker.Field("Title").FillAsync(Afternoon.Title);
        await maker.Field("The one question").FillAsync(Afternoon.Question);
        await maker.Field("Who holds the tasting").FillAsync("An invented kitchen");
        await maker.Field("Day of the tasting").FillAsync("31/02/2026");
        await maker.PressAsync("Begin this trial");
        await maker.SeesAsync("“31/02/2026” is no day of the calendar: write it as 30/08/2025.");
        await Expect(maker.Field("Title")).ToHaveValueAsync(Afternoon.Title);
        await day.Eye.BothAsync(maker, "a new trial refused");
        await maker.Field("Day of the tasting").FillAsync("28/11/2026");
        await maker.PressAsync("Begin this trial");
        await maker.SeesHeadingAsync(Afternoon.Question);
        await maker.SeesAsync("Enter the wheels.");
        day.Trial = new Uri(maker.Url).AbsolutePath;
        await day.Eye.BothAsync(maker, "a trial begun");
    }

    public static async Task EntersWheelsAsync(this Afternoon day)
    {
        var maker = day.Maker;
        for (var number = 0; number < Afternoon.Wheels.Length; number++)
        {
            var name = Afternoon.Wheels[number];
            // Once there are two, the form is folded away.
            if (number >= 2) await maker.UnfoldAsync("Enter a wheel");
            await maker.Field("Name one or two words").FillAsync(name);
            await maker.Field("Recipe").FillAsync($"{name} recipe");
            await maker.Field("Made on").FillAsync($"{3 + number}/08/2026");
            await maker.Field("Milk").FillAsync(number == 0 ? "sheep’s, 10 litres" : "cow’s, 10 litres");
            await maker.Field("Heat treatment of the milk").FillAsync(number == 1 ? "raw" : "pasteurised");
            if (number == 2) await maker.Field("Allergens besides milk").FillAsync("egg");
            await maker.PressAsync("Enter this wheel");
            await Expect(maker.Row(name)).ToContainTextAsync($"W{number + 1}");
        }

        await maker.SeesAsync("5 entered");
        await maker.Field("Serve one wheel twice, under two codes").SelectOptionAsync(new SelectOptionValue { Label = Afternoon.Repeated });
        await maker.PressAsync("Keep the hidden repeat");
        await Expect(maker.Row(Afternoon.Repeated)).ToContainTextAsync("served twice");

        await maker.PressAsync("Amberholt W1");
        await maker.SeesHeadingAsync("Amberholt");
        await Expect(maker.Field("Made on")).ToHaveValueAsync("03/08/2026");
        await day.Eye.BothAsync(maker, "a wheel");
        await maker.GotoAsync(day.Site.Address + day.Trial);
    }

    public static async Task ListsTastersAsync(this Afternoon day)
    {
        var maker = day.Maker;
        foreach (var name in Afternoon.Tasters)
        {
            await maker.GetByLabel("Name", new() { Exact = true }).FillAsync(name);
            await maker.PressAsync("Put on the list");
            await Expect(maker.Row(name)).ToBeVisibleAsync();
        }

        await maker.SeesAsync("6 on the list");
        await day.Eye.BothAsync(maker, "a draft");
        await maker.PressAsync("Change the plan");
        await maker.SeesHeadingAsync("Change the plan.");
        await day.Eye.BothAsync(maker, "change the plan");
        await maker.GotoAsync(day.Site.Address + day.Trial);
        await maker.PressAsync("Ada");
        await maker.SeesHeadingAsync("Ada");
        await maker.SeesAsync("Corrieglen (egg)");
        await day.Eye.BothAsync(maker, "a taster");
        await maker.GotoAsync(day.Site.Address + day.Trial);
    }
}
