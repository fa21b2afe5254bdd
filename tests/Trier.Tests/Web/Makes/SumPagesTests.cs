using System.Net;
using Trier.Tests.Web.Ballots;

namespace Trier.Tests.Web.Makes;

/// <summary>Sums at the bench on the real site. Ids are those of tests/Trier.Dairy.Tests/Checks/worked_examples.csv.</summary>
public sealed class SumPagesTests
{
    private static readonly (string Asked, string[] Said)[] Worked =
    [
        // By hand: 20.6 kg of cow's milk at 3.87 kJ/(kg K) by 28 K is 2.2 MJ, 0.62 kWh; from 2 kW at 60 % (40 to 80) in 31 min (46 to 23).
        ("heat&milk=20&animal=cow&from=4&to=32&power=2000", ["Time about 31 min (23 min to 46 min)", "Heat the milk takes up 0,62 kWh", "E = m cp (T2 - T1)"]),
        // By hand: 60 to 63,2 in 5 min crosses 63 after 4.7 min; from there to minute 36 are 31 min.
        ("pasteurisation&animal=cow&minute-1=0&milk-1=60&minute-2=5&milk-2=63,2&air-2=66,5&minute-3=36&milk-3=63.5&air-3=67", ["These readings meet the listed pair 31 min at 63 °C or above", "local food law"]),
        ("pasteurisation&minute-1=0&milk-1=62&minute-2=40&milk-2=62", ["These readings do not meet the listed pair"]),
        // M8, M7 and M10.
        ("standardising&milk=20&fat=4&to-fat=3", ["By Pearson’s square, add skim 6,78 kg", "By mass balance, add skim 6,78 kg"]),
        ("standardising&milk=500&fat=4&to-fat=10&stream=35", ["By Pearson’s square, add cream 120 kg", "By mass balance, add cream 120 kg"]),
        ("standardising&milk=20&fat=4,0&protein=3,3&to-ratio=1,10", ["By mass balance, add skim 6,51 kg", "Pearson’s square is not for a ratio"]),
        // C5 and C4.
        ("acidity&sample=9&alkali=1,6&normality=0,1", ["16,0 °D", "0,160 % lactic acid"]),
        ("acidity&value=7&unit=sh", ["7,0 °SH = 15,8 °D = 17,5 °Th"]),
        // By hand: salt that brings 18 to 20 % is a fortieth of the brine, 11.36 kg. B4: 8 L at 20 °C hold 1.84 kg of salt and 7.35 kg of water. B2: 20.1157 °Bé are 21.2 %.
        ("brine&brine=10&strength=18&wanted=20", ["Salt to add 284 g"]),
        ("brine&brine=8&at=20&strength=20&volume=16", ["Salt to add 1,84 kg", "Water to add 7,35 kg"]),
        ("brine&brine=8&baume=20,1157", ["Strength by the hydrometer 21,2 %", "Salt to add none: it is as strong as you want it"]),
        // D6b, an e-fold of 8.158 d, three times; by hand 3 x 0.08^2 / (3.8317^2 x 2.3e-10) s are 65.8 d.
        ("evening-out&diameter=16&height=8&own=2,3", ["Between the faces and the middle 24,5 d", "Between the rim and the heart 65,8 d"]),
        // D2: 1.68509 % after 12 h at 2.3e-10. By hand, 40 g lost are 40 g of salt in 1.70 kg, 2.35 %, between 1.68 and 4.7: wide.
        ("own-salt&diameter-1=16&height-1=8&moisture-1=40&strength-1=20&hours-1=12&salt-1=1,68509", ["Salt spreads at 2,3 · 10⁻¹⁰ m²/s"]),
        ("own-salt&diameter-1=16&height-1=8&moisture-1=40&strength-1=20&hours-1=12&before-1=1,74&after-1=1,70", ["Salt spreads at about 4,7 (2,3 to 22,8)", "a = (m1 - m2) / (r - 1)"]),
        // By hand: 28 by 2.5 kg.
        ("cost&milk=24&cultures=3,5&salt=0.5&cheese=2,5", ["A kilogram cost 11,20"]),
    ];

