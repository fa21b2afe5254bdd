using Trier.Dairy.Composition;
using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;
using static Trier.Dairy.Workings.Status;

namespace Trier.Dairy.Tests;

public static partial class WorkedExamples
{
    private static Share Pct(double percent) => Share.FromPercent(percent);

    private static Temperature C(double celsius) => Temperature.FromCelsius(celsius);

    private static Mass Kg(double kilograms) => Mass.FromKilograms(kilograms);

    private static Volume L(double litres) => Volume.FromLitres(litres);

    private static MilkComposition FatMilk => Value(MilkComposition.Create(Pct(4.0), Pct(3.55)));

    private static MilkComposition CheeseMilk => Value(MilkComposition.Create(Pct(4.0), Pct(3.30)));

    private static YieldFactors Cheddar => YieldFactors.Exactly(0.93, 0.96, 1.09);

    private static YieldFactors Alpine => YieldFactors.Exactly(0.85, 0.96, 1.09);

    private static IEnumerable<WorkedExample> Milk()
    {
        const string illinois = "Illinois lactation page";
        const string goff = "Goff table, web copy";
        const string guelph = "Guelph cheese e-book";
        const string balance = "mass balance";
        yield return Check("M1", illinois, Read, () => Value(MilkDensity.ByFormula(Pct(4.0), Pct(8.95), C(4))).KilogramsPerLitre);
        yield return Check("M2", illinois, Read, () => Value(MilkDensity.ByFormula(Pct(3.6), Pct(8.6), C(10))).KilogramsPerLitre);
        yield return Check("M3", illinois, Read, () => Value(MilkAmount.MassOf(FatMilk, L(20), C(4))).Kilograms);
        yield return Check("M4", goff, Secondary, () => Value(MilkDensity.ByTable(Pct(4.0), C(32))).KilogramsPerLitre);
        yield return Check("M5", goff, Secondary, () => Value(MilkAmount.MassOf(FatMilk, L(20), C(32))).Kilograms);
        yield return Check("M6", "historic lactometer formula", Read, () => Value(TotalSolids.ByRichmond(31, Pct(3.5))).Percent);
        yield return Check("M6b", "historic lactometer formula", Read, () => Value(TotalSolids.ByHehnerRichmond(31, Pct(3.5))).Percent);
        yield return Check("M6c", "BS 734 (1957)", Read, () => Value(TotalSolids.ByBritishStandard(31, Pct(3.5))).Percent);
        yield return Check("M7", guelph, Read, () => Value(PearsonSquare.SecondStream(Kg(500), Pct(4), Pct(35), Pct(10))).Kilograms);
        yield return Check("M8", balance, Derived, () => Value(PearsonSquare.SecondStream(Kg(20), Pct(4), Pct(0.05), Pct(3))).Kilograms);
        yield return Check("M9", balance, Derived, () => Standardising.ProteinOfStream(CheeseMilk, Pct(0.05)).Percent);
        StandardisedMilk Skim() => Value(Standardising.WithSkim(CheeseMilk, Kg(20), 1.10, Pct(0.05)));
        StandardisedMilk Cream() => Value(Standardising.WithCream(CheeseMilk, Kg(20), 1.10, Pct(35)));
        yield return Check("M10", balance, Derived, () => Skim().Amount.Kilograms);
        yield return Check("M10b", balance, Derived, () => Skim().Result.Fat.Percent);
        yield return Check("M10c", balance, Derived, () => Skim().Result.Protein.Percent);
        yield return Check("M11", balance, Derived, () => Cream().Amount.Kilograms);
        yield return Check("M11b", balance, Derived, () => Cream().Result.Fat.Percent);
        yield return Check("M11c", balance, Derived, () => Cream().ProteinToFat);
        double CaseinNumber() => Value(MilkComposition.CaseinNumberOf(Pct(2.6), Pct(3.3)));
        yield return Check("M12", guelph, Read, CaseinNumber);
        yield return Check("M13.1", "Guelph Cheddar page", Read, () => Value(Standardising.CaseinToFatOf(CaseinNumber(), 0.91)));
        yield return Check("M13.2", "Chandan and Kilara 2008", Read, () => Value(Standardising.CaseinToFatOf(CaseinNumber(), 1.10)));
        yield return Check("M13.3", "Guelph Romano page", Read, () => Value(Standardising.CaseinToFatOf(CaseinNumber(), 1.50)));

        const string general = "general yield form";
        double General(double fat, double casein, YieldFactors factors) => Value(PredictedYield.General(Pct(fat), Pct(casein), Pct(37), factors)).Likely.KilogramsPer100Kilograms;
        yield return Check("Y1", guelph, Read, () => Value(PredictedYield.VanSlyke(Pct(3.6), Pct(2.5), Pct(37))).KilogramsPer100Kilograms);
        yield return Check("Y2", "Wisconsin-linked page", Read, () => General(3.6, 2.5, YieldFactors.Exactly(0.92, 0.95, 1.09)));
        yield return Check("Y2b", general, Derived, () => General(3.6, 2.5, Cheddar));
        yield return Check("Y3", "alpine factors", Memory, () => General(3.2, 2.6, Alpine));
        double FromVat() => ActualYield.Cheese(CheeseYield.FromKilogramsPer100Kilograms(General(3.2, 2.6, Alpine)), Kg(20 * 1.03)).Kilograms;
        yield return Check("Y4", "alpine factors", Memory, FromVat);
        yield return Check("Y5", balance, Derived, () => Value(ActualYield.Efficiency(Kg(1.85), Kg(FromVat()))).Percent);
        var eleven = CheeseYield.FromKilogramsPer100Kilograms(11);
        yield return Check("Y6", guelph, Derived, () => Value(ActualYield.Adjusted(eleven, Pct(37), Pct(39))).KilogramsPer100Kilograms);
        yield return Check("Y7", guelph, Derived, () => Value(ActualYield.Adjusted(eleven, Pct(37), Pct(39), Pct(1.7), Pct(1.7))).KilogramsPer100Kilograms);
        CheeseComposition Cheese() => Value(CheeseComposition.Create(Pct(37), Pct(31), Pct(1)));
        yield return Check("Y8", "Codex A-6", Read, () => Cheese().FatInDryMatter.Percent);
        yield return Check("Y9", "Codex A-6", Read, () => Cheese().MoistureInFatFree.Percent);
        yield return Check("Y10", "definition", Derived, () => Cheese().SaltInMoisture.GramsPer100Grams);
        yield return Check("Y11", "definition", Derived, () => Cheese().SaltInBrinePhase.Percent);
        CheeseComposition Dried(double fat, double from, double to) => Value(Value(CheeseComposition.Create(Pct(40), Pct(fat), Pct(1))).Dried(Kg(from), Kg(to)));
        yield return Check("Y12", balance, Derived, () => Dried(31, 2.0, 1.8).Moisture.Percent);
        yield return Check("Y13", balance, Derived, () => Dried(31, 2.0, 1.8).Fat.Percent);
        yield return Check("W2", balance, Derived, () => Dried(31, 2.0, 1.88).Moisture.Percent);
        yield return Check("W1", balance, Derived, () => Value(WeightLoss.PerDay(Kg(2), Kg(1.88), 60)).Percent);
        double LeastFat(string section) => StandardOfIdentity.All.First(entry => entry.Reference == section).LeastFatAtMostMoisture!.Value.Percent;
        yield return Check("Y14", "21 CFR 133.195", Read, () => LeastFat("133.195"));
        yield return Check("Y14b", "21 CFR 133.113", Read, () => LeastFat("133.113"));
        yield return Check("Y15", "alpine factors", Memory, () => Value(PredictedYield.FatInDryMatter(2.6 / 3.2, Alpine)).Percent);
        yield return Check("Y15b", general, Derived, () => Value(PredictedYield.FatInDryMatter(2.5 / 3.6, Cheddar)).Percent);
        yield return Check("Y16", "alpine factors", Memory, () => Value(PredictedYield.CaseinToFatFor(Pct(45), Alpine)));
        yield return Check("Y16b", general, Derived, () => Value(PredictedYield.CaseinToFatFor(Pct(52), Cheddar)));
        yield return Check("Y16c", "alpine factors", Memory, () => Value(PredictedYield.CaseinToFatFor(Pct(48), Alpine)));
        yield return Check("Y17", "alpine factors", Memory, () => Value(PredictedYield.FatInDryMatter(0.867, Alpine)).Percent);
        yield return Check("I1", "21 CFR 133.195", Read, () => Value(CheeseComposition.Create(Pct(40.5), Pct(26), Pct(1))).FatInDryMatter.Percent);
        yield return Check("I2", "21 CFR 133.195", Read, () => Value(CheeseComposition.Create(Pct(40.5), Pct(25.5), Pct(1))).FatInDryMatter.Percent);
    }
}
