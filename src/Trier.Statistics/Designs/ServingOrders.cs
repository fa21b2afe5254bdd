using System.Collections.Immutable;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.Designs;

/// <summary>
/// Serving orders balanced for position and carry-over. Source: [Williams1949]; the square with a repeat kept apart is found by search.
/// </summary>
public static class ServingOrders
{
    private const int Exchanges = 20_000;
    private const int Restarts = 8;

    /// <summary>
    /// Williams' square: first row 0, 1, k-1, 2, k-2, ..., further rows by adding 1 modulo k; for odd k the mirror image of every row is
    /// appended. Even k: k rows, each item once at each position and each ordered pair adjacent once; odd k: 2k rows, twice each.
    /// </summary>
    /// <param name="items">k, at least 2.</param>
    public static ImmutableArray<ImmutableArray<int>> Square(int items)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(items, 2);
        var first = new int[items];
        for (var i = 1; i < items; i++) first[i] = i % 2 == 1 ? (i + 1) / 2 : items - (i / 2);
        var rows = Enumerable.Range(0, items).Select(shift => first.Select(item => (item + shift) % items).ToImmutableArray()).ToList();
        if (items % 2 == 1) rows.AddRange([.. rows.Select(row => row.Reverse().ToImmutableArray())]);
        return [.. rows];
    }

    /// <summary>
    /// Orders for any number of tasters: whole squares, each with items renamed at random and its rows in random order, and then rows of one more square chosen to
    /// keep position and neighbour counts as even as a fixed number of choices finds.
    /// </summary>
    /// <param name="items">At least 2.</param>
    /// <param name="tasters">At least 1.</param>
    /// <param name="seed">Fixes the deal.</param>
    /// <returns>One order per taster.</returns>
    public static ImmutableArray<ImmutableArray<int>> Williams(int items, int tasters, Seed seed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(tasters, 1);
        return Deal(Square(items), items, tasters, seed, keep: _ => true, rename: true);
    }

    /// <summary>
    /// Orders in which two samples of one item are never served next to each other. A square of k orders with every sample once at each position is improved by a
    /// fixed number of exchanges until the repeat is never adjacent and the other neighbours are as even as found, then dealt to the tasters. Balanced over
    /// each k tasters in position.
    /// </summary>
    /// <param name="items">All samples, the repeat counted twice; at least 4.</param>
    /// <param name="tasters">At least 1.</param>
    /// <param name="a">One serving of the repeat.</param>
    /// <param name="b">The other.</param>
    /// <param name="seed">Fixes search and deal.</param>
    /// <returns>One order per taster; refused for fewer than 4 samples, where the two cannot be kept apart at even positions.</returns>
    /// <exception cref="ArgumentException">The two are the same, or out of range.</exception>
    public static Answer<ImmutableArray<ImmutableArray<int>>> WithRepeat(int items, int tasters, int a, int b, Seed seed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(tasters, 1);
        if (a == b || Math.Min(a, b) < 0 || Math.Max(a, b) >= items) throw new ArgumentException($"Samples {a} and {b} are not two different ones of the {items}.", nameof(b));
        if (items < 4) return new Refusal(RefusalKind.NotFound, "With fewer than four samples the two servings of the repeat cannot be kept apart in balanced orders.");
        var square = RepeatSquare.Find(items, a, b, Exchanges, Restarts, seed.Child("square"));
        if (square is null) return new Refusal(RefusalKind.NotFound, "The search found no balanced orders that keep the two servings of the repeat apart.");
        return Deal([.. square.Select(row => row.ToImmutableArray())], items, tasters, seed.Child("deal"), keep: _ => true, rename: false);
    }

    private static ImmutableArray<ImmutableArray<int>> Deal(
        ImmutableArray<ImmutableArray<int>> square, int items, int tasters, Seed seed, Func<ImmutableArray<int>, bool> keep, bool rename)
    {
        var generator = seed.Generator();
        var names = Enumerable.Range(0, items).ToArray();
        if (rename) generator.Shuffle<int>(names);
        var rows = square.Where(keep).Select(row => row.Select(item => names[item]).ToImmutableArray()).ToArray();
        var orders = new List<ImmutableArray<int>>(tasters);
        while (tasters - orders.Count >= rows.Length)
        {
            generator.Shuffle<ImmutableArray<int>>(rows);
            orders.AddRange(rows);
        }

        orders.AddRange(EvenRows(rows, items, tasters - orders.Count, generator));
        return [.. orders];
    }

    /// <summary>Some rows of a square: of a fixed number of random choices the one whose counts are most even.</summary>
    private static ImmutableArray<int>[] EvenRows(ImmutableArray<int>[] rows, int items, int count, Generator generator)
    {
        const int choices = 400;
        ImmutableArray<int>[] best = [];
        var least = long.MaxValue;
        for (var choice = 0; choice < choices && count > 0; choice++)
        {
            generator.Shuffle<ImmutableArray<int>>(rows);
            var balance = Balance.Of(items, rows.Take(count));
            var unevenness = balance.Positions.Concat(balance.CarryOver).Sum(row => row.Sum(n => (long)n * n));
            if (unevenness >= least) continue;
            least = unevenness;
            best = rows[..count];
        }

        return best;
    }
}

