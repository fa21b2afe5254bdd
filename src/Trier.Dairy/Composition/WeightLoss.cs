using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Composition;

/// <summary>Loss of mass in the cave: (1 - m/m0)/days. Derived. Usual (practice): 0.2 to 0.5 % a day in the first week, then 0.05 to 0.15.</summary>
public static class WeightLoss
{
    /// <summary>Mean loss a day as a part of the first mass.</summary>
    /// <param name="first">First mass.</param>
    /// <param name="now">Mass now, not above the first.</param>
    /// <param name="days">Days between, above 0.</param>
    public static Outcome<Share> PerDay(Mass first, Mass now, double days)
    {
        var gate = new Gate()
            .Check(CompositionFields.CheeseMass, first.Kilograms)
            .Check(CompositionFields.CheeseMass, now.Kilograms)
            .Check(CompositionFields.Days, days);
        if (gate.Shut) return gate.Refusal<Share>();
        if (now > first) gate.Ask(CompositionFields.CheeseMass, "The wheel is heavier than it was: was the scale checked, or was it waxed between?");
        var loss = Share.FromFraction((1 - (now / first)) / days);
        return gate.Answer(loss, new Working(
            "Loss of mass a day",
            "(1 - m/m0) / days",
            [new("First mass m0", first.Kilograms, "kg"), new("Mass m", now.Kilograms, "kg"), new("Days", days, "d")],
            [new("Loss", loss.Percent, "%/d")],
            Sources.Arithmetic));
    }
}
