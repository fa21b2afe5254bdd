using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Brine;

/// <summary>Salt on milled curd and what stays.</summary>
/// <param name="ToAdd">Salt to add.</param>
/// <param name="Kept">Salt that stays in the cheese.</param>
public sealed record DrySalt(Mass ToAdd, Estimate<Mass> Kept);

/// <summary>Dry salting: salt = p x curd; half to two thirds stays (memory, low confidence). Doses: Tables/dry_salting.md (read, a blog after a textbook).</summary>
public static class DrySalting
{
    /// <summary>The salt for a mass of curd.</summary>
    /// <param name="curd">Curd after milling.</param>
    /// <param name="share">Salt as a part of the curd.</param>
    public static Outcome<DrySalt> Of(Mass curd, Share share)
    {
        var gate = new Gate().Check(Composition.CompositionFields.CheeseMass, curd.Kilograms).Check(BrineFields.DrySalt, share.Percent);
        if (gate.Shut) return gate.Refusal<DrySalt>();
        var salt = curd * share.Fraction;
        var result = new DrySalt(salt, Estimate.Between(salt * 0.5, salt * (7.0 / 12), salt * (2.0 / 3)));
        return gate.Answer(result, new Working(
            "Dry salting",
            "salt = p x curd; half to two thirds stays",
            [new("Curd", curd.Kilograms, "kg"), new("Part p", share.Percent, "%")],
            [new("Salt to add", salt.Grams, "g"), new("Stays, about", result.Kept.Likely.Grams, "g")],
            Sources.MemoryLow)
        {
            LikelyError = "What stays: half to two thirds, from memory, low confidence.",
        });
    }
}
