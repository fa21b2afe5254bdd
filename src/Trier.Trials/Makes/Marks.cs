using System.Collections.Immutable;
using Trier.Trials.Tastings;

namespace Trier.Trials.Makes;

/// <summary>Deals marks: a shape a recipe, a fill for which wheel of it, a tone of its own for each wheel.</summary>
public static class Marks
{
    private static readonly ImmutableArray<int> InOrder = [1, 2, 3, 4, 5, 6, 7, 8];

    // A recipe's second wheel is drawn open: the tones that stand apart most from the solid ones come first.
    private static readonly ImmutableArray<int> TonesOfSecondWheels = [7, 6, 5, 8, 4, 3, 2, 1];

    /// <summary>The mark of the next wheel.</summary>
    /// <param name="recipe">The wheel's recipe, or its name where no recipe is recorded.</param>
    /// <param name="entered">Wheels entered before it.</param>
    public static WheelMark For(string recipe, ImmutableArray<Entry> entered)
    {
        var first = entered.FirstOrDefault(entry => string.Equals(entry.Facts.Recipe ?? entry.Name, recipe, StringComparison.OrdinalIgnoreCase));
        var tones = entered.Select(entry => entry.Mark.Tone).ToHashSet();
        if (first is not null) return new WheelMark(first.Mark.Shape, 1, FirstFree(TonesOfSecondWheels, tones));
        return new WheelMark(FirstFree(InOrder, [.. entered.Select(entry => entry.Mark.Shape)]), 0, FirstFree(InOrder, tones));
    }

    private static int FirstFree(ImmutableArray<int> order, HashSet<int> used)
    {
        foreach (var candidate in order)
        {
            if (!used.Contains(candidate)) return candidate;
        }

        return order[used.Count % order.Length];
    }
}
