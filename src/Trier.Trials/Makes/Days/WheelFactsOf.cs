using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;
using Trier.Trials.Makes.Shelf;

namespace Trier.Trials.Makes.Days;

/// <summary>What a make tells of its wheels: the facts that a trial's entry gets, down to a late cut. Each is a named value; numbers are metric with a decimal comma.</summary>
public static class WheelFactsOf
{

    // Facts are compared word by word, so all of them are written in one way, that of the pages.
    private static readonly Notation Notation = new(UnitSystem.Metric, ',');

    /// <summary>The facts of one wheel.</summary>
    /// <param name="make">The make.</param>
    /// <param name="wheel">One of its wheels.</param>
    /// <param name="shelf">The things on the shelf, for the names of lots and brine.</param>
    public static WheelFacts Of(Make make, BornWheel wheel, ImmutableArray<Thing> shelf)
    {
        var (recipe, vat, lane) = (make.Recipe, make.Begun.Vat, make.LaneOf(wheel.Part));
        var facts = new List<KeyValuePair<string, string?>>
        {
            new(WheelFacts.RecipeFact, make.Begun.Version == 1 ? recipe.Name : $"{recipe.Name}, version {FigureText.Whole(make.Begun.Version)}"),
            new(WheelFacts.MadeFact, make.Begun.Begins.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
            new(WheelFacts.MakeFact, make.Begun.Name),
            new(WheelFacts.MilkFact, $"{recipe.Milk.ToString().ToLowerInvariant()}'s, {Notation.Number(vat.Litres)} litres{(vat.Fat is { } fat ? $", {Notation.Number(fat)} % fat" : "")}"),
            new(WheelFacts.HeatTreatmentFact, vat.Treatment == HeatTreatment.NotSaid ? null : vat.Treatment.ToString().ToLowerInvariant()),
            new(WheelFacts.AdditivesFact, Additives(recipe)),
            new(WheelFacts.AllergensFact, recipe.Adds(AdditionKind.Lysozyme) ? "egg" : null),
            new(WheelFacts.SizeFact, wheel.Kilograms is { } mass ? $"{Notation.Number(mass)} kg" : null),
            new(WheelFacts.PartFact, lane.Called is { } part ? part.Differs.Length > 0 ? $"{part.Name}: {part.Differs}" : part.Name : null),
            new(WheelFacts.DiffersFact, wheel.Differs),
            new(WheelFacts.HoldBackFact, string.Join("; ", SlowAcid.Of(lane).Select(slow => slow.Short(Notation)))),
        };
        facts.AddRange(OwnAims(lane));
        facts.AddRange(Otherwise(lane));
        facts.AddRange(Things(lane, shelf));
        return WheelFacts.Of(facts);
    }

    private static string Additives(Recipe recipe) => string.Join(", ", recipe.Steps.Select(step => step.Addition).OfType<Addition>()
        .Where(added => added.Kind is not (AdditionKind.Water or AdditionKind.Culture)).Select(added => added.Called).Distinct());

    // What the parts of a split vat were meant to have otherwise, each aim by its name.
    private static IEnumerable<KeyValuePair<string, string?>> OwnAims(Lane lane)
    {
        foreach (var change in lane.Called?.Changes ?? [])
        {
            var step = lane.Recipe.Steps[change.Step - 1];
            var name = Named(lane.Recipe, change.Step);
            yield return change.Target is { } key && Target.Named(key) is { } target && change.Value is { } value
                ? new($"{name}: {target.Field.Name.ToLowerInvariant()} aimed at", AimText.Value(step, target, value, Notation))
                : new(name, "left out");
        }
    }

    private static IEnumerable<KeyValuePair<string, string?>> Otherwise(Lane lane) => Deviation.Of(lane).GroupBy(deviation => deviation.Step.Number).Select(group =>
        KeyValuePair.Create($"vat day: {Named(lane.Recipe, group.Key)}", (string?)string.Join("; ", group.Select(deviation => deviation.Short(Notation)))));

    // By its heading, so that two recipes with other numbers name the same thing alike; its number only where a recipe has several of that heading.
    private static string Named(Recipe recipe, int number)
    {
        var heading = recipe.Steps[number - 1].Heading;
        var alike = recipe.Steps.Take(number).Count(step => string.Equals(step.Heading, heading, StringComparison.OrdinalIgnoreCase));
        return alike == 1 ? heading.ToLowerInvariant() : $"{heading.ToLowerInvariant()} ({FigureText.Whole(alike)})";
    }

    private static IEnumerable<KeyValuePair<string, string?>> Things(Lane lane, ImmutableArray<Thing> shelf)
    {
        var named = lane.Steps.Select(step => (Step: step, Thing: shelf.FirstOrDefault(thing => thing.Id == step.Done?.Used))).Where(pair => pair.Thing is not null).ToList();
        foreach (var kind in named.GroupBy(pair => pair.Thing!.Kind))
        {
            var name = kind.Key switch { ThingKind.Brine => "brine", ThingKind.Rennet => "lot of rennet", _ => "lot of culture" };
            yield return new(name, string.Join(", ", kind.Select(pair => pair.Thing!.Name).Distinct(StringComparer.Ordinal)));
            if (kind.Where(pair => pair.Thing!.PastDate(pair.Step.Done!.When)).Select(pair => pair.Thing!.Name).Distinct(StringComparer.Ordinal).ToList() is { Count: > 0 } late)
                yield return new($"{name}, past its date", string.Join(", ", late));
        }
    }
}
