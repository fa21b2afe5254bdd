using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Trials.Makes.Days;

/// <summary>What a make tells of its wheels: the facts that a trial's entry gets, down to a late cut.</summary>
public static class WheelFactsOf
{
    private const string VatDayPrefix = "vat day, step ";
    private const string DiffersFact = "done otherwise";

    /// <summary>The facts of one wheel.</summary>
    /// <param name="make">The make.</param>
    /// <param name="wheel">One of its wheels.</param>
    public static WheelFacts Of(Make make, BornWheel wheel)
    {
        var (recipe, vat) = (make.Recipe, make.Begun.Vat);
        var facts = new List<KeyValuePair<string, string?>>
        {
            new(WheelFacts.RecipeFact, make.Begun.Version == 1 ? recipe.Name : $"{recipe.Name}, version {FigureText.Whole(make.Begun.Version)}"),
            new(WheelFacts.MadeFact, make.Begun.Begins.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
            new(WheelFacts.MilkFact, $"{recipe.Milk.ToString().ToLowerInvariant()}'s, {Write.Number(vat.Litres)} litres{(vat.Fat is { } fat ? $", {Write.Number(fat)} % fat" : "")}"),
            new(WheelFacts.HeatTreatmentFact, vat.Treatment == HeatTreatment.NotSaid ? null : vat.Treatment.ToString().ToLowerInvariant()),
            new(WheelFacts.AdditivesFact, Additives(recipe)),
            new(WheelFacts.AllergensFact, recipe.Adds(AdditionKind.Lysozyme) ? "egg" : null),
            new(WheelFacts.SizeFact, wheel.Kilograms is { } mass ? $"{Write.Number(mass)} kg" : null),
            new(DiffersFact, wheel.Differs),
        };
        foreach (var group in Deviation.Of(make).GroupBy(deviation => deviation.Step.Number))
        {
            var step = group.First().Step;
            facts.Add(new($"{VatDayPrefix}{FigureText.Whole(step.Number)}, {step.Step.Heading.ToLowerInvariant()}", string.Join("; ", group.Select(deviation => deviation.Short))));
        }

        return WheelFacts.Of(facts);
    }

    private static string Additives(Recipe recipe) => string.Join(", ", recipe.Steps.Select(step => step.Addition).OfType<Addition>()
        .Where(added => added.Kind is not (AdditionKind.Water or AdditionKind.Culture)).Select(added => added.Called).Distinct());
}
