using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Dairy.Safety;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Tests.Safety;

public sealed class PasteurisationTests
{
    private static readonly MilkComposition Cow = TypicalMilk.Of(Species.Cow).Milk;

    [Fact]
    public void A_hold_of_30_minutes_at_63_with_hot_air_above_meets_the_vat_pair()
    {
        var record = Judge(Cow, 67, 60, 63, 63.5, 63.5, 63.2, 63.1, 63, 63, 60);
        Assert.NotNull(record.Met);
        Assert.InRange(record.LongestHold.TotalMinutes, 30, 31);
    }

    [Fact]
    public void A_dip_below_the_temperature_starts_the_hold_again()
    {
        var record = Judge(Cow, 67, 63, 63.5, 64, 62.9, 64, 64, 63.5, 63);
        Assert.Null(record.Met);
        Assert.InRange(record.LongestHold.TotalMinutes, 15, 24);
    }

    [Fact]
    public void Milk_that_cooled_and_warmed_again_below_the_temperature_gains_no_hold()
    {
        var record = Judge(Cow, 67, 63, 63, 63, 63, 63, 60, 62);
        Assert.Null(record.Met);
        Assert.Equal(20, record.LongestHold.TotalMinutes, 1e-6);
    }

    [Fact]
    public void An_equivalent_time_above_30_minutes_passes_nothing()
    {
        Listed<HeatReading> readings = Log(null, 62, 63, 64, 64, 63.5, 63, 62.5);
        Assert.True(ThermalDeath.EquivalentTime(readings, Temperature.FromCelsius(63), 4.33).OrThrow().Value.TotalMinutes > 30);
        Assert.Null(Pasteurisation.Judge(Cow, readings).OrThrow().Value.Met);
    }

    [Fact]
    public void A_pot_hotter_for_a_shorter_time_is_told_that_no_pair_is_listed_between()
    {
        var record = Judge(Cow, 75, 60, 68, 68, 68, 60);
        Assert.Null(record.Met);
        Assert.Contains(record.Notes, note => note.Contains("no pair between", StringComparison.Ordinal));
    }

    [Fact]
    public void A_cold_headspace_does_not_meet_the_pair_and_an_unread_one_is_noted()
    {
        Assert.Null(Judge(Cow, 64, 63, 63, 63, 63, 63, 63, 63, 63).Met);
        var unread = Judge(Cow, null, 63, 63, 63, 63, 63, 63, 63, 63);
        Assert.Contains(unread.Notes, note => note.Contains("not read", StringComparison.Ordinal));
    }

    [Fact]
    public void Rich_sheep_milk_needs_three_degrees_more()
    {
        var sheep = MilkComposition.Create(Share.FromPercent(7), Share.FromPercent(5.8), 0.8, Share.FromPercent(5), Share.FromPercent(0.9)).OrThrow().Value;
        Assert.True(sheep.TotalSolids.Percent > 18);
        Assert.Null(Judge(sheep, 70, 63, 64, 64, 64, 64, 64, 64, 64).Met);
        Assert.NotNull(Judge(sheep, 70, 66, 66, 66, 66, 66, 66, 66, 66).Met);
    }

    [Fact]
    public void No_note_ever_calls_a_milk_safe_and_each_record_defers_to_the_law()
    {
        foreach (var record in new[] { Judge(Cow, 67, 63, 63, 63, 63, 63, 63, 63, 63), Judge(Cow, null, 20, 30) })
        {
            Assert.DoesNotContain(record.Notes, note => note.Contains("safe", StringComparison.OrdinalIgnoreCase));
            Assert.Contains(record.Notes, note => note.Contains("local food law", StringComparison.Ordinal));
        }
    }

    private static PasteurisationRecord Judge(MilkComposition milk, double? air, params double[] temperatures) =>
        Pasteurisation.Judge(milk, Log(air, temperatures)).OrThrow().Value;

    private static Listed<HeatReading> Log(double? air, params double[] temperatures) =>
        [.. temperatures.Select((value, index) => new HeatReading(TimeSpan.FromMinutes(5 * index), Temperature.FromCelsius(value), air is { } above ? Temperature.FromCelsius(above) : null))];
}
