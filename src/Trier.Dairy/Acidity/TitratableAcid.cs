using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Acidity;

/// <summary>Titratable acidity from a titration: % = mL N 90.08/(10 mL sample), grams of lactic acid in 100 mL. Source [Hanna], read.</summary>
/// <remarks>The result is w/v; divide by the density for w/w (1 to 3 %). Unit conversions are on <see cref="TitratableAcidity"/>. Fresh cheese milk 6.0 to 7.4 SH (read, glossary).</remarks>
public static class TitratableAcid
{
    /// <summary>Molar mass of lactic acid, g/mol.</summary>
    public const double LacticAcidMolarMass = 90.08;

    /// <summary>The acidity of a titrated sample.</summary>
    /// <param name="sample">Sample.</param>
    /// <param name="alkali">Alkali used to the phenolphthalein end point.</param>
    /// <param name="normality">Its normality.</param>
    public static Outcome<TitratableAcidity> Of(Volume sample, Volume alkali, double normality)
    {
        var gate = new Gate()
            .Check(AcidityFields.SampleVolume, sample.Millilitres)
            .Check(AcidityFields.AlkaliVolume, alkali.Millilitres)
            .Check(AcidityFields.Normality, normality);
        if (gate.Shut) return gate.Refusal<TitratableAcidity>();
        var acidity = TitratableAcidity.FromPercentLactic(alkali.Millilitres * normality * LacticAcidMolarMass / (10 * sample.Millilitres));
        return gate.Answer(acidity, new Working(
            "Titratable acidity",
            "% = mL N 90.08 / (10 mL sample)",
            [new("Sample", sample.Millilitres, "mL"), new("Alkali", alkali.Millilitres, "mL"), new("Normality N", normality, "N")],
            [new("Acidity", acidity.PercentLactic, "% w/v"), new("Acidity", acidity.DegreesDornic, "D"), new("Acidity", acidity.DegreesSoxhletHenkel, "SH")],
            Sources.Hanna)
        {
            LikelyError = "One drop (0.05 mL) on 9 mL is 0.005 %.",
        });
    }

    /// <summary>An acidity known in one unit, for reading it in the others.</summary>
    /// <param name="acidity">The acidity.</param>
    public static Outcome<TitratableAcidity> Known(TitratableAcidity acidity)
    {
        var gate = new Gate().Check(AcidityFields.Acidity, acidity.PercentLactic);
        if (gate.Shut) return gate.Refusal<TitratableAcidity>();
        return gate.Answer(acidity, new Working(
            "Units of titratable acidity",
            "1 SH = 2.25 D = 2.5 Th = 0.0225 %",
            [new("Acidity", acidity.PercentLactic, "% w/v")],
            [new("Acidity", acidity.DegreesSoxhletHenkel, "SH"), new("Acidity", acidity.DegreesDornic, "D"), new("Acidity", acidity.DegreesThoerner, "Th")],
            Sources.Hanna));
    }
}
