using Trier.Browser.Tests.Kit;
using Trier.Trials.Makes;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Ballots;

/// <summary>A guest between the card that was scanned and the first bite.</summary>
public sealed class SignInMomentsTests(Chromium chromium)
{
    /// <summary>
    /// What milk and allergens the cheeses hold and how one tastes stands on the same page to be read, and reading takes the time it takes: counted are
    /// the thoughts, taps and swipes.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Every_question_of_the_sign_in_is_answered_in_under_20_seconds(bool script)
    {
        await using var context = await chromium.PhoneAsync(script);
        await using var house = await chromium.PhoneAsync(script: false);
        await using var table = await Table.SetAsync(new Setting { Facts = new Dictionary<string, WheelFacts>(StringComparer.Ordinal) { ["Corrieglen"] = Facts("egg", "pasteurised"), ["Birkmoor"] = Facts(null, "raw") } }, "Ada", "Bruno");
        var page = await context.NewPageAsync();
        await page.GotoAsync(table.LinkOf("Ada"));
        await page.SeesHeadingAsync("Welcome, Ada.");
        var hand = new CountedHand(page);
        await hand.AnswerAsync("egg");
        await hand.AnswerAsync("stronger tasting");
        await hand.AnswerAsync("I have a cold, or smell little today");
        await hand.AnswerAsync("You may give my name", "You may quote my words");
        await hand.PressAsync("To the first sample");
        await page.SeesHeadingAsync("Wait, Ada: do not taste yet.");
        await page.PressAsync("My plate is right now: to the first sample");
        await new TasterPhone(page).SampleAsync(1, 3);

        // Every question of the page was answered, and nothing else was pressed.
        Assert.Equal((4, 6), (hand.Thoughts, hand.Taps));
        Assert.InRange(hand.Seconds, 0, 20);
        TestContext.Current.TestOutputHelper?.WriteLine($"{hand.Thoughts} thoughts, {hand.Taps} taps, {hand.Swipes} swipes: {hand.Seconds:0.0} s");

        // It has arrived: the plate goes without the egg, and the host can give her name.
        var host = await table.MakerAsync(house);
        await host.GotoAsync(table.Of("board"));
        await host.SeesAsync("Ada’s plate has changed.");
        await host.GotoAsync(table.Of("paper"));
        await host.PressAsync("Ada");
        foreach (var said in new[] { "usually prefers stronger tasting", "a cold, or little smell that day", "the name may be given", "the words may be quoted" }) await Expect(host.GetByLabel(said, new() { Exact = true })).ToBeCheckedAsync();
        Assert.Empty(table.Site.Failures);
    }

    private static WheelFacts Facts(string? allergens, string treatment) =>
        WheelFacts.Of(new Dictionary<string, string?>(StringComparer.Ordinal) { [WheelFacts.AllergensFact] = allergens, [WheelFacts.HeatTreatmentFact] = treatment });
}
