using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Eyes;

/// <summary>What a void fraction asks for, before losses.</summary>
/// <param name="EyeVolume">Volume of the eyes.</param>
/// <param name="Gas">Gas in eyes and paste together.</param>
/// <param name="LacticAcid">Lactic acid that must turn, as a part of the cheese.</param>
public sealed record VoidNeed(Volume EyeVolume, GasContent Gas, Share LacticAcid);

/// <summary>Gas, eyes and void: Veyes = m/rho x f/(1 - f); gas = Veyes/(Vm m) + solubility. Derived, with [Fitz] for the lactic acid.</summary>
public static class GasForVoid
{
    /// <summary>The need of a void fraction.</summary>
    /// <param name="cheese">Mass of the wheel.</param>
    /// <param name="solid">Density of the close cheese.</param>
    /// <param name="voids">Void fraction, 0 to 0.9.</param>
    /// <param name="at">Temperature.</param>
    public static Outcome<VoidNeed> Of(Mass cheese, Density solid, double voids, Temperature at)
    {
        var gate = new Gate()
            .Check(Composition.CompositionFields.CheeseMass, cheese.Kilograms)
            .Check(EyeFields.SolidDensity, solid.KilogramsPerCubicMetre)
            .Check(EyeFields.Void, voids);
        if (gate.Shut) return gate.Refusal<VoidNeed>();
        var eyes = Volume.FromLitres(cheese.Kilograms / solid.KilogramsPerLitre * voids / (1 - voids));
        var gas = GasContent.FromMillimolesPerKilogram(1000 * eyes.Litres / PropionicFermentation.LitresPerMole(at) / cheese.Kilograms) + GasBudget.Solubility.Likely;
        var need = new VoidNeed(eyes, gas, Share.FromFraction(gas.MillimolesPerKilogram * PropionicFermentation.LacticAcid / 1e6));
        return gate.Answer(need, new Working(
            "Gas a void asks for",
            "Veyes = m/rho f/(1 - f); gas = Veyes/(Vm m) + solubility",
            [new("Mass m", cheese.Kilograms, "kg"), new("Density rho", solid.KilogramsPerCubicMetre, "kg/m3"), new("Void f", voids)],
            [new("Eyes", eyes.Litres, "L"), new("Gas", gas.MillimolesPerKilogram, "mmol/kg"), new("Lactic acid", need.LacticAcid.Percent, "%")],
            Sources.Fitz)
        {
            LikelyError = "Solubility 30 to 40 mmol/kg; losses come on top.",
        });
    }

    /// <summary>Void fraction of a wheel whose eyes hold a volume: Ve/(Ve + m/rho). Derived.</summary>
    /// <param name="eyes">Volume of the eyes, zero or more.</param>
    /// <param name="cheese">Mass of the wheel.</param>
    /// <param name="solid">Density of the close cheese.</param>
    public static double VoidOf(Volume eyes, Mass cheese, Density solid) =>
        eyes.Litres / (eyes.Litres + (cheese.Kilograms / solid.KilogramsPerLitre));
}
