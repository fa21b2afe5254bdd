using System.Globalization;
using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;
using Trier.Resources;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Ballots;

/// <summary>The whole ballot in every language but English, which the other tests read, on the phone it is written for and on the narrowest one.</summary>
public sealed class LanguageScreensTests(Chromium chromium)
{
    private const string WordsThatStickOut = """
        () => [...document.querySelectorAll('h1, h2, p, li, legend, label, button, a, .plug-words, .choice-words, .place-name, .place-slot')]
          .filter(part => part.clientWidth > 1 && part.scrollWidth > part.clientWidth + 1 && !part.classList.contains('unseen'))
          .map(part => part.textContent.trim())
        """;

    private static readonly string[] Names = ["Ada", "Bruno", "Cleo", "Dora", "Emil"];

    [Fact]
    public async Task Every_page_of_the_ballot_fits_a_phone_in_every_language()
    {
        var languages = BallotWords.Languages.Select(language => language.Name).Where(language => language != "en").ToList();
        Assert.Equal(Names.Length, languages.Count);
        var facts = WheelFacts.Of(new Dictionary<string, string?>(StringComparer.Ordinal) { [WheelFacts.AllergensFact] = "egg", [WheelFacts.HeatTreatmentFact] = "pasteurised" });
        await using var table = await Table.SetAsync(
            new Setting { Asked = BallotPlan.Of(true, true, ["salt", "firmness"], ["nutty", "sharp"], again: true).Value, Facts = new Dictionary<string, WheelFacts>(StringComparer.Ordinal) { ["Corrieglen"] = facts } },
            Names);
        var found = await Task.WhenAll(languages.Zip(Names, (language, name) => WalkAsync(table, language, name)));
        Assert.Empty(found.SelectMany(lines => lines));
        Assert.Empty(table.Site.Failures);
    }

    private async Task<List<string>> WalkAsync(Table table, string language, string name)
    {
        await using var context = await chromium.PhoneAsync();
        var page = await context.NewPageAsync();
        var found = new List<string>();
        await page.GotoAsync(table.LinkOf(name));
        await page.Locator($"button.language[lang='{language}']").TapAsync();
        await Expect(page.Locator("html")).ToHaveAttributeAsync("lang", language);
        await LookAsync("sign-in");
        await OnAsync("/sample/1");
        for (var sample = 1; sample <= 4; sample++)
        {
            if (sample == 1) await LookAsync("sample");
            await page.Locator("input[name=liking]").Nth(sample).TapAsync();
            await OnAsync(sample < 4 ? $"/sample/{sample + 1}" : "/places");
        }

        await LookAsync("places");
        for (var left = 4; left > 0; left--)
        {
            await page.Locator(".plate-code").First.TapAsync();
            await Expect(page.Locator(".plate-code")).ToHaveCountAsync(left - 1);
        }

        await LookAsync("places given");
        await OnAsync("/more/1");
        await LookAsync("more");
        for (var sample = 1; sample <= 4; sample++) await OnAsync(sample < 4 ? $"/more/{sample + 1}" : "/review");
        await LookAsync("review");
        await OnAsync("/sent");
        await LookAsync("sent");
        return found;

        async Task OnAsync(string path)
        {
            await page.Locator("button.plug-primary").TapAsync();
            await Expect(page).ToHaveURLAsync(Hand.Like($"{path}$"));
            await page.SettledAsync();
        }

        async Task LookAsync(string what)
        {
            foreach (var width in new[] { 320, Eye.PhoneWidth })
            {
                await page.SetViewportSizeAsync(width, Eye.PhoneHeight);
                var wide = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth");
                if (wide > width) found.Add(string.Create(CultureInfo.InvariantCulture, $"{language}, {what} at {width} px: the page is {wide} px wide."));
                found.AddRange((await page.EvaluateAsync<string[]>(WordsThatStickOut)).Select(words => string.Create(CultureInfo.InvariantCulture, $"{language}, {what} at {width} px: “{words}” sticks out.")));
            }

            if (Environment.GetEnvironmentVariable("TRIER_SCREENSHOTS") is { Length: > 0 } folder) await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{language}-{what.Replace(' ', '-')}.png"), FullPage = true });
        }
    }
}
