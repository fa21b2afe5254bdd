using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Composition;

/// <summary>Moisture, fat and salt of a cheese with the ratios of them; always possible together.</summary>
/// <remarks>FDM = 100 F/(100 - M), MNFS = 100 M/(100 - F), S/M = 100 S/M, brine-phase salt = 100 S/(S + M). Definitions: [CodexA6] and [CFR133], read.</remarks>
public sealed record CheeseComposition
{
    private CheeseComposition(Share moisture, Share fat, Share salt)
    {
        Moisture = moisture;
        Fat = fat;
        Salt = salt;
    }

    /// <summary>Moisture M.</summary>
    public Share Moisture { get; }

    /// <summary>Fat F.</summary>
    public Share Fat { get; }

    /// <summary>Salt S.</summary>
    public Share Salt { get; }

    /// <summary>Fat in dry matter.</summary>
    public Share FatInDryMatter => Share.FromFraction(Fat.Fraction / (1 - Moisture.Fraction));

    /// <summary>Moisture in the fat-free substance.</summary>
    public Share MoistureInFatFree => Share.FromFraction(Moisture.Fraction / (1 - Fat.Fraction));

    /// <summary>Grams of salt per 100 g of moisture.</summary>
    public SaltInMoisture SaltInMoisture => SaltInMoisture.FromGramsPer100Grams(100 * (Salt / Moisture));

    /// <summary>Salt as a part of the brine phase; not the same as S/M.</summary>
    public Share SaltInBrinePhase => Share.FromFraction(Salt.Fraction / (Salt + Moisture).Fraction);

    /// <summary>A composition, refused where the parts exceed the whole.</summary>
    /// <param name="moisture">Moisture.</param>
    /// <param name="fat">Fat.</param>
    /// <param name="salt">Salt.</param>
    public static Outcome<CheeseComposition> Create(Share moisture, Share fat, Share salt)
    {
        var gate = new Gate()
            .Check(CompositionFields.Moisture, moisture.Percent)
            .Check(CompositionFields.Fat, fat.Percent)
            .Check(CompositionFields.Salt, salt.Percent);
        if (!gate.Shut && (moisture + fat + salt).Fraction >= 1)
            gate.Refuse(ProblemKind.Contradiction, CompositionFields.Moisture, $"Moisture, fat and salt come to {Field.Number((moisture + fat + salt).Percent)} %; with protein they must stay below 100 %.");
        if (gate.Shut) return gate.Refusal<CheeseComposition>();
        var cheese = new CheeseComposition(moisture, fat, salt);
        return gate.Answer(cheese, new Working(
            "Composition ratios",
            "FDM = F/(1 - M); MNFS = M/(1 - F); S/M = S/M; brine phase = S/(S + M)",
            [new("Moisture M", moisture.Percent, "%"), new("Fat F", fat.Percent, "%"), new("Salt S", salt.Percent, "%")],
            [
                new("Fat in dry matter", cheese.FatInDryMatter.Percent, "%"),
                new("Moisture in fat-free substance", cheese.MoistureInFatFree.Percent, "%"),
                new("Salt in moisture", cheese.SaltInMoisture.GramsPer100Grams, "g/100 g"),
                new("Salt in brine phase", cheese.SaltInBrinePhase.Percent, "%"),
            ],
            Sources.CodexA6));
    }

    /// <summary>The composition after drying: solids stay. M2 = 1 - m1 (1 - M1)/m2. Derived; solids rubbed off are ignored.</summary>
    /// <param name="before">Mass before.</param>
    /// <param name="after">Mass after, not above the mass before.</param>
    public Outcome<CheeseComposition> Dried(Mass before, Mass after)
    {
        var gate = new Gate().Check(CompositionFields.CheeseMass, before.Kilograms).Check(CompositionFields.CheeseMass, after.Kilograms);
        if (!gate.Shut && (after > before || before.Kilograms * (1 - Moisture.Fraction) >= after.Kilograms))
            gate.Refuse(ProblemKind.Contradiction, CompositionFields.CheeseMass, $"Mass of the cheese goes from {Field.Number(before.Kilograms)} to {Field.Number(after.Kilograms)} kg; drying loses some of its {Field.Number(before.Kilograms * Moisture.Fraction)} kg of moisture, no more.");
        if (gate.Shut) return gate.Refusal<CheeseComposition>();
        var ratio = before / after;
        return gate.Answer(new CheeseComposition(Share.FromFraction(1 - ((1 - Moisture.Fraction) * ratio)), Fat * ratio, Salt * ratio), new Working(
            "Composition after drying",
            "M2 = 1 - m1 (1 - M1) / m2; F2 = F1 m1 / m2",
            [new("Mass before m1", before.Kilograms, "kg"), new("Mass after m2", after.Kilograms, "kg"), new("Moisture M1", Moisture.Percent, "%")],
            [new("Moisture M2", 100 * (1 - ((1 - Moisture.Fraction) * ratio)), "%"), new("Fat F2", Fat.Percent * ratio, "%")],
            Sources.Arithmetic)
        {
            LikelyError = "As good as the starting moisture; a scale's 5 g on 2 kg is 0.15 points.",
        });
    }
}
