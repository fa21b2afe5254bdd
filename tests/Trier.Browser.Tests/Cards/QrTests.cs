using Trier.Browser.Tests.Kit;

namespace Trier.Browser.Tests.Cards;

/// <summary>The printed cards, read back by a decoder that knows nothing of how they were drawn.</summary>
public sealed class QrTests(Chromium chromium)
{
    private const string NoDecoder = "Needs zbarimg and pdftoppm on the path (Debian: zbar-tools, poppler-utils) to read the printed QR codes back.";

    [Fact]
    public async Task The_code_on_every_printed_card_opens_that_taster_s_ballot()
    {
        await using var context = await chromium.PhoneAsync();
        Assert.SkipUnless(Tool.Runs("zbarimg") && Tool.Runs("pdftoppm"), NoDecoder);
        string[] tasters = ["Ada", "Bruno", "Cleo", "Dora", "Emil"];
        await using var table = await Table.SetAsync(tasters);
        var folder = Directory.CreateTempSubdirectory("trier-cards-");
        try
        {
            var page = await context.NewPageAsync();
            await page.GotoAsync(table.Site.SignInLink);
            await page.PressAsync("Sign in on this browser");
            await page.SeesHeadingAsync("One trial.");
            await page.GotoAsync($"{table.Site.Address}/trials/{table.Trial.Value}/cards");
            await page.SeesHeadingAsync("Plate cards");
            var cards = Path.Combine(folder.FullName, "cards.pdf");
            await page.PdfAsync(new() { Path = cards, PreferCSSPageSize = true });

            // What a plain printer puts on paper: 150 dots an inch, grey.
            await Tool.RunAsync("pdftoppm", "-r", "150", "-gray", "-png", cards, Path.Combine(folder.FullName, "sheet"));
            var sheets = folder.GetFiles("sheet*.png").Select(file => file.FullName).Order(StringComparer.Ordinal).ToList();
            Assert.Equal(2, sheets.Count);
            var read = await Tool.RunAsync("zbarimg", ["--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", .. sheets]);
            Assert.Equal(tasters.Select(table.LinkOf).Order(StringComparer.Ordinal), read.Split('\n', StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
