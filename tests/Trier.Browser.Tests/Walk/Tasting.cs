using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Walk;

/// <summary>The ballots before and around the withdrawal: by tapping, partial, and half filled while the program is killed.</summary>
internal static class Tasting
{
    /// <summary>Ada gives a whole ballot by tapping.</summary>
    public static async Task AdaTapsAsync(this Afternoon day)
    {
        string[] order = ["Amberholt", "Birkmoor", Afternoon.Withdrawn, Afternoon.Repeated, Afternoon.Again, "Dunfennel"];
        var ada = await day.TakesUpPhoneAsync("Ada");
        var page = ada.Page;
        await page.SeesAsync("Six small cheeses, one at a time. There is no right answer: only what you like.");
        await page.SeesAsync("In at least one:");
        await page.SeesAsync("Some of this milk was raw, or is not written down as pasteurised.");
        foreach (var wheel in Afternoon.Wheels) await page.DoesNotSeeAsync(wheel);
        await day.Eye.PhoneAsync(page, "welcome");
        await page.ChooseAsync("stronger tasting");
        await page.PressAsync("To the first sample");

        var first = await ada.SampleAsync(1, 6);
        await day.Eye.PhoneAsync(page, "a sample");
        await ada.AnswerAsync(day.LikingBy(order)(first), "butter and hay");
        await ada.SampleAsync(2, 6);
        await page.PressAsync("One sample back");
        await page.SeesAsync($"You said: {TasterPhone.Liking(day.LikingBy(order)(first))}");
        await page.SeesAsync("Your first answer is kept as it is, so that later samples do not colour it.");
        await day.Eye.PhoneAsync(page, "a sample answered");
        await page.PressAsync("Correct a slip");
        await page.SeesAsync("Both answers are kept; the corrected one counts.");
        await day.Eye.PhoneAsync(page, "a slip");
        await page.PressAsync("Keep, and go on");
        await ada.AnswerAllAsync(2, 6, day.LikingBy(order));

        await day.Eye.PhoneAsync(page, "places");
        await ada.PlaceAsync(day.Codes(order.Take(3)));
        await page.SeesAsync("Three more to place");
        await day.Eye.PhoneAsync(page, "places half done");
        await ada.PlaceAsync(day.Codes(order.Skip(3)), after: 3);
        await day.Eye.PhoneAsync(page, "places done");
        await ada.LookOverAsync();
        await day.Eye.PhoneAsync(page, "look it over");
        await ada.SendAsync("Ada");
        await page.SeesAsync("The key is still sealed.");
        await day.Eye.PhoneAsync(page, "sent");
        day.HadIt.Add("Ada");
        day.Sent["Ada"] = [.. order.Where(wheel => wheel != Afternoon.Withdrawn)];

        await day.LookAtBoardAsync("One ballot in, 5 still at the table.");
        await day.BoardSaysAsync("Ada", "6 of 6");
        await day.BoardSaysAsync("Ada", "in, ");
    }

    /// <summary>Cleo tastes two samples and has to leave.</summary>
    public static async Task CleoLeavesAsync(this Afternoon day)
    {
        var cleo = await day.TakesUpPhoneAsync("Cleo");
        await cleo.Page.PressAsync("To the first sample");
        for (var number = 1; number <= 2; number++)
        {
            var code = await cleo.SampleAsync(number, 6);
            if (day.Key[code] == Afternoon.Withdrawn) day.HadIt.Add("Cleo");
            await cleo.AnswerAsync(7);
        }

        await cleo.SampleAsync(3, 6);
        await day.LookAtBoardAsync("One ballot in, 5 still at the table.");
        await day.BoardSaysAsync("Cleo", "2 of 6");
        await day.BoardSaysAsync("Cleo", "tasting, saved");
        await day.Maker.UnfoldAsync("Somebody leaves");
        await day.Maker.Field("Who?").Filter(new() { Visible = true }).SelectOptionAsync(new SelectOptionValue { Label = "Cleo" });
        await day.Maker.PressAsync("Note the time");
        await day.Maker.SeesAsync("Cleo left. What was said is kept.");
        await day.BoardSaysAsync("Cleo", "left ");
        await day.Eye.BothAsync(day.Maker, "the board with a note");
    }

