using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Rennet;

/// <summary>What a label's calcium chloride is counted as.</summary>
public enum CalciumForm
{
    /// <summary>CaCl2 without water.</summary>
    Anhydrous,

    /// <summary>CaCl2 . 2 H2O, the usual crystal.</summary>
    Dihydrate,
}

/// <summary>Calcium chloride: cap, dose, and the two ways a label counts it.</summary>
/// <remarks>
/// Cap for the standardised cheeses 0.02 % anhydrous of the milk [CFR133], read. Reference dose 0.15 g/L [Clerici], read. Not needed for fresh raw
/// milk (practice). Molar masses 110.984 and 147.014 g/mol: derived. Ask what the label means: 33 % is often of the dihydrate.
/// </remarks>
public static class CalciumChloride
{
    private const double CapShare = 0.0002;

    /// <summary>Anhydrous calcium chloride in a gram of dihydrate.</summary>
    public static double AnhydrousInDihydrate => 110.984 / 147.014;

    /// <summary>The cap: 0.02 % of the milk, as anhydrous.</summary>
    /// <param name="milk">Mass of milk.</param>
    public static Outcome<Mass> Cap(Mass milk)
    {
        var gate = new Gate().Check(MilkFields.MilkMass, milk.Kilograms);
        if (gate.Shut) return gate.Refusal<Mass>();
        return gate.Answer(milk * CapShare, new Working(
            "Most calcium chloride allowed",
            "0.0002 m, anhydrous",
            [new("Milk m", milk.Kilograms, "kg")],
            [new("Calcium chloride, anhydrous", milk.Grams * CapShare, "g")],
            Sources.Cfr133)
        {
            Domain = "Standardised cheeses of the United States; the law where the cheese is made decides",
        });
    }

    /// <summary>Anhydrous grams for a dose per litre; asks where it is above the cap.</summary>
    /// <param name="milk">Volume of milk.</param>
    /// <param name="gramsPerLitre">Anhydrous grams per litre.</param>
    public static Outcome<Mass> Dose(Volume milk, double gramsPerLitre)
    {
        var gate = new Gate().Check(MilkFields.MilkVolume, milk.Litres).Check(RennetFields.Calcium, gramsPerLitre);
        if (gate.Shut) return gate.Refusal<Mass>();
        if (gramsPerLitre > 1.03 * CapShare * 1000)
            gate.Ask(RennetFields.Calcium, $"{RennetFields.Calcium.Show(gramsPerLitre)} is above 0.02 % of the milk, the cap of 21 CFR 133: is the label's form counted right?");
        var dose = Mass.FromGrams(milk.Litres * gramsPerLitre);
        return gate.Answer(dose, new Working(
            "Calcium chloride",
            "g = V c, anhydrous",
            [new("Milk V", milk.Litres, "L"), new("Dose c", gramsPerLitre, "g/L")],
            [new("Calcium chloride, anhydrous", dose.Grams, "g")],
            Sources.Clerici));
    }

    /// <summary>The volume of a solution that holds this much anhydrous calcium chloride. Derived.</summary>
    /// <param name="anhydrous">Anhydrous mass.</param>
    /// <param name="gramsPer100Millilitres">The label's % w/v.</param>
    /// <param name="form">What the label counts.</param>
    public static Outcome<Volume> OfSolution(Mass anhydrous, double gramsPer100Millilitres, CalciumForm form)
    {
        var gate = new Gate().Check(RennetFields.CalciumSolution, gramsPer100Millilitres);
        if (gate.Shut) return gate.Refusal<Volume>();
        var perMillilitre = gramsPer100Millilitres / 100 * (form == CalciumForm.Dihydrate ? AnhydrousInDihydrate : 1);
        var volume = Volume.FromMillilitres(anhydrous.Grams / perMillilitre);
        return gate.Answer(volume, new Working(
            "Calcium chloride solution",
            "mL = g / (c/100), c of the dihydrate times 0.7549",
            [new("Anhydrous", anhydrous.Grams, "g"), new("Solution c", gramsPer100Millilitres, "% w/v")],
            [new("Solution", volume.Millilitres, "mL")],
            Sources.Arithmetic)
        {
            LikelyError = "A third too little or too much if the label's form is mistaken.",
        });
    }
}