    private static readonly (string Asked, string Said)[] Refused =
    [
        ("heat&milk=20&from=32&to=4&power=2000", "Temperature goes from 32 to 4 °C; heating rises."),
        ("heat&milk=-3&from=4&to=32&power=2000", "Milk is -3 L; it must be above 0 and at most 100000 L (usual: 2 to 500 L)."),
        ("heat&milk=much&from=4&to=32&power=2000", "“much” is no number"),
        ("pasteurisation&minute-1=0&milk-1=63", "There is 1 reading; a hold needs at least 2."),
        ("pasteurisation&minute-1=0&minute-2=30&milk-2=63", "Reading 1 has no temperature of the milk."),
        ("standardising&milk=20&fat=4&to-fat=3&to-ratio=1,1", "one of the two."),
        ("standardising&milk=20&fat=4&to-fat=3&stream=3", "the same as the target"),
        ("acidity&sample=9&value=7", "Give either a titration"),
        ("acidity&sample=9", "The alkali is missing."),
        ("acidity&value=700&unit=sh", "it must be at least 0 and at most 5 % lactic acid"),
        ("brine&brine=10&strength=30", "Its strength is 30 %; it must be above 0 and at most 26,5 % (usual: 16 to 23 %)."),
        ("brine&brine=10&strength=20&volume=8", "Topping up only adds"),
        ("evening-out&height=8", "Diameter is missing."),
        ("own-salt&diameter-1=16&height-1=8&moisture-1=40&strength-1=20&hours-1=12", "Wheel 1 needs the salt found, or its weight before and after the brine."),
        ("own-salt&diameter-1=16&height-1=8&moisture-1=40&strength-1=20&hours-1=12&before-1=1,70&after-1=1,74", "in brine a wheel gets lighter"),
        ("cost&cheese=2,5", "give at least the milk"),
    ];

    [Fact]
    public async Task Every_sum_gives_the_value_of_its_worked_example_with_its_working()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await maker.GetAsync("/makes");
        Assert.Contains("href=\"/makes/sums\"", maker.Html, StringComparison.Ordinal);
        foreach (var (asked, said) in Worked)
        {
            await maker.GetAsync($"/makes/sums?sum={asked}");
            Assert.Equal((asked, HttpStatusCode.OK), (asked, maker.Answer.StatusCode));
            Assert.All(said, words => Assert.Contains(words, maker.Text, StringComparison.Ordinal));
            Assert.DoesNotContain("safe", maker.Text, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public async Task What_cannot_be_is_refused_in_one_sentence_and_what_was_typed_stays()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        foreach (var (asked, said) in Refused)
        {
            await maker.GetAsync($"/makes/sums?sum={asked}");
            Assert.Equal((asked, HttpStatusCode.UnprocessableEntity), (asked, maker.Answer.StatusCode));
            Assert.Contains("Not worked out yet.", maker.Text, StringComparison.Ordinal);
            Assert.Contains(said, maker.Text, StringComparison.Ordinal);
        }

        await maker.GetAsync("/makes/sums?sum=heat&milk=much&from=4&to=32&power=2000");
        Assert.Contains("value=\"much\"", maker.Html, StringComparison.Ordinal);
        Assert.Contains("href=\"#heat-milk\"", maker.Html, StringComparison.Ordinal);
        await maker.GetAsync("/makes/sums?sum=heat&milk=20&from=4&to=32&power=20000");
        Assert.Contains("Power of the ring or heater is 20000 W, where 500 to 10000 W is usual: is that right?", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Time about 3", maker.Text, StringComparison.Ordinal);
    }

    // 5 gal are 18.93 L, 39.2 and 89.6 °F are 4 and 32 °C: 31 min times 18.93 by 20. A pound is 0.4536 kg.
    [Fact]
    public async Task An_address_keeps_its_units_whatever_this_device_shows()
    {
        await using var site = await Evening.BeginAsync(open: false);
        using var maker = await site.MakerAsync();
        await maker.GetAsync("/makes/sums?sum=heat&units=us&milk=5&from=39.2&to=89.6&power=2000&reaches=60");
        Assert.Contains("Milk, US gallons", maker.Text, StringComparison.Ordinal);
        Assert.Contains("Time 29 min", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync("/makes/sums?sum=heat&units=us&milk=5&from=39.2&to=300&power=2000");
        Assert.Contains("It has to reach is 300 °F", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync("/makes/sums?sum=brine");
        Assert.Matches("id=\"brine\"[^>]* open", maker.Html);
        Assert.DoesNotContain("Not worked out yet.", maker.Text, StringComparison.Ordinal);
        await maker.GetAsync("/makes/sums?sum=cost&units=us&milk=100&cheese=10");
        Assert.Contains("A pound cost 10.00", maker.Text, StringComparison.Ordinal);
    }
}