    /// <summary>Fay has two samples in and a third half filled when the program dies; it starts again, and nothing is missing.</summary>
    public static async Task<TasterPhone> TheProgramDiesAsync(this Afternoon day)
    {
        var fay = await day.TakesUpPhoneAsync("Fay");
        var page = fay.Page;
        await page.PressAsync("To the first sample");
        for (var number = 1; number <= 3; number++)
        {
            var code = await fay.SampleAsync(number, 6);
            if (day.Key[code] == Afternoon.Withdrawn) day.HadIt.Add("Fay");
            var liking = day.LikingBy(FaysOrder)(code);
            if (number < 3) await fay.AnswerAsync(liking);
            else await fay.FillInAsync(liking, "smells of walnut");
        }

        await page.SeesAsync("Kept on this phone.");
        await day.Site.KillAsync();
        await page.PressAsync("Keep, and go on");
        await page.SeesAsync("The Wi-Fi is away. Your answers are kept on this phone and go out by themselves.");
        await day.Eye.PhoneAsync(page, "the program is dead");
        await day.Site.StartAgainAsync();
        await fay.SampleAsync(4, 6);
        await page.PressAsync("One sample back");
        await Expect(page.Field("In a word")).ToHaveValueAsync("smells of walnut");
        await page.PressAsync("Keep, and go on");

        await fay.SampleAsync(4, 6);
        await page.Field("In a word").FillAsync("not yet sure");
        await page.SeesAsync("Kept on this phone.");
        await page.ReloadAsync();
        await Expect(page.Field("In a word")).ToHaveValueAsync("not yet sure");

        // The maker's sign-in outlives the program too.
        await day.LookAtBoardAsync("One ballot in, 4 still at the table, 1 has left.");
        await day.BoardSaysAsync("Ada", "6 of 6");
        await day.BoardSaysAsync("Cleo", "2 of 6");
        await day.BoardSaysAsync("Fay", "3 of 6");
        return fay;
    }

    /// <summary>A wheel is taken out with guests at the table.</summary>
    public static async Task AWheelIsWithdrawnAsync(this Afternoon day)
    {
        var maker = day.Maker;
        await maker.UnfoldAsync("Withdraw a wheel");
        await maker.PressAsync("the wheels");
        await maker.PressAsync($"{Afternoon.Withdrawn} W5");
        await maker.SeesHeadingAsync(Afternoon.Withdrawn);
        await maker.PressAsync($"Withdraw {Afternoon.Withdrawn}");
        await maker.SeesAsync("Say why the wheel is withdrawn: its record stays, and the verdict tells it.");
        await day.Eye.BothAsync(maker, "a withdrawal refused");
        await maker.Field("Why").FillAsync(Afternoon.Reason);
        await maker.PressAsync($"Withdraw {Afternoon.Withdrawn}");
        await maker.SeesHeadingAsync("One ballot in, 4 still at the table, 1 has left.");
        await maker.SeesAsync($"Take sample {day.CodeOf(Afternoon.Withdrawn)} off every plate. The ballots keep their order of the others.");
        await day.BoardSaysAsync("Ada", "5 of 5");
        await day.Eye.BothAsync(maker, "the board after a withdrawal");
    }

    /// <summary>Fay goes on with what is left on her plate.</summary>
    public static async Task FayGoesOnAsync(this Afternoon day, TasterPhone fay)
    {
        await fay.OpenAsync(day.Doors["Fay"].Link);
        var heading = fay.Page.GetByRole(AriaRole.Heading, new() { NameRegex = Hand.Like("^Sample [0-9] of 5, code [0-9]{3}$") });
        await Expect(heading).ToBeVisibleAsync();
        var from = (await heading.InnerTextAsync())["Sample ".Length] - '0';
        await fay.AnswerAllAsync(from, 5, day.LikingBy(FaysOrder));
        await fay.PlaceAsync(day.Codes(FaysOrder));
        await fay.LookOverAsync();
        await fay.SendAsync("Fay");
        day.Sent["Fay"] = FaysOrder;
    }

    private static readonly string[] FaysOrder = [Afternoon.Repeated, Afternoon.Again, "Amberholt", "Birkmoor", "Dunfennel"];
}
