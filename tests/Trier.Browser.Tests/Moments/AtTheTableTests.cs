using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Moments;

/// <summary>What happens while guests taste, noted by the host on a phone that runs no script: a name said aloud, a late guest, notes compared, codes mixed up, a look at the key.</summary>
public sealed class AtTheTableTests(Chromium chromium)
{
    private static readonly string[] Wheels = ["Amberholt", "Birkmoor", "Corrieglen", "Dunfennel"];

    [Fact]
    public async Task What_goes_wrong_at_the_table_is_noted_with_its_minute_and_told_in_the_verdict()
    {
        await using var kitchen = await chromium.PhoneAsync(script: false);
        await using var seeing = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync(new Setting { Sent = ["Ada", "Bruno"] }, "Ada", "Bruno", "Cleo", "Dora");
        var eye = new Eye();
        var host = await table.MakerAsync(kitchen);
        await seeing.AddCookiesAsync((await kitchen.CookiesAsync()).Select(cookie => new Cookie { Name = cookie.Name, Value = cookie.Value, Domain = cookie.Domain, Path = cookie.Path }));
        var seen = await seeing.NewPageAsync();
        // Axe needs script: it looks at the same page in another browser of the same person.
        async Task Look(string name, string? unfolded = null)
        {
            await seen.GotoAsync(host.Url.Split('#')[0]);
            if (unfolded is not null) await seen.UnfoldAsync(unfolded);
            await eye.BothAsync(seen, name);
        }

        await host.GotoAsync(table.Of("board"));
        await host.SeesHeadingAsync("2 ballots in, 2 still at the table.");
        await host.SeesAsync("no totals before the key is opened.");
        foreach (var wheel in Wheels) await host.DoesNotSeeAsync(wheel);

        var named = table.CodeOf("Dunfennel");
        await host.UnfoldAsync("A name was said aloud");
        await host.Field("Which sample?").First.SelectOptionAsync(named);
        await host.Field("What was said").FillAsync("that is the old one");
        await host.PressAsync("Note it");
        await host.SeesAsync($"What sample {named} is was said aloud.");
        await Look("said aloud", "A name was said aloud");

        await host.UnfoldAsync("Somebody comes late");
        await host.SeesAsync("The samples have stood for ");
        await host.SeesAsync($"{named} at");
        await host.Field("Name of the newcomer").FillAsync("Emil");
        await host.PressAsync("Give the newcomer a plate");
        await Expect(host.Row("Emil")).ToContainTextAsync("came ");
        await host.SeesHeadingAsync("2 ballots in, 3 still at the table.");
        await Look("a late guest", "Somebody comes late");

        await host.UnfoldAsync("Two compared notes");
        foreach (var name in new[] { "Ada", "Bruno" }) await host.GetByRole(AriaRole.Checkbox, new() { Name = name, Exact = true }).TapAsync();
        await host.PressAsync("Note that they compared notes");
        await host.SeesAsync("Ada and Bruno compared notes.");
        await Look("compared notes", "Two compared notes");

        var plate = table.PlateOf("Ada");
        await host.UnfoldAsync("Codes mixed up on a plate");
        var mixed = host.Locator("form[action$='/room/swapped']");
        await mixed.Field("Who?").SelectOptionAsync(new SelectOptionValue { Label = "Ada" });
        await mixed.Field("One of the two codes").SelectOptionAsync(plate[0]);
        await mixed.Field("The other code").SelectOptionAsync(plate[1]);
        await mixed.Field("How it was noticed").FillAsync("the card lay turned");
        await mixed.Field("Who saw it").FillAsync("Cleo");
        await host.PressAsync("Read this plate the right way round");
        await host.SeesAsync($"{plate[0]} and {plate[1]} changed places on Ada’s plate.");
        await Look("codes mixed up", "Codes mixed up on a plate");

        await seen.GotoAsync(table.Of("plating"));
        await seen.ChooseAsync("The maker: this is early, and the verdict will say so");
        await seen.PressAsync("Open the plating list");
        await seen.SeesHeadingAsync("Open the key before the ballots are closed?");
        foreach (var wheel in Wheels) await seen.DoesNotSeeAsync(wheel);
        await eye.BothAsync(seen, "asked twice");
        await seen.PressAsync("Open the key early");
        foreach (var wheel in Wheels) await seen.SeesAsync(wheel);
        await eye.BothAsync(seen, "the key opened early");

        foreach (var name in new[] { "Dora", "Emil" })
        {
            await host.GotoAsync(table.Of("paper"));
            await host.PressAsync(name);
            for (var place = 1; place <= Wheels.Length; place++) await host.Field("Place").Nth(place - 1).FillAsync($"{place}");
            await host.PressAsync($"Save {name}’s ballot");
            await host.SeesAsync($"{name}’s ballot is in.");
        }

        await host.GotoAsync(table.Of("board"));
        await host.SeesAsync("Key opened early");
        await Look("the board at the end");
        await host.PressAsync("Close the ballots");
        await host.PressAsync("Open the key and read the verdict");
        foreach (var told in new[] { "“that is the old one”", "compared notes", "had changed places (the card lay turned; seen by Cleo)", "The maker opened the key at", "Without Emil, who came late" }) await host.SeesAsync(told);
        await Look("the verdict of a long evening");
        Assert.Empty(table.Site.Failures);
        eye.FoundNothing();
    }
}
