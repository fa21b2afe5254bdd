using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Brine;

/// <summary>A brine as salt and water by mass.</summary>
/// <remarks>Brine does not clean itself: Listeria lived in brines for months [GuelphCheese and others]; log age and what went through, and boil a brine from raw-milk or faulty wheels before others go in.</remarks>
/// <param name="Salt">Salt.</param>
/// <param name="Water">Water.</param>
public sealed record BrineBatch(Mass Salt, Mass Water)
{
    /// <summary>Salt solubility: 35.9 g in 100 g of water at 25 C, almost flat with temperature (read).</summary>
    public const double SaturatedGramsPer100GramsWater = 35.9;

    /// <summary>Salt and water together.</summary>
    public Mass Total => Salt + Water;

    /// <summary>Salt by mass.</summary>
    public Share Strength => Share.FromFraction(Salt / Total);

    /// <summary>mass = V rho; salt = s mass; water the rest. Derived, with density from [Wnt1974].</summary>
    /// <param name="volume">Volume wanted.</param>
    /// <param name="strength">Strength wanted.</param>
    /// <param name="at">Temperature, 5 to 25 C.</param>
    public static Outcome<BrineBatch> Make(Volume volume, Share strength, Temperature at)
    {
        var gate = new Gate().Check(BrineFields.BrineVolume, volume.Litres);
        var density = gate.Take(BrineDensity.Of(strength, at));
        if (gate.Shut) return gate.Refusal<BrineBatch>();
        var mass = Mass.FromKilograms(volume.Litres * density.KilogramsPerLitre);
        var batch = new BrineBatch(mass * strength.Fraction, mass * (1 - strength.Fraction));
        return gate.Answer(batch, new Working(
            "Making brine",
            "mass = V rho; salt = s mass; water = mass - salt",
            [new("Volume V", volume.Litres, "L"), new("Strength s", strength.Percent, "%"), new("Density rho", density.KilogramsPerLitre, "kg/L")],
            [new("Salt", batch.Salt.Kilograms, "kg"), new("Water", batch.Water.Kilograms, "kg")],
            Sources.Arithmetic)
        {
            LikelyError = "As good as the scale; fresh brine also wants calcium and the cheese's pH, about 5.2.",
        });
    }

    /// <summary>s = salt/(salt + water). Note that 200 g to a litre of water is 16.7 %, not 20 %.</summary>
    /// <param name="salt">Salt.</param>
    /// <param name="water">Water, above 0.</param>
    public static Outcome<Share> StrengthOf(Mass salt, Mass water)
    {
        var gate = new Gate().Check(BrineFields.Amount, salt.Kilograms).Check(BrineFields.Amount with { LowestExcluded = true }, water.Kilograms);
        if (gate.Shut) return gate.Refusal<Share>();
        if (salt / water > (SaturatedGramsPer100GramsWater + 0.5) / 100)
            gate.Ask(BrineFields.Strength, $"{Field.Number(100 * (salt / water))} g of salt to 100 g of water is more than dissolves (35.9 g): the rest lies on the bottom.");
        return gate.Answer(new BrineBatch(salt, water).Strength, new Working(
            "Strength of a brine",
            "s = salt / (salt + water)",
            [new("Salt", salt.Kilograms, "kg"), new("Water", water.Kilograms, "kg")],
            [new("Strength", 100 * (salt / (salt + water)), "%")],
            Sources.Arithmetic));
    }

    /// <summary>Salt to a kilogram of water for a strength: 1000 s/(1 - s) grams.</summary>
    /// <param name="strength">Strength.</param>
    public static Outcome<Mass> SaltPerKilogramOfWater(Share strength)
    {
        var gate = new Gate().Check(BrineFields.Strength, strength.Percent);
        if (gate.Shut) return gate.Refusal<Mass>();
        var salt = Mass.FromGrams(1000 * strength.Fraction / (1 - strength.Fraction));
        return gate.Answer(salt, new Working(
            "Salt to a kilogram of water",
            "g = 1000 s / (1 - s)",
            [new("Strength s", strength.Percent, "%")],
            [new("Salt", salt.Grams, "g/kg water")],
            Sources.Arithmetic));
    }

