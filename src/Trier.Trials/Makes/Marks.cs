using System.Collections.Immutable;
using Trier.Trials.Tastings;

namespace Trier.Trials.Makes;

/// <summary>Deals marks: a shape a recipe, a fill for which wheel of it, a tone of its own for each wheel.</summary>
public static class Marks
{
    private static readonly ImmutableArray<int> InOrder = [1, 2, 3, 4, 5, 6, 7, 8];

    // A recipe's later wheels are drawn open or half-filled: the tones that stand apart most from the solid ones come first.
    private static readonly ImmutableArray<int> TonesOfLaterWheels = [7, 6, 5, 8, 4, 3, 2, 1];

    /// <summary>The mark of the next wheel.</summary>
    /// <param name="recipe">The wheel's recipe, or its name where no recipe is recorded.</param>
    /// <param name="entered">Wheels entered before it.</param>
    public static WheelMark For(string recipe, ImmutableArray<Entry> entered)
    {
        var kin = entered.Where(entry => string.Equals(entry.Facts.Recipe ?? entry.Name, recipe, StringComparison.OrdinalIgnoreCase)).ToList();
        var tones = entered.Select(entry => entry.Mark.Tone).ToHashSet();
        if (kin.Count > 0) return new WheelMark(kin[0].Mark.Shape, Math.Min(kin.Count, 2), FirstFree(TonesOfLaterWheels, tones));
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
