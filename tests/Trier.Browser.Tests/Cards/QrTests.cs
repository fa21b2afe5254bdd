using Trier.Browser.Tests.Kit;

namespace Trier.Browser.Tests.Cards;

/// <summary>The printed cards, read back by a decoder that knows nothing of how they were drawn.</summary>
public sealed class QrTests(Chromium chromium)
{
    [Fact]
    public async Task The_code_on_every_printed_card_opens_that_taster_s_ballot()
    {
        await using var context = await chromium.PhoneAsync();
        Assert.SkipUnless(Paper.CanBeRead, Paper.NoReader);
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
            var (codes, sheets) = await Paper.CodesAsync(cards);
            Assert.Equal(2, sheets);
            Assert.Equal(tasters.Select(table.LinkOf).Order(StringComparer.Ordinal), codes);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
