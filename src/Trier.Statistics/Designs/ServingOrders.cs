using System.Collections.Immutable;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.Designs;

/// <summary>
/// Serving orders balanced for position and carry-over. Dealt in sets of k orders in which each item stands once at each position, so that however many tasters come, in the order of the list, no item stands
/// at a position more than once more often than another. Source: [Williams1949]; the set with a repeat kept apart is found by search.
/// </summary>
public static class ServingOrders
{
    private const int Renamings = 60;

    // Found by annealing over pairs of squares. In the first half 10 of the 20 ordered pairs are adjacent exactly once, in half a Williams square none.
    private const string FiveItems = "DEBCA BCEAD ABDEC EACDB CDABE EDBAC BADCE AECBD DCAEB CBEDA";

    // The same: 28 of the 42 ordered pairs exactly once in the first half.
    private const string SevenItems = "DBFEGCA ECGFADB FDAGBEC AFCBDGE BGDCEAF GEBACFD CAEDFBG ACBEFGD FAGCDEB GBADEFC CEDGABF EGFBCDA DFEABCG BDCFGAE";

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
    /// Orders for any number of tasters: balanced sets of k or 2k orders one after another, each with items renamed at random; within each k orders the next is always one that
    /// keeps the counts of neighbours most even. The sets are Williams' squares; for 5 and 7 items, where half a Williams square has each neighbour twice or never, two squares found by search that are as
    /// balanced together and more even each by itself. For even k neighbours' counts differ by at most 1 after every taster, for odd k by at most 2, and where the number of tasters is a multiple of the square's rows not at all.
    /// </summary>
    /// <param name="items">At least 2.</param>
    /// <param name="tasters">At least 1.</param>
    /// <param name="seed">Fixes the deal.</param>
    /// <returns>One order per taster, in order of arrival.</returns>
    public static ImmutableArray<ImmutableArray<int>> Williams(int items, int tasters, Seed seed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(tasters, 1);
        var generator = seed.Generator();
        var sets = EvenSets(items);
        var names = Enumerable.Range(0, items).ToArray();
        var deal = new Deal(items, tasters);
        while (!deal.IsDone)
        {
            generator.Shuffle<int>(names);
            foreach (var set in sets) deal.Add(Renamed(set, names), generator);
        }

        return deal.Orders;
    }

    /// <summary>
    /// Orders in which two samples of one item are never served next to each other. A set of k orders with every sample once at each position is improved by a
    /// fixed number of exchanges until the repeat is never adjacent and the other neighbours are as even as found; each further k tasters get the set with the other samples, and the two servings, renamed in the
    /// way, of a fixed number drawn, that evens the neighbours out.
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
        var square = RepeatSquare.Find(items, a, b, seed.Child("square"));
        if (square is null) return new Refusal(RefusalKind.NotFound, "The search found no balanced orders that keep the two servings of the repeat apart.");
        var generator = seed.Child("deal").Generator();
        var deal = new Deal(items, tasters);
        deal.Add([.. square.Select(row => row.ToImmutableArray())], generator);
        while (!deal.IsDone)
        {
            var best = Enumerable.Range(0, Renamings)
                .Select(_ => Renamed([.. square.Select(row => row.ToImmutableArray())], Renaming(items, a, b, generator)))
                .MinBy(deal.UnevennessWith)!;
            deal.Add(best, generator);
        }

        return deal.Orders;
    }

    /// <summary>Sets of k orders, each with every item once at each position, which together have every ordered pair adjacent equally often.</summary>
    private static IEnumerable<ImmutableArray<int>[]> EvenSets(int items)
    {
        var rows = items switch
        {
            5 => Read(FiveItems),
            7 => Read(SevenItems),
            _ => Square(items),
        };
        return rows.Chunk(items);
    }

    private static IEnumerable<ImmutableArray<int>> Read(string rows) => rows.Split(' ').Select(row => row.Select(letter => letter - 'A').ToImmutableArray());

    private static ImmutableArray<int>[] Renamed(IEnumerable<ImmutableArray<int>> rows, int[] names) =>
        [.. rows.Select(row => row.Select(item => names[item]).ToImmutableArray())];

    /// <summary>A new name for every sample: the two servings change places or not, the others are shuffled among themselves.</summary>
    private static int[] Renaming(int items, int a, int b, Generator generator)
    {
        var others = Enumerable.Range(0, items).Where(i => i != a && i != b).ToArray();
        var shuffled = others.ToArray();
        generator.Shuffle<int>(shuffled);
        var names = new int[items];
        (names[a], names[b]) = generator.NextInt(2) == 0 ? (a, b) : (b, a);
        for (var i = 0; i < others.Length; i++) names[others[i]] = shuffled[i];
        return names;
    }

    /// <summary>Orders dealt so far, with the counts of their neighbours.</summary>
    private sealed class Deal(int items, int tasters)
    {
        private readonly int[] _follows = new int[items * items];
        private readonly List<ImmutableArray<int>> _orders = new(tasters);

        public bool IsDone => _orders.Count >= tasters;

        public ImmutableArray<ImmutableArray<int>> Orders => [.. _orders];

        /// <summary>Sum of squared counts of ordered neighbours if these rows were added.</summary>
        public long UnevennessWith(IReadOnlyList<ImmutableArray<int>> rows)
        {
            var follows = (int[])_follows.Clone();
            foreach (var row in rows)
            {
                for (var i = 1; i < row.Length; i++) follows[(row[i - 1] * items) + row[i]]++;
            }

            return follows.Sum(n => (long)n * n);
        }

        /// <summary>Deals rows until all are dealt or every taster has one; equally good ones in random order.</summary>
        public void Add(ImmutableArray<int>[] rows, Generator generator)
        {
            generator.Shuffle<ImmutableArray<int>>(rows);
            var left = rows.ToList();
            while (left.Count > 0 && !IsDone)
            {
                var row = left.MinBy(Cost);
                left.Remove(row);
                for (var i = 1; i < row.Length; i++) _follows[(row[i - 1] * items) + row[i]]++;
                _orders.Add(row);
            }
        }

        private int Cost(ImmutableArray<int> row)
        {
            var cost = 0;
            for (var i = 1; i < row.Length; i++) cost += _follows[(row[i - 1] * items) + row[i]];
            return cost;
        }
    }
}
