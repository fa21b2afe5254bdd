using Trier.Statistics.Randomness;

namespace Trier.Statistics.Designs;

/// <summary>
/// Finds k orders of k samples, each sample once at each position, two of them never adjacent, other neighbours even: exchanges that keep every row and column complete are taken or left by simulated
/// annealing. Source: cycles of two rows as in [Wanless2004], annealing [KirkpatrickGelattVecchi1983].
/// </summary>
internal static class RepeatSquare
{
    private const int Exchanges = 20_000;
    private const int Restarts = 8;

    // One adjacent serving of the repeat outweighs every unevenness of the other neighbours.
    private const int AdjacentCost = 1000;

    // The two ordered pairs that may not be adjacent leave k(k-1) neighbours for k(k-1)-2 pairs: two of them must stand twice.
    private const int LeastCost = 2;

    public static int[][]? Find(int items, int a, int b, Seed seed)
    {
        int[][]? best = null;
        var least = AdjacentCost;
        for (var restart = 0; restart < Restarts && least > LeastCost; restart++)
        {
            var generator = seed.Child(restart).Generator();
            var square = Start(items, generator);
            var cost = Cost(square, items, a, b);
            for (var exchange = 0; exchange < Exchanges && least > LeastCost; exchange++)
            {
                var move = Move.Draw(items, generator);
                move.Make(square);
                var next = Cost(square, items, a, b);
                var heat = 3.0 * (1 - ((double)exchange / Exchanges));
                if (next <= cost || generator.NextDouble() < Math.Exp((cost - next) / heat)) cost = next;
                else move.Make(square);
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

    private static int Cost(int[][] square, int items, int a, int b)
    {
        Span<int> follows = stackalloc int[items * items];
        follows.Clear();
        foreach (var row in square)
        {
            for (var i = 1; i < row.Length; i++) follows[(row[i - 1] * items) + row[i]]++;
        }

        // Over the allowed pairs sum (n-1)^2; the diagonal holds zeros, each adding 1.
        var apart = follows[(a * items) + b] + follows[(b * items) + a];
        var cost = -items - ((follows[(a * items) + b] - 1) * (follows[(a * items) + b] - 1)) - ((follows[(b * items) + a] - 1) * (follows[(b * items) + a] - 1));
        foreach (var n in follows) cost += (n - 1) * (n - 1);
        return cost + (AdjacentCost * apart);
    }

    /// <summary>
    /// A move that keeps every item once in each row and column and undoes itself: in two rows, the columns of one cycle of their exchange are swapped; or two columns are swapped.
    /// </summary>
    private readonly record struct Move(bool Columns, int First, int Second, int Start)
    {
        public static Move Draw(int items, Generator generator) =>
            new(generator.NextInt(3) == 0, generator.NextInt(items), generator.NextInt(items), generator.NextInt(items));

        public void Make(int[][] square)
        {
            if (First == Second) return;
            if (Columns)
            {
                foreach (var row in square) (row[First], row[Second]) = (row[Second], row[First]);
                return;
            }

            var (first, second) = (square[First], square[Second]);
            var column = Start;
            do
            {
                (first[column], second[column]) = (second[column], first[column]);
                var twice = first[column];
                var next = -1;
                for (var c = 0; c < first.Length; c++)
                {
                    if (c != column && first[c] == twice) next = c;
                }

                column = next;
            }
            while (column >= 0);
        }
    }
}
