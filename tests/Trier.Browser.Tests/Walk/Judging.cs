using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Walk;

/// <summary>The close, a send after it, the reveal, the verdict.</summary>
internal static class Judging
{
    /// <summary>The wheels that stand, without the second serving.</summary>
    private static readonly string[] Standing = ["Amberholt", "Birkmoor", Afternoon.Repeated, "Dunfennel"];

    public static async Task ClosesAsync(this Afternoon day)
    {
        await day.LookAtBoardAsync("5 ballots in, 0 still at the table, 1 has left.");
        await day.Maker.SeesAsync("1 of 6 has not sent yet.");
        await day.Maker.PressAsync("Close the ballots");
        await Expect(day.Maker.GetByRole(AriaRole.Heading, new() { NameRegex = Hand.Like("^Closed at [0-9]{2}:[0-9]{2}: 5 ballots in\\.$") })).ToBeVisibleAsync();
        await day.Maker.SeesHeadingAsync("The ballots are closed. Shall the key be opened?");
        await day.Eye.BothAsync(day.Maker, "the board closed");
    }

    /// <summary>Cleo sends from home: kept, said so, and in no count.</summary>
    public static async Task CleoIsLateAsync(this Afternoon day)
    {
        var cleo = await day.TakesUpPhoneAsync("Cleo");
        var page = cleo.Page;
        await page.SeesHeadingAsync("The ballots are closed, Cleo.");
        await page.SeesAsync("You did not send, but what you saved by");
        await day.Eye.PhoneAsync(page, "closed");
        await page.PressAsync("Send it all the same");
        await page.SeesAsync("The ballots are closed. What you do here is kept as arrived after the close.");
        await day.Eye.PhoneAsync(page, "look it over after the close");
        await page.PressAsync("Send my ballot");
        await page.SeesAsync("came after the close. It is kept. It counts only if the host lets it in before the key is opened, and the verdict says so.");
        await day.Eye.PhoneAsync(page, "sent after the close");

        await day.Maker.ReloadAsync();
        await day.Maker.SeesAsync("A ballot of Cleo arrived at");
        await day.Maker.SeesAsync("kept; counts only if you let it in");
        await day.Eye.BothAsync(day.Maker, "the board with a late ballot");
    }

    public static async Task RevealsAsync(this Afternoon day)
    {
        var maker = day.Maker;
        await maker.PressAsync("Open the key and read the verdict");
        await maker.SeesHeadingAsync(Afternoon.Title);
        // The page shows itself anew once all is worked out; nobody can be pointed at a page that is about to go.
        await Expect(maker.GetByText("are still being worked out")).ToHaveCountAsync(0);
        await maker.SeesAsync("Amberholt is our best bet: nobody put it last and it has the best average place.");
        await maker.SeesAsync("5 of 6 blind tasters placed all 4 wheels and count here, by average place, the rule fixed beforehand; each is one voice, which makes 5.");
        await maker.SeesAsync("One wheel of each recipe cannot tell whether the recipe or the day did it.");
        var had = day.HadIt.Order(StringComparer.Ordinal).ToList();
        var names = had.Count == 1 ? had[0] : $"{string.Join(", ", had.SkipLast(1))} and {had[^1]}";
        await maker.SeesAsync($"with guests at the table ({Afternoon.Reason}), so nothing is said about it. {names} had already tasted it.");
        await maker.SeesAsync("after the close: it is kept and does not count.");
        await day.Eye.BothAsync(maker, "the verdict");
    }

    /// <summary>The tally on the page and in the file is the one that the ballots give.</summary>
    public static async Task TheTallyHoldsAsync(this Afternoon day)
    {
        var maker = day.Maker;
        var table = maker.GetByRole(AriaRole.Region, new() { Name = "The tally", Exact = true });
        var file = await maker.RunAndWaitForDownloadAsync(() => maker.PressAsync("Every number (JSON)"));
        await using var stream = await file.CreateReadStreamAsync();
        var json = (await JsonDocument.ParseAsync(stream)).RootElement;
        Assert.Equal(5, day.Sent.Count);
        Assert.Equal(4, json.GetProperty("tally").GetArrayLength());
        foreach (var wheel in Standing)
        {
            var places = day.Sent.Values.Select(order => 1 + Array.IndexOf([.. order.Where(other => other != Afternoon.Again)], wheel)).ToList();
            var (firsts, lasts, average) = (places.Count(place => place == 1), places.Count(place => place == Standing.Length), places.Average());
            var cells = table.GetByRole(AriaRole.Row).Filter(new() { HasText = wheel }).GetByRole(AriaRole.Cell);
            await Expect(cells.Nth(0)).ToHaveTextAsync($"{firsts}");
            await Expect(cells.Nth(1)).ToHaveTextAsync($"{lasts}");
            await Expect(cells.Nth(2)).ToHaveTextAsync(average.ToString("0.00", CultureInfo.InvariantCulture).Replace('.', ','));
            var id = $"W{1 + Array.IndexOf(Afternoon.Wheels, wheel)}";
            var line = json.GetProperty("tally").EnumerateArray().Single(item => item.GetProperty("id").GetString() == id);
            Assert.Equal(firsts, line.GetProperty("firsts").GetInt32());
            Assert.Equal(lasts, line.GetProperty("lasts").GetInt32());
            Assert.Equal(average, line.GetProperty("averagePlace").GetDouble(), 12);
        }

        await Expect(table).Not.ToContainTextAsync(Afternoon.Withdrawn);
    }

    public static async Task EverybodyReadsAsync(this Afternoon day)
    {
        var ada = await day.TakesUpPhoneAsync("Ada");
        await ada.Page.SeesHeadingAsync("The key is open, Ada.");
        foreach (var wheel in Afternoon.Wheels) await ada.Page.SeesAsync(wheel);
        await ada.Page.SeesAsync("served to you twice, here for the second time");
        await day.Eye.PhoneAsync(ada.Page, "the key is open");

        var maker = day.Maker;
        await day.LookAtBoardAsync("5 ballots came in.");
        await day.Eye.BothAsync(maker, "the board revealed");
        await maker.GotoAsync(day.Site.Address + day.Trial);
        await maker.SeesHeadingAsync("The key is open.");
        await Expect(maker.Row(Afternoon.Withdrawn)).ToContainTextAsync(Afternoon.Reason);
        await day.Eye.BothAsync(maker, "the trial revealed");
        await maker.GotoAsync($"{day.Site.Address}{day.Trial}/plates");
        await maker.SeesHeadingAsync("The serving plan.");
        await maker.SeesAsync("Of the plates as they are now, every sample is served in every position");
        await day.Eye.BothAsync(maker, "the serving plan revealed");
        await maker.GotoAsync(day.Site.Address);
        await maker.SeesHeadingAsync("One trial.");
        await Expect(maker.Row(Afternoon.Title)).ToContainTextAsync("key opened");
        await day.Eye.BothAsync(maker, "your trials");
    }
}
