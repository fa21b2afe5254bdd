using CsCheck;
using Trier.Dairy.Brine;
using Trier.Dairy.Eyes;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Tests.Eyes;

public sealed class GasBudgetTests
{
    [Fact]
    public void A_bare_2_kg_wheel_is_unlikely_to_make_eyes_and_an_80_kg_wheel_may()
    {
        var small = Budget(18, 8, 21, 1);
        var large = Budget(80, 15, 45, 1);
        Assert.Equal(EyesPossible.Unlikely, small.Verdict);
        Assert.NotEqual(EyesPossible.Unlikely, large.Verdict);
        Assert.True(large.Void.High > small.Void.High);
    }

    [Fact]
    public void A_coat_and_a_larger_wheel_leave_more_gas_and_the_balance_adds_up() =>
        Gen.Double[12, 60].Select(Gen.Double[0.1, 0.9], Gen.Double[1.1, 2]).Sample((diameter, coat, larger) =>
        {
            var bare = Budget(diameter, diameter / 2.2, 21, 1);
            var coated = Budget(diameter, diameter / 2.2, 21, coat);
            var big = Budget(diameter * larger, diameter * larger / 2.2, 21, 1);
            return coated.Lost.Likely < bare.Lost.Likely
                && big.Lost.Likely < bare.Lost.Likely
                && big.LeftForEyes.Likely >= bare.LeftForEyes.Likely
                && bare.Lost.Likely <= bare.Made.Likely
                && bare.Void.Low <= bare.Void.Likely && bare.Void.Likely <= bare.Void.High;
        });

    [Fact]
    public void The_gas_made_is_the_carbon_dioxide_of_the_equation() =>
        Gen.Double[0.1, 100].Sample(grams =>
        {
            var products = PropionicFermentation.From(Mass.FromGrams(grams));
            var sum = products.PropionicAcid + products.AceticAcid + products.CarbonDioxide + products.Water;
            return Math.Abs(sum.Grams - grams) < 1e-9 * grams
                && Math.Abs((products.CarbonDioxide.Grams / PropionicFermentation.CarbonDioxide) - products.MolesOfGas) < 1e-12 * grams;
        });

    private static GasBudget Budget(double diameter, double height, double days, double coat) => GasBudget.For(
        WheelSize.Create(Length.FromCentimetres(diameter), Length.FromCentimetres(height)).OrThrow().Value,
        Estimate.Between(Share.FromPercent(1.2), Share.FromPercent(1.4), Share.FromPercent(1.7)),
        Estimate.Between(0.4, 0.6, 0.9),
        TimeSpan.FromDays(days),
        Temperature.FromCelsius(20),
        Estimate.Exactly(coat),
        Density.FromKilogramsPerCubicMetre(1075)).OrThrow().Value;
}
