using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Ballots;

/// <summary>Moments of an afternoon at which a ballot could be lost, bent or forced, on a phone with script and on a laptop without.</summary>
public sealed class MomentsTests(Chromium chromium)
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_guest_leaves_after_two_samples_and_what_they_said_stays_as_it_is(bool phone)
    {
        await using var context = await DeviceAsync(phone);
        await using var house = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync("Ada", "Bruno", "Cleo");
        var ada = await new TasterPhone(await context.NewPageAsync()).OpenAsync(table.LinkOf("Ada"));
        await ada.Page.PressAsync("To the first sample");
        await ada.SampleAsync(1, 4);
        await ada.AnswerAsync(8);
        await ada.SampleAsync(2, 4);
        await ada.AnswerAsync(3);
        await ada.SampleAsync(3, 4);

        var maker = await table.MakerAsync(house);
        await maker.GotoAsync(table.Of("board"));
        await Expect(maker.Row("Ada")).ToContainTextAsync("2 of 4");
        await maker.SeesAsync("Ada: 2 of 4 samples, not sent.");
        await maker.PressAsync("Close the ballots");
        await maker.SeesHeadingAsync("The ballots are closed. Shall the key be opened?");
        await ada.Page.GotoAsync(table.LinkOf("Ada"));
        await ada.Page.SeesAsync("your likings count, your places do not.");
        await ada.Page.DoesNotSeeAsync("1st");
        await maker.PressAsync("Open the key and read the verdict");
        await maker.SeesAsync("not sent: likings kept, no places");
        Assert.Empty(table.Site.Failures);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_phone_dies_in_the_middle_and_the_ballot_goes_on_elsewhere_or_on_paper(bool phone)
    {
        await using var table = await Table.SetAsync("Ada", "Bruno");
        await using (var dying = await DeviceAsync(phone))
        {
            var first = await new TasterPhone(await dying.NewPageAsync()).OpenAsync(table.LinkOf("Ada"));
            await first.Page.PressAsync("To the first sample");
            await first.SampleAsync(1, 4);
            await first.AnswerAsync(8, "hay");
            await first.SampleAsync(2, 4);
            await first.AnswerAsync(3);
            await first.SampleAsync(3, 4);
        }

        await using var house = await chromium.PhoneAsync();
        var maker = await table.MakerAsync(house);
        await maker.GotoAsync(table.Of("paper"));
        await maker.GetByRole(AriaRole.Link, new() { Name = "print with the answers so far of Ada" }).TapAsync();
        await maker.SeesAsync("What Ada said so far is printed. Go on from there.");
        await Expect(maker.Locator(".paper-ticked")).ToHaveCountAsync(2);
        await maker.SeesAsync("hay");

        await maker.GotoAsync(table.Of("plates"));
        var typed = await maker.Row("Ada").Last.GetByRole(AriaRole.Cell).First.InnerTextAsync();
        await using var borrowed = await DeviceAsync(phone);
        var second = new TasterPhone(await borrowed.NewPageAsync());
        await second.Page.GotoAsync($"{table.Site.Address}/c");
        await second.Page.Field("Code").FillAsync(typed);
        await second.Page.PressAsync("Open my ballot");
        await second.SampleAsync(3, 4);
        await second.AnswerAsync(6);
        await second.SampleAsync(4, 4);
        await second.AnswerAsync(5);
        await second.PlaceAsync(table.PlateOf("Ada"));
        await second.LookOverAsync();
        await second.SendAsync("Ada");
        Assert.Empty(table.Site.Failures);
    }

    [Fact]
    public async Task The_Wi_Fi_drops_and_the_laptop_restarts_and_nothing_is_sent_twice_or_lost()
    {
        await using var context = await chromium.PhoneAsync();
        await using var house = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync(new Setting { Killable = true }, "Ada", "Bruno");
        var ada = await new TasterPhone(await context.NewPageAsync()).OpenAsync(table.LinkOf("Ada"));
        await ada.Page.PressAsync("To the first sample");
        await ada.AnswerAllAsync(1, 4, _ => 6);
        await ada.PlaceAsync(table.PlateOf("Ada"));
        await ada.LookOverAsync();
        await table.Process.KillAsync();
        await ada.Page.PressAsync("Send my ballot");
        await ada.Page.SeesAsync("The Wi-Fi is away. Your answers are kept on this phone and go out by themselves.");
        await table.Process.StartAgainAsync();
        await ada.Page.SeesHeadingAsync("Thank you, Ada. Your ballot is safe with the host.");

        var maker = await table.MakerAsync(house);
        await maker.GotoAsync(table.Of("board"));
        await maker.SeesHeadingAsync("One ballot in, 1 still at the table.");
        await maker.SeesAsync("Bruno: nothing has come in.");
        await Expect(maker.Row("Ada")).Not.ToContainTextAsync("two versions");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_ballot_looks_upside_down_and_the_taster_is_asked_once_and_never_stopped(bool phone)
    {
        await using var context = await DeviceAsync(phone);
        await using var table = await Table.SetAsync("Ada", "Bruno");
        var eye = new Eye();
        var plate = table.PlateOf("Ada");
        var ada = await new TasterPhone(await context.NewPageAsync()).OpenAsync(table.LinkOf("Ada"));
        await ada.Page.PressAsync("To the first sample");
        await ada.AnswerAllAsync(1, 4, code => 9 - (2 * plate.ToList().IndexOf(code)));
        await ada.PlaceAsync([.. plate.Reverse()]);
        await ada.LookOverAsync();
        await ada.Page.SeesAsync($"You liked {plate[0]} best and placed it last. Is that right?");
        if (phone) await eye.BothAsync(ada.Page, "upside down");
        await ada.SendAsync("Ada");
        if (phone) eye.FoundNothing();
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_child_wants_to_vote_and_gets_a_ballot_of_their_own(bool phone)
    {
        await using var context = await DeviceAsync(phone);
        await using var house = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync("Ada", "Tom");
        var eye = new Eye();
        var tom = new TasterPhone(await context.NewPageAsync());
        await tom.Page.GotoAsync(table.LinkOf("Tom"));
        await tom.Page.ChooseAsync("I am under 12, and a parent said yes");
        await tom.Page.PressAsync("To the first sample");
        for (var sample = 1; sample <= 4; sample++)
        {
            await tom.SampleAsync(sample, 4);
            await Expect(tom.Page.GetByRole(AriaRole.Radio)).ToHaveCountAsync(5);
            if (sample == 1 && phone) await eye.BothAsync(tom.Page, "junior sample");
            await tom.Page.ChooseAsync(sample == 1 ? "I love it" : "it is all right");
            await tom.Page.PressAsync("Keep, and go on");
        }

        await tom.Page.SeesAsync("Which one would you eat again first?");
        await tom.PlaceAsync(table.PlateOf("Tom"));
        await tom.LookOverAsync();
        await tom.Page.SeesAsync("I love it");
        await tom.SendAsync("Tom");
        var maker = await table.MakerAsync(house);
        await maker.GotoAsync(table.Of("board"));
        await Expect(maker.Row("Tom")).ToContainTextAsync("junior");
        if (phone) eye.FoundNothing();
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_guest_wants_to_change_her_vote_after_the_reveal_and_is_thanked(bool phone)
    {
        await using var context = await DeviceAsync(phone);
        await using var house = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync("Ada", "Bruno");
        var eye = new Eye();
        var ada = await new TasterPhone(await context.NewPageAsync()).OpenAsync(table.LinkOf("Ada"));
        await ada.Page.PressAsync("To the first sample");
        await ada.AnswerAllAsync(1, 4, _ => 6);
        await ada.PlaceAsync(table.PlateOf("Ada"));
        await ada.LookOverAsync();
        await ada.SendAsync("Ada");
        var maker = await table.MakerAsync(house);
        await maker.GotoAsync(table.Of("board"));
        await maker.PressAsync("Close the ballots");
        await maker.PressAsync("Open the key and read the verdict");
        await maker.SeesHeadingAsync("Four tommes");

        await ada.Page.GotoAsync(table.LinkOf("Ada"));
        await ada.Page.SeesHeadingAsync("The key is open, Ada.");
        var before = await ada.Page.GetByRole(AriaRole.Listitem).AllInnerTextsAsync();
        await ada.Page.Field("Something to add").FillAsync("I would put the last one first now.");
        await ada.Page.GetByRole(AriaRole.Button, new() { Name = "Keep this", Exact = true }).TapAsync();
        await ada.Page.SeesAsync("Thank you. It is kept as said after the reveal; your ballot does not move.");
        Assert.Equal(before, await ada.Page.GetByRole(AriaRole.Listitem).AllInnerTextsAsync());
        if (phone) await eye.BothAsync(ada.Page, "after the reveal");
        await maker.GotoAsync(table.Of("verdict"));
        await maker.UnfoldAsync("What was said once the key was open (1)");
        await maker.SeesAsync("I would put the last one first now.");
        if (phone) eye.FoundNothing();
    }

    private Task<IBrowserContext> DeviceAsync(bool phone) => phone ? chromium.PhoneAsync() : chromium.LaptopAsync(script: false);
}
