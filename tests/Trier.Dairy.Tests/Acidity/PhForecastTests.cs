using CsCheck;
using Trier.Dairy.Acidity;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Tests.Acidity;

public sealed class PhForecastTests
{
    [Fact]
    public void The_band_holds_the_true_time_about_four_times_in_five()
    {
        // Straight fall with normal scatter of the meter's error; 2000 made-up vats from a fixed seed.
        var chance = new Random(20240917);
        var (hits, answers) = (0, 0);
        for (var vat = 0; vat < 2000; vat++)
        {
            var readings = Enumerable.Range(0, 6).Select(i => Reading(i * 20, 6.5 - (0.15 * i / 3) + (0.03 * Normal(chance)))).ToArray();
            var truth = (6.5 - 6.15) / 0.15;
            if (!PhForecasts.When([.. readings], Ph.FromValue(6.15), 0.03).TryAnswer(out var answer, out _)) continue;
            answers++;
            if (answer.Value.After.Low.TotalHours <= truth && truth <= answer.Value.After.High.TotalHours) hits++;
        }

        Assert.True(answers > 1500, $"{answers} answers");
        Assert.InRange((double)hits / answers, 0.77, 0.90);
    }

    [Fact]
    public void A_clean_line_is_met_where_it_is_met() =>
        Gen.Double[0.1, 0.5].Select(Gen.Double[5.4, 6.0]).Sample((rate, target) =>
        {
            Listed<PhReading> readings = [.. Enumerable.Range(0, 5).Select(i => Reading(i * 30, 6.6 - (rate * i / 2)))];
            if (!PhForecasts.When(readings, Ph.FromValue(target), 0.02).TryAnswer(out var answer, out _)) return rate < 0.15;
            return Math.Abs(answer.Value.After.Likely.TotalHours - ((6.6 - target) / rate)) < 1e-6;
        });

    [Fact]
    public void Nothing_is_foretold_from_a_flat_line_below_5_3_or_from_two_readings()
    {
        Assert.False(PhForecasts.When([Reading(0, 6.6), Reading(30, 6.61), Reading(60, 6.6)], Ph.FromValue(6.3)).TryAnswer(out _, out var flat));
        Assert.Contains("do not fall", Assert.Single(flat).Sentence, StringComparison.Ordinal);
        Assert.False(PhForecasts.When([Reading(0, 6.6), Reading(60, 6.3), Reading(120, 6.0)], Ph.FromValue(5.2)).TryAnswer(out _, out var deep));
        Assert.Contains("5.3", Assert.Single(deep).Sentence, StringComparison.Ordinal);
        Assert.False(PhForecasts.When([Reading(0, 6.6), Reading(60, 6.3)], Ph.FromValue(6.0)).TryAnswer(out _, out var few));
        Assert.Equal(ProblemKind.NotEnough, Assert.Single(few).Kind);
    }

    [Theory]
    [InlineData(1, 3.078)]
    [InlineData(2, 1.886)]
    [InlineData(4, 1.533)]
    [InlineData(5, 1.476)]
    [InlineData(30, 1.310)]
    public void Students_t_agrees_with_the_printed_table(int degrees, double printed) =>
        Assert.Equal(printed, StudentQuantile.Upper(0.10, degrees), 5e-4);

    private static PhReading Reading(double minutes, double ph) => new(TimeSpan.FromMinutes(minutes), Ph.FromValue(ph));

    private static double Normal(Random chance) =>
        Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble());
}