    /// <summary>The brine after cheese took salt and gave water: s' = (S - a)/(T - a + w).</summary>
    /// <param name="saltTaken">a, salt that went into the cheese.</param>
    /// <param name="waterGained">w, water that came out; 2 a if not given (2.4 near the surface falling to 0.5 inside [GuineeFox1983], read).</param>
    public Outcome<BrineBatch> After(Mass saltTaken, Mass? waterGained = null)
    {
        var water = waterGained ?? (saltTaken * 2);
        var gate = new Gate().Check(BrineFields.Amount, saltTaken.Kilograms).Check(BrineFields.Amount, water.Kilograms);
        if (!gate.Shut && saltTaken > Salt)
            gate.Refuse(ProblemKind.Contradiction, BrineFields.Amount, $"The cheese is said to have taken {Field.Number(saltTaken.Kilograms)} kg of salt from a brine that held {Field.Number(Salt.Kilograms)} kg.");
        if (gate.Shut) return gate.Refusal<BrineBatch>();
        var after = new BrineBatch(Salt - saltTaken, Water + water);
        return gate.Answer(after, new Working(
            "Brine after a batch",
            "s' = (S - a) / (T - a + w)",
            [new("Salt S", Salt.Kilograms, "kg"), new("Brine T", Total.Kilograms, "kg"), new("Salt taken a", saltTaken.Kilograms, "kg"), new("Water gained w", water.Kilograms, "kg")],
            [new("Strength", after.Strength.Percent, "%")],
            Sources.Arithmetic)
        {
            LikelyError = "Water gained is 0.5 to 2.4 times the salt taken; 2 is the default.",
            AlsoFrom = [Sources.GuineeFox],
        });
    }

    /// <summary>Salt that restores a strength: x = (s T - S)/(1 - s); zero where it is strong enough.</summary>
    /// <param name="strength">Strength wanted.</param>
    public Outcome<Mass> Mend(Share strength)
    {
        var gate = new Gate().Check(BrineFields.Strength, strength.Percent);
        if (gate.Shut) return gate.Refusal<Mass>();
        var missing = Math.Max(0, ((strength.Fraction * Total.Kilograms) - Salt.Kilograms) / (1 - strength.Fraction));
        return gate.Answer(Mass.FromKilograms(missing), new Working(
            "Mending brine",
            "x = (s T - S) / (1 - s)",
            [new("Strength s", strength.Percent, "%"), new("Brine T", Total.Kilograms, "kg"), new("Salt S", Salt.Kilograms, "kg")],
            [new("Add salt", missing * 1000, "g")],
            Sources.Arithmetic));
    }

    /// <summary>Salt and water that bring this brine to a mass and a strength.</summary>
    /// <param name="total">Mass wanted, at least the mass there is.</param>
    /// <param name="strength">Strength wanted.</param>
    public Outcome<BrineBatch> TopUp(Mass total, Share strength)
    {
        var gate = new Gate().Check(BrineFields.Amount, total.Kilograms).Check(BrineFields.Strength, strength.Percent);
        var salt = (total * strength.Fraction) - Salt;
        var water = (total * (1 - strength.Fraction)) - Water;
        if (!gate.Shut && (salt.Kilograms < 0 || water.Kilograms < 0))
            gate.Refuse(ProblemKind.Contradiction, BrineFields.Amount, $"Topping up only adds; {Field.Number(total.Kilograms)} kg at {Field.Number(strength.Percent)} % would need {(salt.Kilograms < 0 ? "salt" : "water")} taken out: make it larger or mend the strength first.");
        if (gate.Shut) return gate.Refusal<BrineBatch>();
        return gate.Answer(new BrineBatch(salt, water), new Working(
            "Topping up brine",
            "salt = s T' - S; water = (1 - s) T' - W",
            [new("Mass wanted T'", total.Kilograms, "kg"), new("Strength s", strength.Percent, "%"), new("Salt S", Salt.Kilograms, "kg"), new("Water W", Water.Kilograms, "kg")],
            [new("Add salt", salt.Kilograms, "kg"), new("Add water", water.Kilograms, "kg")],
            Sources.Arithmetic));
    }
}
