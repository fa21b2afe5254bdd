using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Ballots;

/// <summary>One link on two phones: nothing is lost, and where both send, the taster says which counts.</summary>
public sealed class TwoPhonesTests(Chromium chromium)
{
    [Fact]
    public async Task Two_phones_on_one_link_fill_in_one_ballot()
    {
        await using var first = await chromium.PhoneAsync();
        await using var second = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync("Ada");
        var one = await new TasterPhone(await first.NewPageAsync()).OpenAsync(table.LinkOf("Ada"));
        await one.Page.PressAsync("To the first sample");
        var other = await new TasterPhone(await second.NewPageAsync()).OpenAsync(table.LinkOf("Ada"));
        await other.Page.PressAsync("To the first sample");

        // Both stand at the first sample; the second phone says something of another one meanwhile.
        await one.AnswerAsync(9, "from the first phone");
        await one.SampleAsync(2, 4);
        await other.Page.GotoAsync($"{table.LinkOf("Ada")}/sample/3");
        await other.AnswerAsync(3, "from the second phone");
        await other.SampleAsync(4, 4);
        await one.AnswerAsync(7);
        await one.SampleAsync(3, 4);
        await one.Page.SeesAsync($"You said: {TasterPhone.Liking(3)}");
        await Expect(one.Page.Field("In a word")).ToHaveValueAsync("from the second phone");
        await one.Page.GotoAsync($"{table.LinkOf("Ada")}/sample/1");
        await one.Page.SeesAsync($"You said: {TasterPhone.Liking(9)}");
    }

    [Fact]
    public async Task A_send_that_began_from_an_older_ballot_shows_both_and_the_taster_chooses()
    {
        await using var first = await chromium.PhoneAsync();
        await using var second = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync("Cleo");
        var eye = new Eye();
        var plate = table.PlateOf("Cleo");
        var one = await new TasterPhone(await first.NewPageAsync()).OpenAsync(table.LinkOf("Cleo"));
        await one.Page.PressAsync("To the first sample");
        await one.AnswerAllAsync(1, 4, _ => 6);
        await one.PlaceAsync(plate);
        await one.LookOverAsync();

        var other = await new TasterPhone(await second.NewPageAsync()).OpenAsync($"{table.LinkOf("Cleo")}/places");
        await other.MoveUpUntilAsync([.. plate.Reverse()]);
        await other.LookOverAsync();
        await other.SendAsync("Cleo");

        await one.Page.PressAsync("Send my ballot");
        await one.Page.SeesHeadingAsync("Two ballots, one taster");
        await one.Page.SeesAsync("Both are kept. Which one shall count?");
        var versions = one.Page.GetByRole(AriaRole.List);
        await Expect(versions.Nth(0).GetByRole(AriaRole.Listitem).First).ToContainTextAsync(plate[^1]);
        await Expect(versions.Nth(1).GetByRole(AriaRole.Listitem).First).ToContainTextAsync(plate[0]);
        await eye.PhoneAsync(one.Page, "two ballots");
        await one.Page.GetByRole(AriaRole.Button, new() { NameRegex = Hand.Like("^Let this one count: The one that came later") }).TapAsync();
        await one.Page.SeesHeadingAsync("Thank you, Cleo. Your ballot is safe with the host.");
        await Expect(one.Page.GetByRole(AriaRole.Listitem).First).ToContainTextAsync(plate[0]);
        eye.FoundNothing();
    }
}
