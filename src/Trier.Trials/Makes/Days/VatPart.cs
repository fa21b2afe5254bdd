using System.Collections.Immutable;
using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Makes.Days;

/// <summary>One part of a vat that was split into treatments.</summary>
/// <param name="Name">What people call it: "washed".</param>
/// <param name="Percent">Its share of the vat, per cent.</param>
/// <param name="Differs">What is done otherwise with it, in the maker's words; may be empty.</param>
/// <param name="Changes">Where its aims are not the recipe's.</param>
public sealed record VatPart(string Name, double Percent, string Differs, ImmutableArray<PartChange> Changes)
{
    /// <summary>Parts of one vat at most: each needs a pot and a pair of hands.</summary>
    public const int Most = 4;

    /// <summary>The recipe as this part follows it: numbers of steps stay, aims are its own.</summary>
    /// <param name="recipe">The make's recipe.</param>
    internal Recipe Of(Recipe recipe) => Changes.Length == 0 ? recipe : new(
        recipe.Name, recipe.Style, recipe.Milk, recipe.About, recipe.Credit, recipe.Cheese, [.. recipe.Steps.Select((step, index) => Changed(step, index + 1))]);

    /// <summary>Whether this part goes without a step.</summary>
    /// <param name="number">The step's number.</param>
    public bool LeavesOut(int number) => Changes.Any(change => change.Step == number && change.Target is null);

    private Step Changed(Step step, int number)
    {
        var changes = Changes.Where(change => change.Step == number && change.Target is not null).ToList();
        if (changes.Count == 0) return step;
        var aims = StepShape.Of(step.Kind).Select(wanted => wanted.Target).Select(target =>
            changes.LastOrDefault(change => change.Target == target.Key) is { Value: { } own } ? new Aim(target, own, step[target]?.Tolerance) : step[target]);
        return new Step(step.Kind, step.Title, step.Note, step.Addition, [.. aims.OfType<Aim>()]);
    }
}

/// <summary>One aim of a part that is not the recipe's, or a step it goes without.</summary>
/// <param name="Step">The step's number.</param>
/// <param name="Target">The target's key; null where the step is left out.</param>
/// <param name="Value">The part's own aim in the target's unit; null where the step is left out.</param>
public sealed record PartChange(int Step, string? Target = null, double? Value = null);
