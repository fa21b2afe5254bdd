using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Moments;

/// <summary>The hour before the guests come, by the host's hands: somebody may not eat a wheel, six of fourteen come, a wheel smells.</summary>
public sealed class BeforeTheGuestsTests(Chromium chromium)
{
    private static readonly string[] Invited = ["Ada", "Bruno", "Cleo", "Dora", "Emil", "Fay", "Gus", "Hilde", "Ivo", "Jana", "Karl", "Lena", "Milo", "Nora"];
    private static readonly string[] Here = ["Ada", "Bruno", "Dora", "Gus", "Lena", "Nora"];

    [Fact]
    public async Task A_plate_goes_without_a_wheel_six_of_fourteen_come_and_a_wheel_is_pulled()
    {
        await using var kitchen = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync(new Setting { Open = false }, Invited);
        var eye = new Eye();
        var host = await table.MakerAsync(kitchen);

        await host.GotoAsync(table.Of(""));
        await host.PressAsync("Bruno");
        await host.ChooseAsync("Corrieglen");
        await eye.BothAsync(host, "what Bruno may not have");
        await host.PressAsync("Keep this plate");
        await Expect(host.Row("Bruno")).ToContainTextAsync("one sample left off");

        await host.GotoAsync(table.Of("plates"));
        await host.SeesHeadingAsync("14 plates, up to 4 samples each.");
        await Expect(CodesOf(host, "Bruno")).ToHaveCountAsync(3);
        await Expect(CodesOf(host, "Ada")).ToHaveCountAsync(4);
        await host.DoesNotSeeAsync("Corrieglen");
        foreach (var away in Invited.Except(Here)) await host.GetByRole(AriaRole.Checkbox, new() { Name = away, Exact = true }).TapAsync();
        await eye.BothAsync(host, "who is here");
        await host.PressAsync("Deal the plates to these");
        await host.SeesHeadingAsync("6 plates, up to 4 samples each.");
        await Expect(CodesOf(host, "Bruno")).ToHaveCountAsync(3);
        await Expect(CodesOf(host, "Cleo")).ToHaveCountAsync(0);
        await host.SeesAsync("6 plates dealt");
        await Expect(host.GetByRole(AriaRole.Link, new() { Name = "What 6 tasters can show" })).ToBeVisibleAsync();
        await eye.BothAsync(host, "dealt to six");

        await host.GotoAsync(table.Of(""));
        await host.PressAsync("Birkmoor W2");
        await host.Field("Why").FillAsync("smells of ammonia");
        await host.Field("Who decided").FillAsync("Ana");
        await host.ChooseAsync("goes to Amberholt, served a second time as a hidden repeat");
        await eye.BothAsync(host, "a wheel to be pulled");
        await host.PressAsync("Withdraw Birkmoor");
        await host.SeesHeadingAsync("6 plates, up to 4 samples each.");
        await Expect(CodesOf(host, "Ada")).ToHaveCountAsync(4);
        await Expect(CodesOf(host, "Bruno")).ToHaveCountAsync(3);
        await Expect(host.GetByText(table.CodeOf("Birkmoor"), new() { Exact = true })).ToHaveCountAsync(0);
        await eye.BothAsync(host, "plates after a wheel was pulled");
        await host.PressAsync("Cards for the plates");
        await host.PressAsync("Only the 6 that changed with the last key");
        foreach (var name in Here) await host.SeesHeadingAsync(name);
        await eye.BothAsync(host, "cards that changed");

        await host.GotoAsync(table.Of("plates"));
        await host.PressAsync("Open the tasting");
        await host.SeesHeadingAsync("0 ballots in, 6 still at the table.");
        // A guest without script sees no gap, and Bruno a plate of his own.
        await using var plain = await chromium.PhoneAsync(script: false);
        var guest = await plain.NewPageAsync();
        await guest.GotoAsync(table.LinkOf("Ada"));
        await guest.SeesAsync("Four small cheeses, one at a time.");
        await guest.GotoAsync(table.LinkOf("Bruno"));
        await guest.SeesAsync("Three small cheeses, one at a time.");

        await host.PressAsync("Close the ballots");
        await host.PressAsync("Open the key and read the verdict");
        await host.SeesAsync("smells of ammonia. Withdrawn before the first plate.");
        await eye.BothAsync(host, "verdict with a pulled wheel");
        Assert.Empty(table.Site.Failures);
        eye.FoundNothing();
    }

    private static ILocator CodesOf(IPage host, string taster) =>
        host.GetByRole(AriaRole.Region, new() { Name = "Serving plan" }).GetByRole(AriaRole.Row).Filter(new() { Has = host.GetByRole(AriaRole.Rowheader, new() { NameRegex = Hand.Like($"^{taster}\\b") }) }).GetByRole(AriaRole.Cell);
}
