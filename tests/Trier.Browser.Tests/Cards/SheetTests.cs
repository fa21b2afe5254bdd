using System.Globalization;
using System.Text.RegularExpressions;
using Trier.Browser.Tests.Kit;
using Trier.Trials.Plans;
using static Microsoft.Playwright.Assertions;

namespace Trier.Browser.Tests.Cards;

/// <summary>Paper ballots as a printer puts them out, A4 and Letter: one side and its back for each taster, every font in the file.</summary>
public sealed class SheetTests(Chromium chromium)
{
    private const string NoTools = "Needs pdfinfo, pdffonts and pdftotext on the path (Debian: poppler-utils) to look into printed sheets.";
    private static readonly string[] Tasters = ["Ada", "Bruno", "Cleo"];
    private static readonly string[] Words = ["smooth", "nutty", "sour", "buttery", "grassy", "firm", "sweet", "sharp", "milky", "grainy", "salty", "crumbly"];

    public static TheoryData<string, bool, int> Sheets => new()
    {
        { "A4", false, 2 },
        { "Letter", false, 2 },
        { "A4", true, 4 },
        { "Letter", true, 5 },
    };

    [Theory]
    [MemberData(nameof(Sheets))]
    public async Task Every_taster_gets_their_sides_whatever_the_paper_and_the_language(string paper, bool large, int sides)
    {
        await using var context = await chromium.LaptopAsync();
        Assert.SkipUnless(Tool.Runs("pdfinfo") && Tool.Runs("pdffonts") && Tool.Runs("pdftotext"), NoTools);
        await using var table = await Table.SetAsync(BallotPlan.Of(true, true, ["salt", "firmness"], Words, again: true).Value, Tasters);
        var folder = Directory.CreateTempSubdirectory("trier-sheets-");
        try
        {
            var maker = await table.MakerAsync(context);
            foreach (var (taster, language, lang) in Tasters.Zip(["Deutsch", "Português", "Français"], ["de", "pt", "fr"]))
            {
                await maker.GotoAsync(table.LinkOf(taster));
                await maker.PressAsync(language);
                await Expect(maker.Locator("html")).ToHaveAttributeAsync("lang", lang);
            }

            await maker.GotoAsync(table.Of($"paper-ballots{(large ? "?large=1" : "")}"));
            await maker.SeesHeadingAsync("Paper ballots");
            var file = Path.Combine(Environment.GetEnvironmentVariable("TRIER_SCREENSHOTS") is { Length: > 0 } kept ? kept : folder.FullName, $"sheets-{paper}-{(large ? "large" : "usual")}.pdf");
            await maker.PdfAsync(new() { Path = file, Format = paper });

            Assert.Equal(Tasters.Length * sides, int.Parse(Regex.Match(await Tool.RunAsync("pdfinfo", file), "Pages:\\s+(?<pages>[0-9]+)", RegexOptions.None, TimeSpan.FromSeconds(1)).Groups["pages"].Value, CultureInfo.InvariantCulture));
            var fonts = (await Tool.RunAsync("pdffonts", file)).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2).ToList();
            Assert.Contains(fonts, font => font.Contains("TrierSans", StringComparison.Ordinal));
            Assert.All(fonts, font => Assert.Matches(" yes (yes|no) (yes|no) +[0-9]+ +[0-9]+ *$", font));
            for (var side = 0; side < Tasters.Length * sides; side++)
            {
                var page = (side + 1).ToString(CultureInfo.InvariantCulture);
                var text = await Tool.RunAsync("pdftotext", "-f", page, "-l", page, file, "-");
                Assert.StartsWith(Tasters[side / sides], text.TrimStart(), StringComparison.Ordinal);
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
