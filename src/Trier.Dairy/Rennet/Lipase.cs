using Trier.Dairy.Milk;
using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Rennet;

/// <summary>Lipase powder by the packet's dose: g = V c. Strengths differ between makers and no source was found for a general dose; the usual range is practice.</summary>
public static class Lipase
{
    /// <summary>The mass of powder.</summary>
    /// <param name="milk">Volume of milk.</param>
    /// <param name="gramsPerLitre">The packet's dose.</param>
    public static Outcome<Mass> Dose(Volume milk, double gramsPerLitre)
    {
        var gate = new Gate().Check(MilkFields.MilkVolume, milk.Litres).Check(RennetFields.Lipase, gramsPerLitre);
        if (gate.Shut) return gate.Refusal<Mass>();
        var dose = Mass.FromGrams(milk.Litres * gramsPerLitre);
        return gate.Answer(dose, new Working(
            "Lipase",
            "g = V c",
            [new("Milk V", milk.Litres, "L"), new("Packet's dose c", gramsPerLitre, "g/L")],
            [new("Lipase", dose.Grams, "g")],
            Sources.Practice)
        {
            LikelyError = "The packet rules; strengths differ between makers.",
        });
    }
}
