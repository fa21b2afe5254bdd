using System.Collections.Immutable;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.Designs;

/// <summary>
/// Puts the items of each block into an order. Taster after taster: of a fixed number of random orders, each improved by exchanging two positions as long as that helps, the one is taken that leaves positions,
/// and then neighbours, most even among all tasters so far.
/// </summary>
internal static class BlockOrders
{
    private const int Starts = 12;
    private const long PositionCost = 8;
    private const long AdjacentCost = 1_000_000;

    public static ImmutableArray<ImmutableArray<int>> Of(BlockDesign design, (int A, int B)? repeat, Seed seed)
    {
        var k = design.Items;
        var generator = seed.Generator();
        var positions = new int[k, design.BlockSize];
        var follows = new int[k, k];
        if (repeat is { } pair) follows[pair.A, pair.B] = follows[pair.B, pair.A] = (int)AdjacentCost;
        var orders = ImmutableArray.CreateBuilder<ImmutableArray<int>>(design.Blocks.Length);
        foreach (var block in design.Blocks)
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

            for (var i = 0; i < best.Length; i++)
            {
                positions[best[i], i]++;
                if (i > 0) follows[best[i - 1], best[i]]++;
            }

            orders.Add([.. best]);
        }

        return orders.MoveToImmutable();
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
