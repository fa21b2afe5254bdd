using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Walk;

/// <summary>The ballots after the withdrawal: without script, revised after sending, from paper.</summary>
internal static class MoreBallots
{
    /// <summary>Bruno comes by the typed code, on a phone that runs no script.</summary>
    public static async Task BrunoWithoutScriptAsync(this Afternoon day)
    {
        string[] order = ["Amberholt", Afternoon.Repeated, Afternoon.Again, "Birkmoor", "Dunfennel"];
        var page = await day.NewPhoneAsync(script: false);
        await page.GotoAsync(day.Site.Address + "/c");
        await page.Field("Code").FillAsync("BCD");
        await page.PressAsync("Open my ballot");
        await page.SeesAsync("The code has six letters; this one has 3.");
        await page.Field("Code").FillAsync(day.Doors["Bruno"].Typed.ToLowerInvariant());
        await page.PressAsync("Open my ballot");
        await page.SeesHeadingAsync("Welcome, Bruno.");
        await page.SeesAsync("Five small cheeses, one at a time.");
        await page.PressAsync("To the first sample");
        var bruno = new TasterPhone(page);
        await bruno.AnswerAllAsync(1, 5, day.LikingBy(order));
        // Birkmoor first goes too high and is brought down by the keys.
        await bruno.PlaceAsync(day.Codes("Birkmoor", "Amberholt", Afternoon.Repeated, Afternoon.Again, "Dunfennel"));
        await bruno.MoveUpUntilAsync(day.Codes(order));
        await bruno.LookOverAsync();
        await bruno.SendAsync("Bruno");
        day.Sent["Bruno"] = order;

        var script = await day.NewPhoneAsync();
        await script.GotoAsync(day.Site.Address + "/c");
        await script.Field("Code").FillAsync("BCDFGH");
        await script.PressAsync("Open my ballot");
        await script.SeesAsync("No card with this code is open now.");
        await day.Eye.PhoneAsync(script, "a typed code refused");
    }

    /// <summary>Dora sends, thinks again, and sends once more.</summary>
    public static async Task DoraRevisesAsync(this Afternoon day)
    {
        string[] first = ["Dunfennel", "Amberholt", Afternoon.Repeated, Afternoon.Again, "Birkmoor"];
        string[] second = ["Birkmoor", "Amberholt", Afternoon.Repeated, Afternoon.Again, "Dunfennel"];
        var dora = await day.TakesUpPhoneAsync("Dora");
        var page = dora.Page;
        await page.PressAsync("To the first sample");
        await dora.AnswerAllAsync(1, 5, day.LikingBy(first));
        await dora.PlaceAsync(day.Codes(first));
        await dora.LookOverAsync();
        await dora.SendAsync("Dora");

        await page.PressAsync("Change something");
        await page.PressAsync("Change the places");
        await page.SeesHeadingAsync("Now put them in places");
        await dora.MoveUpUntilAsync(day.Codes(second));
        await dora.LookOverAsync();
        // She liked one best and now puts it last: the page asks once, and lets her.
        await page.SeesAsync($"You liked {day.CodeOf("Dunfennel")} best and placed it last. Is that right?");
        await day.Eye.PhoneAsync(page, "liked best and placed last");
        await page.GotoAsync(day.Doors["Dora"].Link);
        await page.SeesAsync("did not send it again. What you sent at");
        await day.Eye.PhoneAsync(page, "changed and not sent again");
        await page.PressAsync("Look it over and send");
        await dora.SendAsync("Dora");
        day.Sent["Dora"] = second;
    }

    /// <summary>Emil wrote on paper; the host types his sheet in.</summary>
    public static async Task EmilOnPaperAsync(this Afternoon day)
    {
        string[] order = ["Amberholt", "Birkmoor", "Dunfennel", Afternoon.Repeated, Afternoon.Again];
        var maker = day.Maker;
        await day.LookAtBoardAsync("4 ballots in, 1 still at the table, 1 has left.");
        await maker.PressAsync("type in from paper for Emil");
        await maker.SeesHeadingAsync("Emil’s paper ballot");
        await day.Eye.BothAsync(maker, "a paper ballot typed in");
        foreach (var (place, code) in day.Codes(order).Index())
        {
            var lines = maker.GetByRole(AriaRole.Group, new() { Name = code });
            await lines.Field("Liking").SelectOptionAsync(new SelectOptionValue { Value = $"{9 - place}" });
            await lines.Field("Place").FillAsync(place == 4 ? "9" : $"{place + 1}");
        }

        var last = day.CodeOf(order[4]);
        await maker.PressAsync("Save Emil’s ballot");
        await maker.SeesAsync($"The place of {last} is 9, but there are 5 samples: write 1 to 5.");
        await day.Eye.BothAsync(maker, "a paper ballot refused");
        await maker.GetByRole(AriaRole.Group, new() { Name = last }).Field("Place").FillAsync("5");
        await maker.PressAsync("Save Emil’s ballot");
        await maker.SeesAsync("Emil’s ballot is in.");
        await Expect(maker.Row("Emil")).ToContainTextAsync("sent, from paper");
        await day.Eye.BothAsync(maker, "paper ballots in");
        day.Sent["Emil"] = order;
    }
}
