using System.Collections.Immutable;

namespace Trier.Statistics.RankTests;

/// <summary>
/// Grouping letters: items that share a letter were not found to differ. They read as if sharing a letter meant being alike, which no test ever shows, and they hide how large a difference is: for comparison with other
/// tables only. Found by inserting and absorbing columns. Source: [Piepho2004].
/// </summary>
public static class GroupingLetters
{
    /// <summary>Letters for all items.</summary>
    /// <param name="order">All items, in the order in which letters are given out.</param>
    /// <param name="pairs">The pairs, with whether they differ; pairs not named do not.</param>
    /// <returns>Per item its letters, a first; past z they go on aa, ab, ...</returns>
    public static ImmutableArray<string> Of(ImmutableArray<int> order, IEnumerable<RankSumPair> pairs)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        var columns = new List<HashSet<int>> { ([.. order]) };
        foreach (var pair in pairs.Where(pair => pair.Differs))
        {
            foreach (var column in columns.Where(column => column.Contains(pair.First) && column.Contains(pair.Second)).ToArray())
            {
                columns.Remove(column);
                columns.Add([.. column.Where(item => item != pair.First)]);
                columns.Add([.. column.Where(item => item != pair.Second)]);
            }

            for (var c = columns.Count - 1; c >= 0; c--)
            {
                var column = columns[c];
                if (columns.Where((other, o) => o != c && column.IsSubsetOf(other) && (o < c || !other.SetEquals(column))).Any()) columns.RemoveAt(c);
            }
        }

        var places = order.Select((item, place) => (item, place)).ToDictionary(pair => pair.item, pair => pair.place);
        var sorted = columns.OrderBy(column => column.Min(item => places[item])).ThenBy(column => column.Max(item => places[item])).ToArray();
        var letters = new string[order.Length];
        foreach (var item in order) letters[item] = string.Concat(sorted.Select((column, c) => column.Contains(item) ? Letter(c) : ""));
        return [.. letters];
    }

    private static string Letter(int column) => column < 26 ? ((char)('a' + column)).ToString() : Letter((column / 26) - 1) + (char)('a' + (column % 26));
}
