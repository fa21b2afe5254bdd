using System.Collections.Immutable;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Plans.Panels;

/// <summary>Two or three ways to hold a trial, to be compared by what each could show.</summary>
internal static class Options
{
    private const string OfWheels = "It speaks of wheels: with one make of a recipe, recipe and day are one thing.";
    private const string OfMakes = "Two makes of each tell a good recipe from a lucky day a little; the gap between two makes is a yardstick.";

    public static ImmutableArray<PlanOption> Of(TrialOutline outline)
    {
        var options = ImmutableArray.CreateBuilder<PlanOption>();
        var counts = outline.WheelsPerRecipe;
        var lone = counts.All(count => count == 1);
        options.Add(new("As planned", What(outline.Recipes, counts), counts, outline.Wheels.Count(wheel => wheel.Facts.MadeOn is null), counts.Length == 1 ? "It compares days and wheels of one recipe." : counts.All(count => count >= 2) ? OfMakes : lone ? OfWheels : "Where a recipe was made twice, that gap is a yardstick; where once, recipe and day are one thing."));
        if (counts.Length < 2) return options.ToImmutable();
        var two = outline.Recipes.Take(2).ToImmutableArray();
        void Add(string name, int each, string says)
        {
            ImmutableArray<int> wheels = [each, each];
            if (counts.SequenceEqual(wheels) || options.Count == 3) return;
            var standing = two.Sum(recipe => Math.Min(each, outline.Wheels.Count(wheel => string.Equals(wheel.Recipe, recipe, StringComparison.OrdinalIgnoreCase) && wheel.Facts.MadeOn is not null)));
            options.Add(new(name, What(two, wheels), wheels, (2 * each) - standing, says));
        }

        Add("Two recipes alone", 1, OfWheels);
        Add("Two recipes, two makes each", 2, OfMakes);
        Add("Two recipes, three makes each", 3, OfMakes);
        return options.ToImmutable();
    }

    private static string What(ImmutableArray<string> recipes, ImmutableArray<int> wheels) =>
        Phrase.List(recipes.Zip(wheels).Select(pair => pair.Second == 1 ? pair.First : $"{pair.First} × {Phrase.Number(pair.Second)}"));
}
