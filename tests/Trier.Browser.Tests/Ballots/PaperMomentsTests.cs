using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using Trier.Trials.Plans;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Ballots;

/// <summary>A paper ballot on its way into the record, by keyboard alone.</summary>
public sealed class PaperMomentsTests(Chromium chromium)
{
    /// <summary>Seconds an average typist needs for one key: 0.28, the keystroke-level model (Card, Moran and Newell 1980; from memory, unverified).</summary>
    private const double SecondsAKey = 0.28;

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task The_aunt_writes_two_ones_and_a_digit_nobody_can_read_and_nothing_is_guessed(bool phone)
    {
        await using var house = phone ? await chromium.PhoneAsync() : await chromium.LaptopAsync(script: false);
        await using var table = await Table.SetAsync("Amélia", "Bruno");
        var plate = table.PlateOf("Amélia");
        var maker = await table.MakerAsync(house);
        await maker.GotoAsync(table.Of("paper"));
        await maker.PressAsync("Amélia");
        await maker.SeesAsync("Where a digit cannot be read, ask Amélia; do not guess.");
        foreach (var (code, place) in plate.Zip(["1", "1", "1/7 second stroke", "4"])) await maker.Locator($"#place-{code}").FillAsync(place);
        await maker.PressAsync("Save Amélia’s ballot");
        await maker.SeesAsync("Amélia’s ballot is in.");

        await maker.PressAsync("Amélia");
        await Expect(maker.Locator($"#place-{plate[2]}")).ToHaveValueAsync("1/7 second stroke");
        await maker.GotoAsync(table.Of("board"));
        await maker.PressAsync("Close the ballots");
        await maker.PressAsync("Open the key and read the verdict");
        await maker.SeesAsync("could not be read for certain");
    }

    [Fact]
    public async Task A_sheet_of_four_is_typed_in_by_keyboard_alone_in_under_20_seconds()
    {
        await using var house = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync("Amélia", "Bruno");
        var eye = new Eye();
        var plate = table.PlateOf("Amélia");
        var maker = await table.MakerAsync(house);
        await maker.GotoAsync(table.Of("paper"));
        await maker.PressAsync("Amélia");
        await maker.SeesHeadingAsync("Amélia’s paper ballot");
        await eye.BothAsync(maker, "typing in");
        await maker.Locator($"#liking-{plate[0]}").FocusAsync();
        var keys = 0;
        async Task Press(string key)
        {
            await maker.Keyboard.PressAsync(key);
            keys++;
        }

        for (var i = 0; i < plate.Count; i++)
        {
            foreach (var key in new[] { $"{9 - i}", "Tab", $"{i + 1}", "Tab", "Tab" }) await Press(key);
        }

        await maker.Keyboard.PressAsync("Shift+Tab");
        await Press("Enter");
        await maker.SeesAsync("Amélia’s ballot is in.");
        Assert.InRange(keys * SecondsAKey, 0, 20);
        await maker.PressAsync("Amélia");
        for (var i = 0; i < plate.Count; i++)
        {
            await Expect(maker.Locator($"#liking-{plate[i]}")).ToHaveValueAsync($"{9 - i}");
            await Expect(maker.Locator($"#place-{plate[i]}")).ToHaveValueAsync($"{i + 1}");
        }

        await maker.GotoAsync(table.Of("paper"));
        await eye.BothAsync(maker, "paper list");
        eye.FoundNothing();
    }

    [Fact]
    public async Task Two_entries_that_differ_are_laid_side_by_side_until_each_difference_is_settled()
    {
        await using var house = await chromium.PhoneAsync();
        await using var table = await Table.SetAsync(BallotPlan.Of(true, true, ["salt", "sourness"], ["nutty", "sharp", "milky"], again: true).Value, "Amélia", "Bruno");
        var eye = new Eye();
        var plate = table.PlateOf("Amélia");
        var maker = await table.MakerAsync(house);
        await maker.GotoAsync(table.Of("paper"));
        await maker.PressAsync("Amélia");
        foreach (var (code, place) in plate.Zip(["1", "2", "3", "4"])) await maker.Locator($"#place-{code}").FillAsync(place);
        await maker.Locator($"#ticks-{plate[0]}").FillAsync("ab");
        await maker.PressAsync("Save Amélia’s ballot");
        await maker.GetByRole(AriaRole.Link, new() { Name = "type in again for Amélia" }).TapAsync();
        await maker.SeesHeadingAsync("Amélia’s paper ballot, a second time");
        await eye.BothAsync(maker, "second entry");
        foreach (var (code, place) in plate.Zip(["1", "2", "4", "3"])) await maker.Locator($"#place-{code}").FillAsync(place);
        await maker.Locator($"#ticks-{plate[0]}").FillAsync("a");
        await maker.Field("Typed in by").FillAsync("Gus");
        await maker.PressAsync("Compare the two entries");
        await maker.SeesHeadingAsync("3 differences in Amélia’s ballot.");
        await eye.BothAsync(maker, "two entries");
        await maker.PressAsync("Keep this as Amélia’s ballot");
        await Expect(maker.Row("Amélia")).ToContainTextAsync("agrees, by Gus");
        eye.FoundNothing();
    }
}
