using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Kit;

/// <summary>One taster's phone at the ballot. Does the same with and without script.</summary>
/// <param name="page">Its page.</param>
internal sealed partial class TasterPhone(IPage page)
{
    /// <summary>Likings as the ballot words them, from 9 down to 1.</summary>
    private static readonly string[] Likings =
        ["like very much", "like a lot", "like", "like a little", "neither", "dislike a little", "dislike", "dislike a lot", "dislike very much"];

    public IPage Page { get; } = page;

    public static string Liking(int liking) => Likings[9 - liking];

    public async Task<TasterPhone> OpenAsync(string link)
    {
        await Page.GotoAsync(link);
        return this;
    }

    /// <summary>The code of the sample that is asked for; waits for its page.</summary>
    /// <param name="number">Which sample, from 1.</param>
    /// <param name="of">How many there are.</param>
    public async Task<string> SampleAsync(int number, int of)
    {
        var heading = Page.GetByRole(AriaRole.Heading, new() { NameRegex = Hand.Like($"^Sample {number} of {of}, code [0-9]{{3}}$") });
        await Expect(heading).ToBeVisibleAsync();
        return Digits().Match(await heading.InnerTextAsync()).Value;
    }

    /// <summary>Answers the sample on the screen and goes on.</summary>
    public async Task AnswerAsync(int liking, string? remark = null)
    {
        await FillInAsync(liking, remark);
        await Page.PressAsync("Keep, and go on");
    }

    public async Task FillInAsync(int liking, string? remark = null)
    {
        await Page.ChooseAsync(Liking(liking));
        await Expect(Page.GetByRole(AriaRole.Radio, new() { Name = Liking(liking), Exact = true })).ToBeCheckedAsync();
        if (remark is not null) await Page.Field("In a word").FillAsync(remark);
    }

    /// <summary>Answers samples from one number to the last, each by its code.</summary>
    public async Task AnswerAllAsync(int from, int of, Func<string, int> liking)
    {
        for (var number = from; number <= of; number++) await AnswerAsync(liking(await SampleAsync(number, of)));
        await Page.SeesHeadingAsync("Now put them in places");
    }

    /// <summary>Taps codes into places, best first.</summary>
    /// <param name="codes">The codes.</param>
    /// <param name="after">How many have a place already.</param>
    public async Task PlaceAsync(IReadOnlyList<string> codes, int after = 0)
    {
        for (var place = 0; place < codes.Count; place++)
        {
            await Page.GetByRole(AriaRole.Button, new() { NameRegex = Hand.Like($"^{codes[place]}\\b.*next best$") }).TapAsync();
            await Expect(Places.Nth(after + place)).ToContainTextAsync(codes[place]);
        }
    }

    /// <summary>Brings placed codes into another order by the keys “one place up”.</summary>
    public async Task MoveUpUntilAsync(IReadOnlyList<string> codes)
    {
        for (var place = 0; place < codes.Count; place++)
        {
            var now = await PlacedAsync();
            for (var at = now.IndexOf(codes[place]); at > place; at--)
            {
                await Page.GetByRole(AriaRole.Button, new() { Name = $"{codes[place]} one place up", Exact = true }).TapAsync();
                await Expect(Places.Nth(at - 1)).ToContainTextAsync(codes[place]);
            }
        }

        Assert.Equal(codes, await PlacedAsync());
    }

    /// <summary>The placed codes, best first.</summary>
    public async Task<List<string>> PlacedAsync() =>
        [.. (await Places.AllInnerTextsAsync()).Select(text => Digits().Match(text)).Where(found => found.Success).Select(found => found.Value)];

    public async Task LookOverAsync()
    {
        await Page.PressAsync("Look it over");
        await Page.SeesAsync("This goes to the host, best first:");
    }

    public async Task SendAsync(string name)
    {
        await Page.PressAsync("Send my ballot");
        await Page.SeesHeadingAsync($"Thank you, {name}. Your ballot is safe with the host.");
    }

    public ILocator Places => Page.GetByRole(AriaRole.List, new() { Name = "places so far, best first" }).GetByRole(AriaRole.Listitem);

    [GeneratedRegex("[0-9]{3}", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Digits();
}
