using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Helpers;

/// <summary>The pages around a tasting, without script: before the day, plater, server, room, poster, the key for anyone.</summary>
public sealed class HelperPagesTests(Chromium chromium)
{
    [Fact]
    public async Task Everything_around_the_table_works_without_script_on_phone_and_laptop()
    {
        await using var context = await chromium.PhoneAsync(script: true);
        await using var plain = await chromium.PhoneAsync(script: false);
        await using var table = await Table.SetAsync("Ada", "Bruno", "Cleo", "Dora");
        var eye = new Eye();
        var trial = $"{table.Site.Address}/trials/{table.Trial.Value}";
        var maker = await context.NewPageAsync();
        await maker.GotoAsync(table.Site.SignInLink);
        await maker.PressAsync("Sign in on this browser");
        await maker.SeesAsync("Four tommes");

        await maker.GotoAsync($"{trial}/serving");
        await maker.SeesHeadingAsync("What to cut, and when.");
        await maker.SeesAsync("4 samples for 4 people: one sitting.");
        await eye.BothAsync(maker, "before the day");
        await maker.Field("Wheel, across").FillAsync("3");
        await maker.PressAsync("Work it out");
        await maker.SeesAsync("A wheel is between 4 and 80 cm across.");
        await eye.BothAsync(maker, "before the day refused");
        await maker.Field("Wheel, across").FillAsync("17");
        await maker.Field("Wheel, tall").FillAsync("6,5");
        await maker.Field("First plate at").FillAsync("16:10");
        await maker.PressAsync("Work it out");
        await maker.SeesAsync("From above, a wheel 17 cm across: a quarter gives 15 whole cubes a layer, in 3 layers.");
        await Expect(maker.Row("Amberholt")).ToContainTextAsync("a quarter");
        await eye.BothAsync(maker, "before the day worked out");

        await maker.GotoAsync($"{trial}/plates");
        await maker.SeesHeadingAsync("Read these five words aloud before the first plate.");
        await eye.BothAsync(maker, "plates with words");
        var plater = await maker.GetByRole(AriaRole.Link, new() { Name = "the plater’s page" }).GetAttributeAsync("href");
        var server = await maker.GetByRole(AriaRole.Link, new() { Name = "the server’s page" }).GetAttributeAsync("href");
        await maker.GotoAsync($"{trial}/poster");
        await maker.SeesHeadingAsync("The poster");
        await eye.BothAsync(maker, "poster");
        await maker.GotoAsync($"{trial}/board");
        await maker.SeesAsync("Before you close: still missing.");
        await maker.SeesAsync("Cleo: nothing has come in. A paper ballot to type in?");
        await eye.BothAsync(maker, "board with what is missing");
        await maker.GotoAsync($"{trial}/room?still");
        await maker.SeesHeadingAsync("Write first. Talk after.");
        await maker.SeesAsync("0 of 4 ballots are in.");
        await eye.BothAsync(maker, "room");

        // Script is off: what a helper does is a link and a form. The eye needs script, so it looks with another page.
        var helper = await plain.NewPageAsync();
        await helper.GotoAsync(table.Site.Address + plater);
        await helper.SeesHeadingAsync("You plate. Who are you?");
        await helper.PressAsync("Open the plating list");
        await helper.SeesAsync("Write your name, 60 letters at most: it is put into the record with the time.");
        await helper.Field("Your name").FillAsync("Gus");
        await helper.PressAsync("Open the plating list");
        await helper.SeesHeadingAsync("Wheel by wheel, then plate by plate.");
        await helper.GotoAsync(table.Site.Address + server);
        await helper.SeesHeadingAsync("4 plates to carry.");
        await helper.GotoAsync($"{table.Site.Address}/key/{table.Trial.Value}");
        await helper.SeesHeadingAsync("A sealed key, known by five words.");

        await maker.GotoAsync(table.Site.Address + plater);
        await eye.BothAsync(maker, "plater shut");
        await maker.Field("Your name").FillAsync("Gus");
        await maker.PressAsync("Open the plating list");
        await maker.SeesHeadingAsync("Wheel by wheel, then plate by plate.");
        await eye.BothAsync(maker, "plater open");
        await maker.GotoAsync(table.Site.Address + server);
        await eye.BothAsync(maker, "server");
        await maker.GotoAsync($"{table.Site.Address}/key/{table.Trial.Value}");
        await eye.BothAsync(maker, "key sealed");

        await maker.GotoAsync($"{trial}/board");
        await maker.PressAsync("Close the ballots");
        await maker.SeesHeadingAsync("The ballots are closed. Shall the key be opened?");
        await maker.PressAsync("Open the key and read the verdict");
        await maker.SeesAsync("Read aloud at the sealing:");
        await maker.GotoAsync($"{table.Site.Address}/key/{table.Trial.Value}");
        await maker.SeesHeadingAsync("The list fits its words.");
        await eye.BothAsync(maker, "key opened");
        Assert.Empty(table.Site.Failures);
        eye.FoundNothing();
    }
}
