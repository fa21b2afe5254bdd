using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Milk;

/// <summary>Brings a milk to a protein-to-fat ratio or a fat content by a mass balance with skim or cream.</summary>
/// <remarks>
/// Skim and cream share the milk's serum: Ps = P (1 - Fs)/(1 - F), fractions. Adding x of a stream (fat Fx, protein Px; negative x takes it
/// off) gives (m P + x Px)/(m F + x Fx) = r, so x = m (r F - P)/(Px - r Fx). Mass balance: derived. Targets: <see cref="StandardisingTarget"/>.
/// </remarks>
public static class Standardising
{
    /// <summary>The protein of the skim or cream that comes from a milk.</summary>
    /// <param name="milk">The milk.</param>
    /// <param name="streamFat">Fat of the skim or cream.</param>
    public static Share ProteinOfStream(MilkComposition milk, Share streamFat) =>
        milk.Protein * ((1 - streamFat.Fraction) / (1 - milk.Fat.Fraction));

    /// <summary>Plans with skim: added where the milk is too fat, taken off where it is too lean.</summary>
    /// <param name="milk">The milk.</param>
    /// <param name="mass">Its mass.</param>
    /// <param name="proteinToFat">Target r.</param>
    /// <param name="skimFat">Fat of the skim, 0 to 5 %.</param>
    public static Outcome<StandardisedMilk> WithSkim(MilkComposition milk, Mass mass, double proteinToFat, Share skimFat) =>
        ToRatio(milk, mass, proteinToFat, skimFat, MilkFields.SkimFat, StandardisingStep.AddSkim, StandardisingStep.RemoveSkim);

    /// <summary>Plans with cream: taken off where the milk is too fat, added where it is too lean.</summary>
    /// <param name="milk">The milk.</param>
    /// <param name="mass">Its mass.</param>
    /// <param name="proteinToFat">Target r.</param>
    /// <param name="creamFat">Fat of the cream, 5 to 85 %.</param>
    public static Outcome<StandardisedMilk> WithCream(MilkComposition milk, Mass mass, double proteinToFat, Share creamFat) =>
        ToRatio(milk, mass, proteinToFat, creamFat, MilkFields.CreamFat, StandardisingStep.AddCream, StandardisingStep.RemoveCream);

    /// <summary>P/F = (C/F)/CN. Source [GuelphCheese], read.</summary>
    /// <param name="milk">The milk, for its casein number.</param>
    /// <param name="caseinToFat">Target casein over fat.</param>
    public static double ProteinToFatFor(MilkComposition milk, double caseinToFat) => caseinToFat / milk.CaseinNumber;

    /// <summary>C/F = CN x P/F. Source [GuelphCheese], read.</summary>
    /// <param name="caseinNumber">Casein over protein.</param>
    /// <param name="proteinToFat">Protein over fat.</param>
    public static Outcome<double> CaseinToFatOf(double caseinNumber, double proteinToFat)
    {
        var gate = new Gate().Check(MilkFields.CaseinNumber, caseinNumber).Check(MilkFields.ProteinToFat, proteinToFat);
        if (gate.Shut) return gate.Refusal<double>();
        return gate.Answer(caseinNumber * proteinToFat, new Working(
            "Casein to fat",
            "C/F = CN x P/F",
            [new("Casein number", caseinNumber), new("Protein to fat", proteinToFat)],
            [new("Casein to fat", caseinNumber * proteinToFat)],
            Sources.GuelphCheese));
    }

    /// <summary>Plans a fat content with skim or cream of known fat, by the same balance.</summary>
    /// <param name="milk">The milk.</param>
    /// <param name="mass">Its mass.</param>
    /// <param name="targetFat">Target fat.</param>
    /// <param name="streamFat">Fat of the skim (below the target) or cream (above it).</param>
    public static Outcome<StandardisedMilk> ToFat(MilkComposition milk, Mass mass, Share targetFat, Share streamFat)
    {
        var gate = new Gate()
            .Check(MilkFields.MilkMass, mass.Kilograms)
            .Check(MilkFields.MilkFat, targetFat.Percent)
            .Check(MilkFields.StreamFat, streamFat.Percent);
        if (!gate.Shut && targetFat.Fraction.Equals(streamFat.Fraction))
        {
            gate.Refuse(ProblemKind.Contradiction, MilkFields.StreamFat, $"Fat of the skim or cream is {MilkFields.StreamFat.Show(streamFat.Percent)}, the same as the target; no amount of it changes the milk enough.");
        }

        if (gate.Shut) return gate.Refusal<StandardisedMilk>();
        var amount = mass.Kilograms * (milk.Fat - targetFat).Fraction / (targetFat - streamFat).Fraction;
        var isSkim = streamFat < targetFat;
        return Finish(gate, milk, mass, amount, streamFat, isSkim ? StandardisingStep.AddSkim : StandardisingStep.AddCream, isSkim ? StandardisingStep.RemoveSkim : StandardisingStep.RemoveCream, "x = m (F - T) / (T - Fx)", new Given("Target fat T", targetFat.Percent, "%"));
    }

