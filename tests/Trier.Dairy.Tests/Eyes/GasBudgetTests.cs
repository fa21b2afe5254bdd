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
    public void The_usual_figures_reach_the_gas_of_the_80_kg_wheel_and_leave_its_eyes_room()
    {
        var large = Usual(80, 15, 45);
        // The balance of the source: 120 L of gas in 80 kg, 62.4 mmol/kg, of which 20 L stand in eyes.
        Assert.InRange(62.4, large.Made.Likely.MillimolesPerKilogram, 1e6 * GasBudget.UsualLacticAcid.High.Fraction * GasBudget.UsuallyTurned.High / PropionicFermentation.LacticAcid);
        Assert.NotEqual(EyesPossible.Unlikely, large.Verdict);
        Assert.True(large.Void.High > 0.1, $"{large.Void.High}");
        Assert.True(Usual(90, 12, 21).Void.Likely > 0.03);
    }

    [Fact]
    public void Size_is_blamed_only_where_a_larger_wheel_would_have_eyes()
    {
        Assert.True(Usual(14, 5, 21).SizeDecides);
        Assert.Equal(EyesPossible.Unlikely, Usual(14, 5, 21).Verdict);
        // Six tenths of 1.4 % make just what the paste dissolves: blind at every size.
        Assert.False(Budget(18, 8, 21, 1).SizeDecides);
        Assert.False(Budget(190, 90, 21, 1).SizeDecides);
    }

    private static GasBudget Usual(double diameter, double height, double days) => GasBudget.For(
        WheelSize.Create(Length.FromCentimetres(diameter), Length.FromCentimetres(height)).OrThrow().Value,
        GasBudget.UsualLacticAcid,
        GasBudget.UsuallyTurned,
        TimeSpan.FromDays(days),
        Temperature.FromCelsius(20),
        Estimate.Exactly(1.0),
        Density.FromKilogramsPerCubicMetre(1075)).OrThrow().Value;

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
