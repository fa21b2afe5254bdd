using System.Collections.Immutable;

namespace Trier.Statistics.Designs;

/// <summary>How evenly serving orders spread items over positions and neighbours.</summary>
/// <param name="Positions">[item][position]: how often the item stands there; as many positions as the longest order has.</param>
/// <param name="CarryOver">[item][next]: how often the item is followed at once by the next one.</param>
public sealed record Balance(ImmutableArray<ImmutableArray<int>> Positions, ImmutableArray<ImmutableArray<int>> CarryOver)
{
    /// <summary>Largest minus smallest count of an item at a position.</summary>
    public int PositionSpread => Positions.Max(row => row.Max()) - Positions.Min(row => row.Min());

    /// <summary>Largest minus smallest count of an ordered pair of different neighbours.</summary>
    public int CarryOverSpread
    {
        get
        {
            var counts = CarryOver.SelectMany((row, item) => row.Where((_, next) => next != item)).ToArray();
            return counts.Length == 0 ? 0 : counts.Max() - counts.Min();
        }
    }

    /// <summary>
    /// How far the counts of ordered neighbours lie from their mean: the root of the mean squared deviation over all ordered pairs of different items. 0 where every pair is
    /// adjacent equally often.
    /// </summary>
    public double CarryOverUnevenness
    {
        get
        {
            var counts = CarryOver.SelectMany((row, item) => row.Where((_, next) => next != item)).ToArray();
            if (counts.Length == 0) return 0;
            var mean = counts.Average();
            return Math.Sqrt(counts.Average(count => (count - mean) * (count - mean)));
        }
    }

    /// <summary>True where every item stands at every position equally often and every ordered pair is adjacent equally often.</summary>
    public bool IsPerfect => PositionSpread == 0 && CarryOverSpread == 0;

    /// <summary>Counts a set of orders.</summary>
    /// <param name="items">How many items, numbered from 0.</param>
    /// <param name="orders">The orders; each may leave items out.</param>
    public static Balance Of(int items, IEnumerable<ImmutableArray<int>> orders)
    {
        ArgumentNullException.ThrowIfNull(orders);
        var kept = orders.ToArray();
        var places = kept.Length == 0 ? items : kept.Max(order => order.Length);
        var positions = new int[items, places];
        var carry = new int[items, items];
        foreach (var order in kept)
        {
            for (var position = 0; position < order.Length; position++)
            {
                positions[order[position], position]++;
                if (position > 0) carry[order[position - 1], order[position]]++;
            }
        }

        return new Balance(Rows(positions), Rows(carry));
    }

    /// <summary>How often two items stand next to each other, in either order.</summary>
    /// <param name="a">An item.</param>
    /// <param name="b">Another.</param>
    public int Adjacent(int a, int b) => CarryOver[a][b] + CarryOver[b][a];

    private static ImmutableArray<ImmutableArray<int>> Rows(int[,] matrix) =>
        [.. Enumerable.Range(0, matrix.GetLength(0)).Select(row => Enumerable.Range(0, matrix.GetLength(1)).Select(column => matrix[row, column]).ToImmutableArray())];
}
