using Trier.Dairy.Eyes;
using Trier.Dairy.Quantities;
using static Trier.Dairy.Workings.Status;

namespace Trier.Dairy.Tests;

public static partial class WorkedExamples
{
    private static double Solid(double water, double protein, double fat, double sugar, double ash, double at, Density? fatDensity = null) =>
        Value(SolidDensity.Of(new Components(Pct(water), Pct(protein), Pct(fat), Pct(sugar), Pct(ash)), C(at), fatDensity)).Likely.KilogramsPerCubicMetre;

    private static double Voids(double solid) =>
        Value(Swelling.VoidFraction(Kg(1.95), Wheel(18, 8), Density.FromKilogramsPerCubicMetre(solid))).Likely;

    private static IEnumerable<WorkedExample> Gas()
    {
        const string fitz = "ideal propionic equation";
        const string balance = "McSweeney and Fox 2004, as quoted";
        var room = C(20);
        yield return Check("E1", fitz, Memory, () => PropionicFermentation.LacticAcid - PropionicFermentation.PropionicAcid - PropionicFermentation.AceticAcid - PropionicFermentation.CarbonDioxide - PropionicFermentation.Water);
        PropionicProducts OneGram() => PropionicFermentation.From(Mass.FromGrams(1));
        yield return Check("E2", fitz, Memory, () => OneGram().CarbonDioxide.Grams);
        yield return Check("E2b", fitz, Memory, () => OneGram().GasAt(room).Millilitres);
        yield return Check("E2c", fitz, Memory, () => OneGram().PropionicAcid.Grams);
        yield return Check("E2d", fitz, Memory, () => OneGram().AceticAcid.Grams);
        PropionicProducts Wheel2() => PropionicFermentation.From(Kg(2 * 0.014 * 0.6));
        yield return Check("E3", fitz, Memory, () => Wheel2().MolesOfGas);
        yield return Check("E3b", fitz, Memory, () => Wheel2().GasAt(room).Litres);
        yield return Check("E3c", fitz, Memory, () => Wheel2().Per(Kg(2)).MillimolesPerKilogram);
        yield return Check("E4", balance, Read, () => PropionicFermentation.From(PropionicFermentation.LacticAcidFor(L(60), room)).Per(Kg(80)).MillimolesPerKilogram);
        yield return Check("E5", balance, Read, () => PropionicFermentation.LacticAcidFor(L(120), room).Grams);
        yield return Check("E5b", balance, Read, () => 100 * (PropionicFermentation.LacticAcidFor(L(120), room) / Kg(80)));
        yield return Check("E6", balance, Read, () => GasForVoid.VoidOf(L(20), Kg(80), Density.FromKilogramsPerCubicMetre(1090)));
        yield return Check("E8", balance, Read, () => Wheel2().Per(Kg(2)).MillimolesPerKilogram - GasBudget.Solubility.Likely.MillimolesPerKilogram);
        VoidNeed Need() => Value(GasForVoid.Of(Kg(2), Density.FromKilogramsPerCubicMetre(1075), 0.08, room));
        yield return Check("E9", balance, Read, () => Need().EyeVolume.Litres);
        yield return Check("E9b", balance, Read, () => Need().Gas.MillimolesPerKilogram);
        yield return Check("E9c", balance, Read, () => Need().LacticAcid.Percent);
        yield return Check("E10", "finite cylinder, D fitted to the 80 kg wheel", Derived, () => GasBudget.ShareLost(Wheel(80, 15), TimeSpan.FromDays(45), GasBudget.GasDiffusivity.Likely));
        yield return Check("E10b", "finite cylinder, D fitted to the 80 kg wheel", Derived, () => GasBudget.ShareLost(Wheel(18, 8), TimeSpan.FromDays(21), GasBudget.GasDiffusivity.Likely));
        double[] inches = [1.0 / 8, 5.0 / 16, 3.0 / 8, 11.0 / 16, 13.0 / 16, 1];
        for (var i = 0; i < inches.Length; i++)
        {
            var inch = Length.FromInches(inches[i]);
            yield return Check($"E7.{i + 1}", "definition of the inch", Derived, () => inch.Millimetres);
        }

        const string choi = "Choi and Okos 1986";
        yield return Check("V1", choi, Read, () => Solid(37, 27.5, 31, 0.5, 4, 12));
        yield return Check("T0b", choi, Read, () => Solid(37, 27.5, 31, 0.5, 4, 11));
        yield return Check("V1b", choi, Read, () => Solid(37, 27.5, 31, 0.5, 4, 20));
        yield return Check("V7", choi, Read, () => Solid(87.3, 3.3, 4.0, 4.7, 0.7, 20));
        yield return Check("V8", choi, Read, () => Solid(37, 27.5, 31, 0.5, 4, 12, Density.FromKilogramsPerCubicMetre(945)));
        yield return Check("V9", choi, Read, () => Solid(34.5, 29, 32, 0, 4.5, 12));
        yield return Check("V2", "geometry", Derived, () => Wheel(18, 8).Volume.CubicCentimetres);
        yield return Check("V3", "mass over volume", Derived, () => 1.95 / Wheel(18, 8).Volume.CubicMetres);
        yield return Check("V4", "mass over volume", Derived, () => Voids(1069.07));
        yield return Check("V8b", "mass over volume", Derived, () => Voids(1079.11));
        yield return Check("V4u", "propagation of error", Derived, () => Swelling.Uncertainty(Voids(1069.07), Wheel(18, 8), Length.FromMillimetres(1), Length.FromMillimetres(1), 0.01));
        yield return Check("V5", "geometry", Derived, () => Value(Swelling.Domes(Wheel(18, 8), Length.FromMillimetres(5))).CubicCentimetres);
        yield return Check("V6", "geometry", Derived, () => Value(Swelling.HeightFor(Length.FromCentimetres(8), 0.10)).Centimetres);
    }
}
