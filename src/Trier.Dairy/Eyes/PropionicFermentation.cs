using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Eyes;

/// <summary>3 lactic acid -> 2 propionic acid + acetic acid + CO2 + H2O.</summary>
/// <remarks>Source [Fitz], memory of high confidence. An upper guide to propionate, a lower to carbon dioxide: strains that use aspartate give more gas.</remarks>
public static class PropionicFermentation
{
    /// <summary>Mass of 3 mol of lactic acid, g.</summary>
    public const double LacticAcid = 270.234;

    /// <summary>Mass of 2 mol of propionic acid, g.</summary>
    public const double PropionicAcid = 148.158;

    /// <summary>Mass of 1 mol of acetic acid, g.</summary>
    public const double AceticAcid = 60.052;

    /// <summary>Mass of 1 mol of carbon dioxide, g.</summary>
    public const double CarbonDioxide = 44.009;

    /// <summary>Mass of 1 mol of water, g.</summary>
    public const double Water = 18.015;

    private const double GasConstant = 8.314462618;

    /// <summary>Litres of one mole of ideal gas at a temperature and 1 atm.</summary>
    /// <param name="at">Temperature.</param>
    public static double LitresPerMole(Temperature at) => GasConstant * at.Kelvin / 101.325;

    /// <summary>What this much lactic acid turns into.</summary>
    /// <param name="lacticAcid">Mass of lactic acid turned.</param>
    public static PropionicProducts From(Mass lacticAcid) => new(
        lacticAcid * (PropionicAcid / LacticAcid),
        lacticAcid * (AceticAcid / LacticAcid),
        lacticAcid * (CarbonDioxide / LacticAcid),
        lacticAcid * (Water / LacticAcid),
        lacticAcid.Grams / LacticAcid);

    /// <summary>Lactic acid that a volume of gas at 1 atm needs.</summary>
    /// <param name="gas">Gas.</param>
    /// <param name="at">Its temperature.</param>
    public static Mass LacticAcidFor(Volume gas, Temperature at) => Mass.FromGrams(gas.Litres / LitresPerMole(at) * LacticAcid);
}

/// <summary>Products of the propionic fermentation.</summary>
/// <param name="PropionicAcid">Propionic acid.</param>
/// <param name="AceticAcid">Acetic acid.</param>
/// <param name="CarbonDioxide">Carbon dioxide.</param>
/// <param name="Water">Water.</param>
/// <param name="MolesOfGas">Moles of carbon dioxide.</param>
public sealed record PropionicProducts(Mass PropionicAcid, Mass AceticAcid, Mass CarbonDioxide, Mass Water, double MolesOfGas)
{
    /// <summary>The gas at 1 atm and a temperature.</summary>
    /// <param name="at">Temperature.</param>
    public Volume GasAt(Temperature at) => Volume.FromLitres(MolesOfGas * PropionicFermentation.LitresPerMole(at));

    /// <summary>The gas in a mass of cheese.</summary>
    /// <param name="cheese">Mass of cheese.</param>
    public GasContent Per(Mass cheese) => GasContent.FromMillimolesPerKilogram(1000 * MolesOfGas / cheese.Kilograms);
}
