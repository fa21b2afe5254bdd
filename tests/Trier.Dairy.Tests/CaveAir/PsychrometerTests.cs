using System.Globalization;
using Trier.Dairy.CaveAir;
using Trier.Dairy.Quantities;
using Trier.TestKit;

namespace Trier.Dairy.Tests.CaveAir;

public sealed class PsychrometerTests
{
    [Fact]
    public void The_whole_humidity_table_is_met_to_its_last_digit()
    {
        var rows = Tables.CommaSeparated.Rows(File.ReadAllText(Path.Combine(Checkout.Root, "tests", "Trier.Dairy.Tests", "Checks", "psychrometric_rh.csv")));
        var depressions = rows[0].Skip(1).Select(heading => Number(heading.Split('_')[^1])).ToArray();
        Assert.Equal(14 * 11, rows.Skip(1).Sum(row => row.Length - 1));
        foreach (var row in rows.Skip(1))
        {
            for (var i = 0; i < depressions.Length; i++)
            {
                var dry = Number(row[0]);
                var found = Psychrometer.Humidity(Temperature.FromCelsius(dry), Temperature.FromCelsius(dry - depressions[i]), Pressure.FromHectopascals(1013.25)).OrThrow().Value;
                Assert.Equal(Number(row[i + 1]), found.Likely.Percent, 0.051);
            }
        }
    }

    [Fact]
    public void A_wet_bulb_above_the_dry_bulb_is_refused()
    {
        Assert.False(Psychrometer.Humidity(Temperature.FromCelsius(11), Temperature.FromCelsius(12), Pressure.FromHectopascals(1013)).TryAnswer(out _, out var problems));
        Assert.Contains("swapped", Assert.Single(problems).Sentence, StringComparison.Ordinal);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