/// <summary>Finds k orders of k samples, each sample once at each position, two of them never adjacent, other neighbours even.</summary>
internal static class RepeatSquare
{
    // One adjacent serving of the repeat outweighs every unevenness of the other neighbours.
    private const int AdjacentCost = 1000;

    public static int[][]? Find(int items, int a, int b, int exchanges, int restarts, Seed seed)
    {
        int[][]? best = null;
        var least = AdjacentCost;
        for (var restart = 0; restart < restarts; restart++)
        {
            var generator = seed.Child(restart).Generator();
            var square = Start(items, generator);
            var cost = Cost(square, items, a, b);
            for (var exchange = 0; exchange < exchanges; exchange++)
            {
                var undo = Move(square, items, generator);
                var next = Cost(square, items, a, b);
                var heat = 3.0 * (1 - ((double)exchange / exchanges));
                if (next <= cost || (heat > 0 && generator.NextDouble() < Math.Exp((cost - next) / heat))) cost = next;
                else undo();
                if (cost >= least) continue;
                least = cost;
                best = [.. square.Select(row => (int[])row.Clone())];
            }
        }

        return best;
    }

    private static int[][] Start(int items, Generator generator)
    {
        int[] symbols = [.. Enumerable.Range(0, items)], columns = [.. Enumerable.Range(0, items)];
        generator.Shuffle<int>(symbols);
        generator.Shuffle<int>(columns);
        return [.. Enumerable.Range(0, items).Select(row => columns.Select(column => symbols[(row + column) % items]).ToArray())];
    }

    /// <summary>
    /// A move that keeps every item once in each row and column: in two rows, the columns of one cycle of their exchange are swapped; or
    /// two columns are swapped.
    /// </summary>
    private static Action Move(int[][] square, int items, Generator generator)
    {
        if (generator.NextInt(3) == 0)
        {
            var (left, right) = (generator.NextInt(items), generator.NextInt(items));
            void Swap()
            {
                foreach (var row in square) (row[left], row[right]) = (row[right], row[left]);
            }

            Swap();
            return Swap;
        }

        var first = square[generator.NextInt(items)];
        var second = square[generator.NextInt(items)];
        var start = generator.NextInt(items);
        void Cycle()
        {
            var column = start;
            var symbol = first[start];
            if (ReferenceEquals(first, second)) return;
            do
            {
                (first[column], second[column]) = (second[column], first[column]);
                var wanted = first[column];
                var next = -1;
                for (var c = 0; c < items; c++)
                {
                    if (c != column && first[c] == wanted) next = c;
                }

                if (next < 0) return;
                column = next;
            }
            while (column != start || first[column] != symbol);
        }

        Cycle();
        return Cycle;
    }

    private static int Cost(int[][] square, int items, int a, int b)
    {
        Span<int> follows = stackalloc int[items * items];
        foreach (var row in square)
        {
            for (var i = 1; i < items; i++) follows[(row[i - 1] * items) + row[i]]++;
        }

        var cost = 0;
        for (var i = 0; i < items; i++)
        {
            for (var j = 0; j < items; j++)
            {
                if (i == j) continue;
                var n = follows[(i * items) + j];
                cost += (i == a && j == b) || (i == b && j == a) ? AdjacentCost * n : (n - 1) * (n - 1);
            }
        }

        return cost;
    }
}
