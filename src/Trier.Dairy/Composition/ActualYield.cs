using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Composition;

/// <summary>What came out of the vat against what was expected. All derived; the adjusted forms follow the Guelph book, whose formula images were not visible.</summary>
public static class ActualYield
{
    /// <summary>Y = 100 cheese/milk.</summary>
    /// <param name="cheese">Mass of cheese.</param>
    /// <param name="milk">Mass of milk.</param>
    public static Outcome<CheeseYield> Of(Mass cheese, Mass milk)
    {
        var gate = new Gate().Check(CompositionFields.CheeseMass, cheese.Kilograms).Check(MilkFields.MilkMass, milk.Kilograms);
        if (gate.Shut) return gate.Refusal<CheeseYield>();
        gate.Check(CompositionFields.Yield, 100 * (cheese / milk));
        return gate.Shut ? gate.Refusal<CheeseYield>() : Answer(gate, "Yield", "Y = 100 cheese / milk", 100 * (cheese / milk), new("Cheese", cheese.Kilograms, "kg"), new("Milk", milk.Kilograms, "kg"));
    }

    /// <summary>The cheese to expect from a milk: m = Y milk/100.</summary>
    /// <param name="yield">Yield.</param>
    /// <param name="milk">Mass of milk.</param>
    public static Mass Cheese(CheeseYield yield, Mass milk) => milk * (yield.KilogramsPer100Kilograms / 100);

    /// <summary>Yield efficiency: actual over predicted, per cent. Home vats 90 to 97 % (practice).</summary>
    /// <param name="actual">Cheese obtained.</param>
    /// <param name="predicted">Cheese predicted.</param>
    public static Outcome<Share> Efficiency(Mass actual, Mass predicted)
    {
        var gate = new Gate().Check(CompositionFields.CheeseMass, actual.Kilograms).Check(CompositionFields.CheeseMass, predicted.Kilograms);
        if (gate.Shut) return gate.Refusal<Share>();
        return gate.Answer(Share.FromFraction(actual / predicted), new Working(
            "Yield against prediction",
            "actual / predicted",
            [new("Actual", actual.Kilograms, "kg"), new("Predicted", predicted.Kilograms, "kg")],
            [new("Efficiency", 100 * (actual / predicted), "%")],
            Sources.Arithmetic)
        {
            AlsoFrom = [Sources.Practice],
        });
    }

    /// <summary>Recovery of a component: what the cheese holds of what the milk held. Above 100 % a figure is wrong.</summary>
    /// <param name="cheese">Mass of cheese.</param>
    /// <param name="inCheese">Its content.</param>
    /// <param name="milk">Mass of milk.</param>
    /// <param name="inMilk">Its content, above 0.</param>
    public static Outcome<Share> Recovery(Mass cheese, Share inCheese, Mass milk, Share inMilk)
    {
        var gate = new Gate()
            .Check(CompositionFields.CheeseMass, cheese.Kilograms)
            .Check(CompositionFields.Fat, inCheese.Percent)
            .Check(MilkFields.MilkMass, milk.Kilograms)
            .Check(MilkFields.MilkFat, inMilk.Percent);
        if (!gate.Shut && inMilk.Fraction <= 0)
            gate.Refuse(ProblemKind.NotEnough, MilkFields.MilkFat, "The milk's content is 0 %; a recovery needs something to recover.");
        if (gate.Shut) return gate.Refusal<Share>();
        var recovery = cheese * inCheese.Fraction / (milk * inMilk.Fraction);
        if (recovery > 1)
            gate.Ask(CompositionFields.FatRecovery, $"The cheese holds {Field.Number(100 * recovery)} % of what the milk held: one of the four figures must be off.");
        return gate.Answer(Share.FromFraction(recovery), new Working(
            "Recovery",
            "cheese x content / (milk x content)",
            [new("Cheese", cheese.Kilograms, "kg"), new("In the cheese", inCheese.Percent, "%"), new("Milk", milk.Kilograms, "kg"), new("In the milk", inMilk.Percent, "%")],
            [new("Recovery", 100 * recovery, "%")],
            Sources.Arithmetic));
    }

    /// <summary>Yadj = Y (100 - M - S)/(100 - Mstd - Sstd); leave the salts at 0 to adjust for moisture alone.</summary>
    /// <param name="yield">Y.</param>
    /// <param name="moisture">M as made.</param>
    /// <param name="standardMoisture">Mstd.</param>
    /// <param name="salt">S as made.</param>
    /// <param name="standardSalt">Sstd.</param>
    public static Outcome<CheeseYield> Adjusted(CheeseYield yield, Share moisture, Share standardMoisture, Share salt = default, Share standardSalt = default)
    {
        var gate = new Gate()
            .Check(CompositionFields.Yield, yield.KilogramsPer100Kilograms)
            .Check(CompositionFields.Moisture, moisture.Percent)
            .Check(CompositionFields.Moisture, standardMoisture.Percent);
        if (!gate.Shut && (1 - moisture.Fraction - salt.Fraction <= 0 || 1 - standardMoisture.Fraction - standardSalt.Fraction <= 0))
            gate.Refuse(ProblemKind.Contradiction, CompositionFields.Moisture, "Moisture and salt leave no other solids.");
        if (gate.Shut) return gate.Refusal<CheeseYield>();
        var adjusted = yield.KilogramsPer100Kilograms * (1 - moisture.Fraction - salt.Fraction) / (1 - standardMoisture.Fraction - standardSalt.Fraction);
        return Answer(gate, "Yield at a standard moisture", "Yadj = Y (100 - M - S) / (100 - Mstd - Sstd)", adjusted, new("Yield Y", yield.KilogramsPer100Kilograms, "kg/100 kg"), new("Moisture M", moisture.Percent, "%"), new("Standard Mstd", standardMoisture.Percent, "%"));
    }

    private static Outcome<CheeseYield> Answer(Gate gate, string title, string formula, double yield, params ReadOnlySpan<Given> inputs) =>
        gate.Answer(CheeseYield.FromKilogramsPer100Kilograms(yield), new Working(title, formula, Listed.Of(inputs), [new("Yield", yield, "kg/100 kg")], Sources.Arithmetic)
        {
            LikelyError = "Moisture known to 1 point moves an adjusted yield by 1.6 %.",
        });
}
