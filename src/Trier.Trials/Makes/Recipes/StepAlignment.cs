using System.Collections.Immutable;

namespace Trier.Trials.Makes.Recipes;

/// <summary>Puts steps of several recipes beside each other: order is kept, and only steps of one kind (and one addition) stand in one row.</summary>
/// <remarks>Longest common subsequence, one recipe after the other; steps with more equal aims are paired first.</remarks>
internal static class StepAlignment
{
    public static ImmutableArray<ImmutableArray<Step?>> Of(ImmutableArray<Recipe> recipes)
    {
        var rows = recipes[0].Steps.Select(step => new List<Step?> { step }).ToList();
        for (var i = 1; i < recipes.Length; i++) rows = Merge(rows, recipes[i].Steps, i);
        return [.. rows.Select(row => row.ToImmutableArray())];
    }

    private static List<List<Step?>> Merge(List<List<Step?>> rows, ImmutableArray<Step> steps, int before)
    {
        var best = new double[rows.Count + 1, steps.Length + 1];
        for (var r = rows.Count - 1; r >= 0; r--)
        {
            for (var s = steps.Length - 1; s >= 0; s--)
            {
                var pair = Likeness(rows[r], steps[s]);
                best[r, s] = Math.Max(Math.Max(best[r + 1, s], best[r, s + 1]), pair > 0 ? pair + best[r + 1, s + 1] : 0);
            }
        }

        var merged = new List<List<Step?>>();
        var (row, step) = (0, 0);
        while (row < rows.Count || step < steps.Length)
        {
            if (row < rows.Count && step < steps.Length && Likeness(rows[row], steps[step]) is > 0 and var pair && best[row, step].Equals(pair + best[row + 1, step + 1]))
                merged.Add([.. rows[row++], steps[step++]]);
            else if (step == steps.Length || (row < rows.Count && best[row, step].Equals(best[row + 1, step])))
                merged.Add([.. rows[row++], null]);
            else
                merged.Add([.. Enumerable.Repeat<Step?>(null, before), steps[step++]]);
        }

        return merged;
    }

    private static double Likeness(List<Step?> row, Step step)
    {
        var like = row.OfType<Step>().First();
        if (like.Kind != step.Kind || like.Addition?.Kind != step.Addition?.Kind) return 0;
        var equal = like.Aims.Count(aim => step[aim.Target] is { } other && other.Value.Equals(aim.Value));
        var named = like.Heading == step.Heading && like.Addition?.Name == step.Addition?.Name ? 0.5 : 0;
        return 10 + named + (0.1 * Math.Min(equal, 4));
    }
}
