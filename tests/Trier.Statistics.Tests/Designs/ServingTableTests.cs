using System.Globalization;
using System.Text;
using Trier.Statistics.Designs;
using Trier.Statistics.Randomness;
using Trier.TestKit;

namespace Trier.Statistics.Tests.Designs;

/// <summary>
/// The tables of docs/methods/serving-orders.md are made here: run the test with TRIER_WRITE_TABLES=1 to write them anew; otherwise it holds the page to them.
/// </summary>
public sealed class ServingTableTests
{
    private const string Begin = "<!-- tables: begin -->";
    private const string End = "<!-- tables: end -->";

    [Fact]
    public void The_page_shows_the_balance_of_every_plan_and_what_is_lost_with_tasters_missing()
    {
        var path = Path.Combine(Checkout.Root, "docs", "methods", "serving-orders.md");
        var page = File.ReadAllText(path);
        var from = page.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length;
        var to = page.IndexOf(End, StringComparison.Ordinal);
        Assert.InRange(to, from, page.Length);
        var tables = Tables();
        if (Environment.GetEnvironmentVariable("TRIER_WRITE_TABLES") == "1")
        {
            page = page[..from] + tables + page[to..];
            File.WriteAllText(path, page);
            to = from + tables.Length;
        }

        Assert.Equal(tables, page[from..to]);
    }

    private static string Tables()
    {
        var text = new StringBuilder("\n| tasters | 2 samples | 3 | 4 | 5 | 6 | 7 | 8 |\n| --- | --- | --- | --- | --- | --- | --- | --- |\n");
        for (var tasters = 2; tasters <= 40; tasters++)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {tasters} |");
            for (var items = 2; items <= 8; items++)
            {
                var orders = ServingOrders.Williams(items, tasters, new Seed(8));
                var worst = Enumerable.Range(0, Math.Min(4, tasters)).Select(missing => MissingTasters.Worst(items, orders, missing)).ToList();
                text.Append(CultureInfo.InvariantCulture, $" {Row(worst.Select(w => w.PositionSpread))} / {Row(worst.Select(w => w.CarryOverSpread))} |");
            }

            text.Append('\n');
        }

        return text.ToString();
    }

    private static string Row(IEnumerable<int> spreads) => string.Join(' ', spreads);
}
