using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Milk;

/// <summary>What a milk is made of, by mass; always within the possible ranges.</summary>
/// <remarks>Made by <see cref="Create"/> from a label or an analysis, or taken from <see cref="TypicalMilk"/>.</remarks>
public sealed record MilkComposition
{
    private MilkComposition(Share fat, Share protein, Share casein, Share lactose, Share ash)
    {
        Fat = fat;
        Protein = protein;
        Casein = casein;
        Lactose = lactose;
        Ash = ash;
    }

    /// <summary>Fat.</summary>
    public Share Fat { get; }

    /// <summary>Total protein.</summary>
    public Share Protein { get; }

    /// <summary>Casein, a part of the protein.</summary>
    public Share Casein { get; }

    /// <summary>Lactose.</summary>
    public Share Lactose { get; }

    /// <summary>Ash.</summary>
    public Share Ash { get; }

    /// <summary>Casein over protein.</summary>
    public double CaseinNumber => Casein / Protein;

    /// <summary>Protein, lactose and ash together.</summary>
    public Share SolidsNotFat => Protein + Lactose + Ash;

    /// <summary>All solids.</summary>
    public Share TotalSolids => Fat + SolidsNotFat;

    /// <summary>Protein over fat.</summary>
    public double ProteinToFat => Protein / Fat;

    /// <summary>Casein over fat.</summary>
    public double CaseinToFat => Casein / Fat;

    /// <summary>
    /// A milk by a label or an analysis. C = CN x P where only the casein number is known; 0.78 unless given
    /// (2.6/3.3 = 0.788 for cow's milk, read in [GuelphCheese]).
    /// </summary>
    /// <param name="fat">Fat, 0 to 20 %.</param>
    /// <param name="protein">Total protein, above 0 to 12 %.</param>
    /// <param name="caseinNumber">Casein over protein, 0.4 to 0.95.</param>
    /// <param name="lactose">Lactose; 4.7 % if not given.</param>
    /// <param name="ash">Ash; 0.7 % if not given.</param>
    public static Outcome<MilkComposition> Create(Share fat, Share protein, double caseinNumber = 0.78, Share? lactose = null, Share? ash = null)
    {
        var sugar = lactose ?? Share.FromPercent(4.7);
        var minerals = ash ?? Share.FromPercent(0.7);
        var gate = new Gate()
            .Check(MilkFields.MilkFat, fat.Percent)
            .Check(MilkFields.MilkProtein, protein.Percent)
            .Check(MilkFields.CaseinNumber, caseinNumber)
            .Check(MilkFields.MilkLactose, sugar.Percent)
            .Check(MilkFields.MilkAsh, minerals.Percent);
        if (gate.Shut) return gate.Refusal<MilkComposition>();
        var milk = new MilkComposition(fat, protein, protein * caseinNumber, sugar, minerals);
        return gate.Answer(milk, new Working(
            "Composition of the milk",
            "C = CN x P; SNF = P + lactose + ash",
            [new("Fat", fat.Percent, "%"), new("Protein", protein.Percent, "%"), new("Casein number", caseinNumber)],
            [new("Casein", milk.Casein.Percent, "%"), new("Solids-not-fat", milk.SolidsNotFat.Percent, "%")],
            Sources.GuelphCheese)
        {
            LikelyError = "The casein number of one milk can be 0.03 off; a label's fat is rounded to 0.1 %.",
        });
    }

    /// <summary>CN = C/P, the casein number. Source [GuelphCheese], read.</summary>
    /// <param name="casein">Casein.</param>
    /// <param name="protein">Total protein.</param>
    public static Outcome<double> CaseinNumberOf(Share casein, Share protein)
    {
        var gate = new Gate().Check(MilkFields.MilkCasein, casein.Percent).Check(MilkFields.MilkProtein, protein.Percent);
        if (gate.Shut) return gate.Refusal<double>();
        var number = casein / protein;
        gate.Check(MilkFields.CaseinNumber, number);
        if (gate.Shut) return gate.Refusal<double>();
        return gate.Answer(number, new Working(
            "Casein number",
            "CN = C / P",
            [new("Casein", casein.Percent, "%"), new("Protein", protein.Percent, "%")],
            [new("Casein number", number)],
            Sources.GuelphCheese));
    }
}
