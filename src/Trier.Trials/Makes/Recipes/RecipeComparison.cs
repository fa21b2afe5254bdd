using System.Collections.Immutable;

namespace Trier.Trials.Makes.Recipes;

/// <summary>One aim, or the presence of a step, across the recipes.</summary>
/// <param name="Name">What is compared: "Temperature".</param>
/// <param name="Values">The value in words, recipe by recipe; null where a recipe has none.</param>
/// <param name="Differs">Whether they are not all the same.</param>
/// <param name="Sentence">The difference in one sentence; empty where there is none.</param>
public sealed record ComparedLine(string Name, ImmutableArray<string?> Values, bool Differs, string Sentence);

/// <summary>One step across the recipes.</summary>
/// <param name="Heading">What the step is.</param>
/// <param name="Steps">The step of each recipe; null where a recipe has none.</param>
/// <param name="Lines">Its aims, each compared.</param>
public sealed record ComparedRow(string Heading, ImmutableArray<Step?> Steps, ImmutableArray<ComparedLine> Lines)
{
    /// <summary>How many lines differ.</summary>
    public int Differences => Lines.Count(line => line.Differs);
}

/// <summary>Two or more recipes side by side, their steps aligned by kind and order.</summary>
/// <remarks>A step only some recipes have is one difference; its aims are not counted again.</remarks>
/// <param name="Names">The recipes' names, in the order given.</param>
/// <param name="Rows">The cheese first, then the steps.</param>
public sealed record RecipeComparison(ImmutableArray<string> Names, ImmutableArray<ComparedRow> Rows)
{
    /// <summary>How many things differ in all.</summary>
    public int Differences => Rows.Sum(row => row.Differences);

    /// <summary>The count in a sentence, with what it means for a trial.</summary>
    public string InWords() => Differences switch
    {
        0 => "Nothing differs: a trial between these asks about the days, not the recipes.",
        1 => "One thing differs: a trial can ask what it does.",
        var many => $"{Write.Number(many)} things differ: a trial can ask which recipe people like better, not which difference did it.",
    };

    /// <summary>Compares recipes.</summary>
    /// <param name="recipes">At least two.</param>
    /// <exception cref="ArgumentException">Fewer than two.</exception>
    public static RecipeComparison Of(ImmutableArray<Recipe> recipes)
    {
        if (recipes.Length < 2) throw new ArgumentException("A comparison needs at least two recipes.", nameof(recipes));
        var names = Distinct(recipes);
        var rows = ImmutableArray.CreateBuilder<ComparedRow>();
        rows.Add(new("The cheese", [.. recipes.Select(_ => (Step?)null)], Cheese(recipes, names)));
        foreach (var steps in StepAlignment.Of(recipes)) rows.Add(Row(steps, names));
        return new(names, rows.ToImmutable());
    }

    private static ImmutableArray<ComparedLine> Cheese(ImmutableArray<Recipe> recipes, ImmutableArray<string> names) =>
    [
        Line("Style", [.. recipes.Select(recipe => StyleWords.Key(recipe.Style))], names, null),
        Line("Milk", [.. recipes.Select(recipe => recipe.Milk.ToString().ToLowerInvariant())], names, null),
        .. StepShape.OfCheese.Select(wanted => wanted.Target)
            .Where(target => recipes.Any(recipe => recipe[target] is not null))
            .Select(target => Line(target.Field.Name, [.. recipes.Select(recipe => recipe[target]?.InWords())], names, [.. recipes.Select(recipe => recipe[target])])),
    ];

    private static ComparedRow Row(ImmutableArray<Step?> steps, ImmutableArray<string> names)
    {
        var first = steps.OfType<Step>().First();
        var heading = first.Heading;
        if (steps.Any(step => step is null))
        {
            var with = names.Where((_, i) => steps[i] is not null);
            var without = names.Where((_, i) => steps[i] is null);
            var sentence = $"{heading}: in {Together(with)}, not in {Together(without)}.";
            return new(heading, steps, [new("The step", [.. steps.Select(step => step is null ? null : Short(step))], true, sentence)]);
        }

        var all = steps.OfType<Step>().ToImmutableArray();
        var lines = new List<ComparedLine>();
        if (first.Addition is not null)
        {
            lines.Add(Line("What", [.. all.Select(step => step.Addition!.Called)], names, null));
            if (all.Any(step => step.Addition!.Per != first.Addition.Per))
                lines.Add(Line("Counted in", [.. all.Select(step => Addition.Words(step.Addition!.Per))], names, null));
        }

        foreach (var target in StepShape.Of(first.Kind).Select(wanted => wanted.Target).Where(target => all.Any(step => step[target] is not null)))
        {
            var aims = all.Select(step => step[target]).ToImmutableArray();
            // Doses in different units are told by "Counted in"; their bare numbers cannot be subtracted.
            var comparable = target != Target.Dose || all.All(step => step.Addition!.Per == first.Addition!.Per);
            lines.Add(Line(target.Field.Name, [.. all.Select(step => step[target] is { } aim ? step.InWords(aim) : null)], names, comparable ? aims : null));
        }

        if (lines.Count == 0) lines.Add(Line("The step", [.. all.Select(step => step.Heading)], names, null) with { Differs = false, Sentence = "" });
        return new(heading, steps, [.. lines]);
    }

    private static ComparedLine Line(string name, ImmutableArray<string?> values, ImmutableArray<string> names, ImmutableArray<Aim?>? aims)
    {
        if (values.Distinct(StringComparer.OrdinalIgnoreCase).Count() == 1) return new(name, values, false, "");
        var told = values.Select((value, i) => (Value: value ?? "not given", Name: names[i])).GroupBy(pair => pair.Value, StringComparer.OrdinalIgnoreCase)
            .Select(group => $"{group.Key} in {Together(group.Select(pair => pair.Name))}");
        return new(name, values, true, $"{name}: {string.Join(", ", told)}{Gap(aims)}.");
    }

    private static string Gap(ImmutableArray<Aim?>? aims)
    {
        if (aims is not { } all || all.Any(aim => aim is null)) return "";
        var (low, high) = (all.Min(aim => aim!.Value), all.Max(aim => aim!.Value));
        // Same aim, other tolerance.
        if (high - low < 1e-9) return "; the aim is the same, the tolerance is not";
        var target = all[0]!.Target;
        var apart = $"; {(target == Target.Ph ? Write.Number(high - low) : target == Target.Dose ? Write.Number(high - low) : Write.Quantity(high - low, target))} apart";
        return high - low <= all.Max(aim => aim!.Slack) ? $"{apart}, no more than the tolerance" : apart;
    }

    private static string Short(Step step) => step.Aims.Length == 0 ? step.Heading : string.Join(", ", step.Aims.Select(step.InWords));

    private static string Together(IEnumerable<string> names)
    {
        var all = names.ToList();
        return all.Count == 1 ? all[0] : $"{string.Join(", ", all.Take(all.Count - 1))} and {all[^1]}";
    }

    private static ImmutableArray<string> Distinct(ImmutableArray<Recipe> recipes) =>
        [.. recipes.Select((recipe, i) => recipes.Count(other => other.Name == recipe.Name) == 1 ? recipe.Name : $"{recipe.Name} ({Write.Number(i + 1)})")];
}
