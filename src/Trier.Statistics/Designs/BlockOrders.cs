using System.Collections.Immutable;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.Designs;

/// <summary>
/// Puts the items of each block into an order. Taster after taster: of a fixed number of random orders, each improved by exchanging two positions as long as that helps, the one is taken that leaves positions,
/// and then neighbours, most even among all tasters so far.
/// </summary>
public static class BlockOrders
{
    private const int Starts = 12;
    private const long PositionCost = 8;
    private const long AdjacentCost = 1_000_000;

    /// <summary>Orders for a design's blocks.</summary>
    /// <param name="design">The blocks.</param>
    /// <param name="repeat">Two samples of one item, kept apart where that is possible; null for none.</param>
    /// <param name="seed">Fixes the orders.</param>
    internal static ImmutableArray<ImmutableArray<int>> Of(BlockDesign design, (int A, int B)? repeat, Seed seed) => Fitted(design.Items, [], design.Blocks, repeat, seed);

    /// <summary>Orders for some more plates, of any sizes, that even out the orders dealt already and each other.</summary>
    /// <param name="items">How many items there are, numbered from 0.</param>
    /// <param name="dealt">Orders dealt already; each may leave items out.</param>
    /// <param name="blocks">What stands on each further plate; at least one item each, none twice.</param>
    /// <param name="repeat">Two samples of one item, kept apart wherever a plate has a third; null for none.</param>
    /// <param name="seed">Fixes the orders.</param>
    /// <returns>An order for each of the blocks.</returns>
    public static ImmutableArray<ImmutableArray<int>> Fitted(
        int items, IReadOnlyCollection<ImmutableArray<int>> dealt, IReadOnlyCollection<ImmutableArray<int>> blocks, (int A, int B)? repeat, Seed seed)
    {
        ArgumentNullException.ThrowIfNull(dealt);
        ArgumentNullException.ThrowIfNull(blocks);
        var generator = seed.Generator();
        var positions = new int[items, items];
        var follows = new int[items, items];
        if (repeat is { } pair) follows[pair.A, pair.B] = follows[pair.B, pair.A] = (int)AdjacentCost;
        foreach (var order in dealt) Count(order.AsSpan(), positions, follows);
        var orders = ImmutableArray.CreateBuilder<ImmutableArray<int>>(blocks.Count);
        foreach (var block in blocks)
        {
            int[] best = [];
            var least = long.MaxValue;
            for (var start = 0; start < Starts; start++)
            {
                var order = block.ToArray();
                generator.Shuffle<int>(order);
                var cost = Descend(order, positions, follows);
                if (cost >= least) continue;
                least = cost;
                best = order;
            }

            Count(best, positions, follows);
            orders.Add([.. best]);
        }

        return orders.MoveToImmutable();
    }

    private static void Count(ReadOnlySpan<int> order, int[,] positions, int[,] follows)
    {
        for (var i = 0; i < order.Length; i++)
        {
            positions[order[i], i]++;
            if (i > 0) follows[order[i - 1], order[i]]++;
        }
    }

    private static long Descend(int[] order, int[,] positions, int[,] follows)
    {
        var cost = Cost(order, positions, follows);
        for (var better = true; better;)
        {
            better = false;
            for (var i = 1; i < order.Length; i++)
            {
                for (var j = 0; j < i; j++)
                {
                    (order[i], order[j]) = (order[j], order[i]);
                    var next = Cost(order, positions, follows);
                    if (next < cost)
                    {
                        cost = next;
                        better = true;
                    }
                    else
                    {
                        (order[i], order[j]) = (order[j], order[i]);
                    }
                }
            }
        }

        return cost;
    }

    /// <summary>What the sums of squared counts would grow by, but for a constant and a factor 2.</summary>
    private static long Cost(int[] order, int[,] positions, int[,] follows)
    {
        var cost = 0L;
        for (var i = 0; i < order.Length; i++)
        {
            cost += PositionCost * positions[order[i], i];
            if (i > 0) cost += follows[order[i - 1], order[i]];
        }

        return cost;
    }
}
