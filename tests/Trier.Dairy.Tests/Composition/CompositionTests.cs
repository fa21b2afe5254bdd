using CsCheck;
using Trier.Dairy.Composition;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Tests.Composition;

public sealed class CompositionTests
{
    private static readonly StandardOfIdentity Swiss = StandardOfIdentity.All.Single(entry => entry.Reference == "133.195");

    [Fact]
    public void Drying_keeps_solids_fat_and_salt() =>
        Gen.Double[35, 50].Select(Gen.Double[20, 35], Gen.Double[0.75, 1]).Sample((moisture, fat, ratio) =>
        {
            var fresh = CheeseComposition.Create(Share.FromPercent(moisture), Share.FromPercent(fat), Share.FromPercent(1.2)).OrThrow().Value;
            var dry = fresh.Dried(Mass.FromKilograms(2), Mass.FromKilograms(2 * ratio)).OrThrow().Value;
            return Math.Abs((2 * (1 - fresh.Moisture.Fraction)) - (2 * ratio * (1 - dry.Moisture.Fraction))) < 1e-9
                && Math.Abs((2 * fresh.Fat.Fraction) - (2 * ratio * dry.Fat.Fraction)) < 1e-9
                && Math.Abs(fresh.FatInDryMatter.Percent - dry.FatInDryMatter.Percent) < 1e-9;
        });

    [Fact]
    public void The_casein_to_fat_for_a_fat_in_dry_matter_gives_that_fat_in_dry_matter() =>
        Gen.Double[40, 55].Sample(percent =>
        {
            var factors = YieldFactors.Exactly(0.85, 0.96, 1.09);
            var ratio = PredictedYield.CaseinToFatFor(Share.FromPercent(percent), factors).OrThrow().Value;
            return Math.Abs(PredictedYield.FatInDryMatter(ratio, factors).OrThrow().Value.Percent - percent) < 1e-9;
        });

    [Fact]
    public void A_cheese_stands_inside_outside_or_unknown_at_each_limit()
    {
        Assert.Equal([Standing.Inside, Standing.Inside, Standing.Inside], Stand(new KnownCheese(Exactly(40), Exactly(44), AgeInDays: 70)));
        Assert.Equal([Standing.Outside, Standing.Outside, Standing.Outside], Stand(new KnownCheese(Exactly(42), Exactly(42.8), AgeInDays: 50)));
        Assert.Equal([Standing.Unknown, Standing.Unknown, Standing.Unknown], Stand(new KnownCheese()));
        Assert.Equal(Standing.Unknown, Stand(new KnownCheese(Estimate.Between(Share.FromPercent(40), Share.FromPercent(40.8), Share.FromPercent(42))))[0]);
    }

    [Fact]
    public void Firmness_gives_every_class_that_fits()
    {
        Assert.Equal(["extra hard", "hard"], Firmness.Words(Share.FromPercent(50)));
        Assert.Equal(["hard", "semi-hard"], Firmness.Words(Share.FromPercent(55)));
        Assert.Equal(["semi-soft", "soft"], Firmness.Words(Share.FromPercent(68)));
    }

    [Fact]
    public void Cost_is_the_sum_over_the_cheese()
    {
        var cost = CostPerKilogram.Of([new("milk", 24.00m), new("rennet", 0.50m)], Mass.FromKilograms(2)).OrThrow();
        Assert.Equal(12.25m, cost.Value);
        Assert.False(CostPerKilogram.Of([new("milk", -1m)], Mass.FromKilograms(2)).TryAnswer(out _, out var problems));
        Assert.Contains("Cost of milk", Assert.Single(problems).Sentence, StringComparison.Ordinal);
    }

    private static Estimate<Share> Exactly(double percent) => Estimate.Exactly(Share.FromPercent(percent));

    private static Standing[] Stand(KnownCheese cheese) => [.. Swiss.Judge(cheese).Select(limit => limit.Standing)];
}
