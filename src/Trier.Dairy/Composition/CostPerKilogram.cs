using Trier.Dairy.Quantities;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Composition;

/// <summary>One line of what a make cost.</summary>
/// <param name="What">What was bought.</param>
/// <param name="Amount">What it cost, in the maker's currency; zero or more.</param>
public sealed record CostLine(string What, decimal Amount);

/// <summary>Cost per kilogram: the sum of the lines over the cheese weighed. Derived; exact to the decimal except the division by a mass.</summary>
public static class CostPerKilogram
{
    /// <summary>The cost per kilogram in the currency of the lines.</summary>
    /// <param name="lines">What it cost.</param>
    /// <param name="cheese">The cheese obtained.</param>
    public static Outcome<decimal> Of(Listed<CostLine> lines, Mass cheese)
    {
        var gate = new Gate().Check(CompositionFields.CheeseMass, cheese.Kilograms);
        foreach (var line in lines) gate.Check(CompositionFields.Cost with { Name = $"Cost of {line.What}" }, (double)line.Amount);
        if (lines.Count == 0) gate.Refuse(ProblemKind.NotEnough, CompositionFields.Cost, "There is no cost to divide: give at least the milk.");
        if (gate.Shut) return gate.Refusal<decimal>();
        var cost = lines.Sum(line => line.Amount) / (decimal)cheese.Kilograms;
        return gate.Answer(cost, new Working(
            "Cost per kilogram",
            "sum of costs / cheese",
            [.. lines.Select(line => new Given(line.What, (double)line.Amount)), new("Cheese", cheese.Kilograms, "kg")],
            [new("Cost per kilogram", (double)cost, "per kg")],
            Sources.Arithmetic));
    }
}
