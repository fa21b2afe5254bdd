using Microsoft.Playwright;
using Trier.Browser.Tests.Kit;

namespace Trier.Browser.Tests.Makes;

/// <summary>The make sheet and the labels of wheels on paper, A4 and Letter.</summary>
public sealed class PrintTests(Chromium chromium)
{
    private static readonly string[] Formats = ["A4", "Letter"];

    [Fact]
    public async Task A_sheet_fits_one_or_two_pages_and_the_labels_open_their_wheels()
    {
        await using var context = await chromium.PhoneAsync();
        Assert.SkipUnless(Paper.CanBeRead, Paper.NoReader);
        await using var site = await HostedSite.StartAsync();
        var folder = Directory.CreateTempSubdirectory("trier-print-");
        try
        {
            var page = await context.NewPageAsync();
            await page.GotoAsync(site.SignInLink);
            await page.PressAsync("Sign in on this browser");
            await page.SeesHeadingAsync("Which of your recipes do people like best?");
            foreach (var recipe in new[] { "alpine", "alpine-with-propionic", "tomme", "washed-curd", "sheep-pressed", "cheddared" })
            {
                await page.GotoAsync($"{site.Address}/recipes/{recipe}/sheet?milk=20&fat=3,6&treatment=Raw&lever=4&wheels=2");
                foreach (var format in Formats) Assert.InRange(await Paper.PagesAsync(await PrintAsync(page, folder, $"{recipe}-{format}", format)), 1, 2);
            }

            await page.PressAsync("Begin this make");
            await Assertions.Expect(page).ToHaveURLAsync(Hand.Like("/makes/"));
            var make = page.Url;
            await page.GotoAsync($"{make}/wheels");
            await page.Locator("#name-1").FillAsync("A long name of thirty letters");
            await page.PressAsync("Number them");
            await page.SeesAsync("2 wheels.");
            string[] links = [$"{site.Address}/wheels/1", $"{site.Address}/wheels/2"];
            foreach (var format in Formats)
            {
                await page.GotoAsync($"{make}/labels");
                var (many, sheet) = await Paper.CodesAsync(await PrintAsync(page, folder, $"labels-{format}", format));
                Assert.Equal(links, many);
                Assert.Equal(1, sheet);
                await page.GotoAsync($"{make}/labels?one");
                var (one, sheets) = await Paper.CodesAsync(await PrintAsync(page, folder, $"label-{format}", format));
                Assert.Equal(links, one);
                Assert.Equal(2, sheets);
            }

            var opened = await page.GotoAsync(links[1]);
            Assert.True(opened!.Ok);
        }
        finally
        {
            if (Environment.GetEnvironmentVariable("TRIER_SCREENSHOTS") is { Length: > 0 } kept)
            {
                foreach (var file in folder.GetFiles()) file.CopyTo(Path.Combine(kept, file.Name), overwrite: true);
            }

            folder.Delete(recursive: true);
        }
    }

    private static async Task<string> PrintAsync(IPage page, DirectoryInfo folder, string name, string format)
    {
        var path = Path.Combine(folder.FullName, name + ".pdf");
        await page.PdfAsync(new() { Path = path, Format = format });
        return path;
    }
}
