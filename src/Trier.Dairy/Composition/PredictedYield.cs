using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Composition;

/// <summary>Yield from the milk: Van Slyke and Price for Cheddar, the general form for the rest, and the fat in dry matter that follows.</summary>
public static class PredictedYield
{
    /// <summary>Y = (0.93 F + C - 0.1) x 1.09/(1 - W), kg per 100 kg. Source [VanSlykePrice], read; Cheddar only.</summary>
    /// <param name="fat">Fat F of the milk.</param>
    /// <param name="casein">Casein C of the milk.</param>
    /// <param name="moisture">Moisture W of the cheese.</param>
    public static Outcome<CheeseYield> VanSlyke(Share fat, Share casein, Share moisture)
    {
        var gate = Milk(fat, casein, moisture);
        if (gate.Shut) return gate.Refusal<CheeseYield>();
        var yield = ((0.93 * fat.Percent) + casein.Percent - 0.1) * 1.09 / (1 - moisture.Fraction);
        return gate.Answer(CheeseYield.FromKilogramsPer100Kilograms(yield), new Working(
            "Yield of Cheddar (Van Slyke and Price)",
            "Y = (0.93 F + C - 0.1) 1.09 / (1 - W)",
            [new("Fat F", fat.Percent, "%"), new("Casein C", casein.Percent, "%"), new("Moisture W", moisture.Percent, "%")],
            [new("Yield", yield, "kg/100 kg")],
            Sources.VanSlyke)
        {
            Domain = "Cheddar",
            LikelyError = "Home vats reach 90 to 97 % of it (practice).",
        });
    }

    /// <summary>Y = (RF F + RC C) RS/(1 - W). Source [YieldGeneral], read; factors by style <see cref="YieldFactors.Of"/>, mostly memory.</summary>
    /// <param name="fat">Fat F of the milk.</param>
    /// <param name="casein">Casein C of the milk.</param>
    /// <param name="moisture">Moisture W of the cheese.</param>
    /// <param name="factors">RF, RC, RS with their bands.</param>
    public static Outcome<Estimate<CheeseYield>> General(Share fat, Share casein, Share moisture, YieldFactors factors)
    {
        var gate = Milk(fat, casein, moisture);
        Factors(gate, factors);
        if (gate.Shut) return gate.Refusal<Estimate<CheeseYield>>();
        var yield = Estimate.Between(
            Of(factors.Fat.Low, factors.Casein.Low, factors.Solids.Low),
            Of(factors.Fat.Likely, factors.Casein.Likely, factors.Solids.Likely),
            Of(factors.Fat.High, factors.Casein.High, factors.Solids.High));
        return gate.Answer(yield, new Working(
            "Yield (general form)",
            "Y = (RF F + RC C) RS / (1 - W)",
            [
                new("Fat F", fat.Percent, "%"),
                new("Casein C", casein.Percent, "%"),
                new("Moisture W", moisture.Percent, "%"),
                new("Fat recovery RF", factors.Fat.Likely),
                new("Casein recovery RC", factors.Casein.Likely),
                new("Solids factor RS", factors.Solids.Likely),
            ],
            [new("Yield", yield.Likely.KilogramsPer100Kilograms, "kg/100 kg")],
            Sources.YieldGeneral)
        {
            LikelyError = "The band is that of the factors; home vats reach 90 to 97 % of it (practice), and 1 point of moisture moves it by 1.6 %.",
        });
        CheeseYield Of(double rf, double rc, double rs) =>
            CheeseYield.FromKilogramsPer100Kilograms(((rf * fat.Percent) + (rc * casein.Percent)) * rs / (1 - moisture.Fraction));
    }

    /// <summary>FDM = RF F/((RF F + RC C) RS). Derived from the general form.</summary>
    /// <param name="caseinToFat">C/F of the milk.</param>
    /// <param name="factors">RF, RC, RS.</param>
    public static Outcome<Share> FatInDryMatter(double caseinToFat, YieldFactors factors)
    {
        var gate = new Gate().Check(MilkFields.CaseinToFat, caseinToFat);
        Factors(gate, factors);
        if (gate.Shut) return gate.Refusal<Share>();
        var share = Share.FromFraction(factors.Fat.Likely / ((factors.Fat.Likely + (factors.Casein.Likely * caseinToFat)) * factors.Solids.Likely));
        return gate.Answer(share, new Working(
            "Fat in dry matter to expect",
            "FDM = RF / ((RF + RC C/F) RS)",
            [new("Casein to fat C/F", caseinToFat), new("RF", factors.Fat.Likely), new("RC", factors.Casein.Likely), new("RS", factors.Solids.Likely)],
            [new("Fat in dry matter", share.Percent, "%")],
            Sources.Arithmetic)
        {
            LikelyError = "About 1.5 points, from the factors.",
        });
    }

    /// <summary>C/F = (RF/RC) (1/(RS FDM) - 1). Derived: the casein to fat that gives a fat in dry matter.</summary>
    /// <param name="fatInDryMatter">FDM wanted.</param>
    /// <param name="factors">RF, RC, RS.</param>
    public static Outcome<double> CaseinToFatFor(Share fatInDryMatter, YieldFactors factors)
    {
        var gate = new Gate().Check(CompositionFields.FatInDryMatter, fatInDryMatter.Percent);
        Factors(gate, factors);
        if (gate.Shut) return gate.Refusal<double>();
        var ratio = factors.Fat.Likely / factors.Casein.Likely * ((1 / (factors.Solids.Likely * fatInDryMatter.Fraction)) - 1);
        gate.Check(MilkFields.CaseinToFat, ratio);
        if (gate.Shut) return gate.Refusal<double>();
        return gate.Answer(ratio, new Working(
            "Casein to fat for a fat in dry matter",
            "C/F = (RF/RC) (1/(RS FDM) - 1)",
            [new("FDM", fatInDryMatter.Percent, "%"), new("RF", factors.Fat.Likely), new("RC", factors.Casein.Likely), new("RS", factors.Solids.Likely)],
            [new("Casein to fat", ratio)],
            Sources.Arithmetic));
    }

    private static Gate Milk(Share fat, Share casein, Share moisture)
    {
        var gate = new Gate()
            .Check(MilkFields.MilkFat, fat.Percent)
            .Check(MilkFields.MilkCasein, casein.Percent)
            .Check(CompositionFields.Moisture, moisture.Percent);
        if (!gate.Shut && moisture.Fraction >= 1)
            gate.Refuse(ProblemKind.Contradiction, CompositionFields.Moisture, "Moisture of the cheese is 100 %; a cheese has solids.");
        return gate;
    }

    private static void Factors(Gate gate, YieldFactors factors) => gate
        .Check(CompositionFields.FatRecovery, factors.Fat.Likely)
        .Check(CompositionFields.CaseinRecovery, factors.Casein.Likely)
        .Check(CompositionFields.SolidsFactor, factors.Solids.Likely);
}