    private static Outcome<StandardisedMilk> ToRatio(
        MilkComposition milk,
        Mass mass,
        double ratio,
        Share streamFat,
        Field fatField,
        StandardisingStep adding,
        StandardisingStep removing)
    {
        var gate = new Gate()
            .Check(MilkFields.MilkMass, mass.Kilograms)
            .Check(MilkFields.ProteinToFat, ratio)
            .Check(fatField, streamFat.Percent);
        if (gate.Shut) return gate.Refusal<StandardisedMilk>();
        var protein = ProteinOfStream(milk, streamFat);
        var slope = protein.Fraction - (ratio * streamFat.Fraction);
        var wanted = (ratio * milk.Fat.Fraction) - milk.Protein.Fraction;
        var isSkim = adding == StandardisingStep.AddSkim;
        if (isSkim ? slope <= 0 : slope >= 0)
        {
            gate.Refuse(ProblemKind.Contradiction, fatField, $"{fatField.Name} is {fatField.Show(streamFat.Percent)}; its own protein to fat is {Field.Number(protein / streamFat)}, on the wrong side of the target {Field.Number(ratio)}, so no amount of it reaches the target.");
            return gate.Refusal<StandardisedMilk>();
        }

        return Finish(gate, milk, mass, mass.Kilograms * wanted / slope, streamFat, adding, removing, "x = m (r F - P) / (Px - r Fx), Px = P (1 - Fx)/(1 - F)", new Given("Target protein to fat r", ratio));
    }

    private static Outcome<StandardisedMilk> Finish(
        Gate gate,
        MilkComposition milk,
        Mass mass,
        double added,
        Share streamFat,
        StandardisingStep adding,
        StandardisingStep removing,
        string formula,
        Given target)
    {
        var amount = Mass.FromKilograms(Math.Abs(added));
        var stream = new MilkPortion(amount, streamFat, ProteinOfStream(milk, streamFat));
        var before = new MilkPortion(mass, milk.Fat, milk.Protein);
        if (added < 0 && amount >= mass)
        {
            gate.Refuse(ProblemKind.Contradiction, MilkFields.MilkMass, $"{Field.Number(amount.Kilograms)} kg would have to be taken off {Field.Number(mass.Kilograms)} kg of milk; the target cannot be reached that way.");
            return gate.Refusal<StandardisedMilk>();
        }

        var after = added < 0 ? before.Without(stream) : before.With(stream);
        if (after.FatMass.Kilograms < 0 || after.ProteinMass.Kilograms < 0)
        {
            gate.Refuse(ProblemKind.Contradiction, MilkFields.StreamFat, "More would have to be taken off than the milk holds; the target cannot be reached that way.");
            return gate.Refusal<StandardisedMilk>();
        }

        var plan = new StandardisedMilk(added < 0 ? removing : adding, amount, stream, after);
        if (amount.Kilograms > mass.Kilograms)
        {
            gate.Ask(MilkFields.MilkMass, $"The plan adds {Field.Number(amount.Kilograms)} kg to {Field.Number(mass.Kilograms)} kg of milk, more than there was: is the target right?");
        }

        return gate.Answer(plan, new Working(
            "Standardising the milk",
            formula,
            [
                new("Milk m", mass.Kilograms, "kg"),
                new("Fat F", milk.Fat.Percent, "%"),
                new("Protein P", milk.Protein.Percent, "%"),
                new("Fat of the stream Fx", streamFat.Percent, "%"),
                target,
            ],
            [
                new(added < 0 ? "Take off" : "Add", amount.Kilograms, "kg"),
                new("Fat afterwards", after.Fat.Percent, "%"),
                new("Protein afterwards", after.Protein.Percent, "%"),
            ],
            Sources.Arithmetic)
        {
            Domain = "By mass; skim and cream share the milk's serum",
            LikelyError = "As good as the fat and protein that went in: repeat the sum with the label's rounding to see what it is worth.",
        });
    }
}
