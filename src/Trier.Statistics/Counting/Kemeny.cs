using System.Collections.Immutable;
using System.Numerics;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.Counting;

/// <summary>The orders nearest to all ballots.</summary>
/// <param name="Distance">Pairwise disagreements summed over ballots; a tie on a ballot counts half against either order.</param>
/// <param name="Agreement">Pairwise agreements, ties half.</param>
/// <param name="Optima">How many strict orders reach the distance.</param>
/// <param name="Orders">The first 24 of them in lexicographic order of item numbers, each best first.</param>
public sealed record KemenyResult(double Distance, double Agreement, long Optima, ImmutableArray<ImmutableArray<int>> Orders);

/// <summary>
/// Kemeny's rule: the strict orders that disagree least with the ballots, pair by pair. Exact by dynamic programming over the set of items
/// placed so far: 2^k states of k steps. Source: [Kemeny1959]; the recursion is Held and Karp's, [HeldKarp1962].
/// </summary>
public static class Kemeny
{
    /// <summary>The most items treated exactly.</summary>
    public const int LargestItems = 12;

    /// <summary>The most orders listed.</summary>
    public const int LargestListed = 24;

    /// <summary>Finds every optimum.</summary>
    /// <param name="set">Ballots over 2 to 12 items; partial ballots count for the pairs they served.</param>
    /// <returns>Refused for more than 12 items or fewer than 2.</returns>
    public static Answer<KemenyResult> Optima(RankingSet set)
    {
        ArgumentNullException.ThrowIfNull(set);
        var k = set.Items;
        if (k < 2) return new Refusal(RefusalKind.TooFewItems, "There is one item: there is nothing to order.");
        if (k > LargestItems) return new Refusal(RefusalKind.TooManyItems, $"Kemeny's orders are found exactly for up to {LargestItems} items; there are {k}.");
        var pairs = HeadToHead.Of(set);
        var full = (1 << k) - 1;

        // least[S]: the least doubled disagreement among the items outside S and of S with them, once S has been placed on top.
        var least = new long[full + 1];
        var ways = new long[full + 1];
        ways[full] = 1;
        for (var placed = full - 1; placed >= 0; placed--)
        {
            var best = long.MaxValue;
            var count = 0L;
            for (var next = 0; next < k; next++)
            {
                if ((placed & (1 << next)) != 0) continue;
                var cost = Cost(pairs, placed, next, k) + least[placed | (1 << next)];
                if (cost < best) (best, count) = (cost, 0);
                if (cost == best) count += ways[placed | (1 << next)];
            }

            least[placed] = best;
            ways[placed] = count;
        }

        var orders = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
        List(pairs, least, 0, new int[k], k, orders);
        var all = 0L;
        for (var i = 0; i < k; i++)
        {
            for (var j = i + 1; j < k; j++) all += pairs.DoubledWins(i, j) + pairs.DoubledWins(j, i);
        }

        return new KemenyResult(least[0] / 2.0, (all - least[0]) / 2.0, ways[0], orders.DrainToImmutable());
    }

    private static long Cost(HeadToHead pairs, int placed, int next, int k)
    {
        var cost = 0L;
        for (var other = 0; other < k; other++)
        {
            if (other != next && (placed & (1 << other)) == 0) cost += pairs.DoubledWins(other, next);
        }

        return cost;
    }

    private static void List(HeadToHead pairs, long[] least, int placed, int[] order, int k, ImmutableArray<ImmutableArray<int>>.Builder orders)
    {
        var depth = BitOperations.PopCount((uint)placed);
        if (depth == k)
        {
            orders.Add([.. order]);
            return;
        }

        for (var next = 0; next < k && orders.Count < LargestListed; next++)
        {
            if ((placed & (1 << next)) != 0) continue;
            if (Cost(pairs, placed, next, k) + least[placed | (1 << next)] != least[placed]) continue;
            order[depth] = next;
            List(pairs, least, placed | (1 << next), order, k, orders);
        }
    }
}
