using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Trials.Makes.Days;

/// <summary>A weight of a wheel that was corrected.</summary>
/// <param name="Number">The wheel's number.</param>
/// <param name="Kilograms">What stood, or null where it was not weighed.</param>
/// <param name="CorrectedAt">When it was written over.</param>
/// <param name="Why">Why; may be empty.</param>
public sealed record FormerWeight(int Number, double? Kilograms, DateTimeOffset CorrectedAt, string Why);

/// <summary>What wheels weigh, and what they hardly can.</summary>
public sealed partial record Make
{
    // The richest sheep's milk yields about a fifth of its weight; a third is a slip of the scale or of the unit (common practice, no source).
    private const double MostOfMilk = 1.0 / 3;
    private const double KilogramsInLitre = 1.03;

    /// <summary>Asks about wheels that weigh more than the milk they came from can yield; null where nothing is strange.</summary>
    /// <param name="wheels">New wheels, or one of the make's own with another weight.</param>
    /// <returns>The question; its field is the place of the heaviest of these wheels, from 1.</returns>
    public Problem? WeightDoubt(ImmutableArray<BornWheel> wheels)
    {
        foreach (var lane in Lanes)
        {
            var together = Wheels.Where(wheel => wheels.All(other => other.Wheel != wheel.Wheel)).Concat(wheels).Where(wheel => wheel.Part == lane.Part).Sum(wheel => wheel.Kilograms ?? 0);
            var milk = KilogramsInLitre * lane.Share(Begun.Vat).Litres;
            if (together <= milk * MostOfMilk || !wheels.Any(wheel => wheel.Part == lane.Part && wheel.Kilograms is not null)) continue;
            var heaviest = wheels.IndexOf(wheels.Where(wheel => wheel.Part == lane.Part).MaxBy(wheel => wheel.Kilograms ?? 0)!);
            return new(FigureText.Whole(heaviest + 1), $"These wheels weigh {Write.Number(together)} kg together, more than a third of the {Write.Number(Math.Round(milk, 1))} kg of milk they came from: is the weight right? Send it again to keep it.");
        }

        return null;
    }

    /// <summary>Corrects the weight of a wheel; the old value is kept.</summary>
    /// <param name="at">Now.</param>
    /// <param name="number">The wheel's number.</param>
    /// <param name="kilograms">What it weighs, or null where it was not weighed.</param>
    /// <param name="why">Why; may be empty.</param>
    public Outcome<ImmutableArray<MakeEvent>> Weigh(DateTimeOffset at, int number, double? kilograms, string why)
    {
        if (Wheels.FirstOrDefault(wheel => wheel.Number == number) is not { } wheel) return Fault("mass", "This make has no such wheel.");
        if (why.Length > LongestNote) return Fault("why", "The reason is longer than 400 letters: shorten it.");
        if (kilograms is { } mass && Trier.Dairy.Composition.CompositionFields.CheeseMass.ProblemWith(mass) is { } wrong) return Fault("mass", wrong.Sentence);
        return wheel.Kilograms == kilograms ? Fault("mass", "This says what stands already; nothing was changed.") : Do(new WheelWeighed(at, number, kilograms, why.Trim()));
    }
}
