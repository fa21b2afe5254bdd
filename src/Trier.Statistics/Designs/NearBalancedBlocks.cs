using System.Collections.Immutable;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.Designs;

/// <summary>
/// Blocks for any number of tasters: whole balanced designs as often as they fit, and then blocks in which items, and pairs, stand as evenly as a fixed number of seeded exchanges finds. The
/// blocks are put in an order in which those who come first already have an even share.
/// </summary>
public static class NearBalancedBlocks
{
    private const int Exchanges = 20_000;

    // An item served once too often outweighs every unevenness of pairs.
    private const int ItemCost = 100;

    /// <summary>The blocks in the order of arrival.</summary>
    /// <param name="items">At least 3.</param>
    /// <param name="blockSize">From 2 to <paramref name="items"/> - 1.</param>
    /// <param name="blocks">How many, at least 1.</param>
    /// <param name="seed">Fixes search and order.</param>
    public static BlockDesign Find(int items, int blockSize, int blocks, Seed seed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(items, 3);
        ArgumentOutOfRangeException.ThrowIfLessThan(blockSize, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(blockSize, items);
        ArgumentOutOfRangeException.ThrowIfLessThan(blocks, 1);
        var dealt = new List<int[]>(blocks);
        var counts = new Counts(items);
        var balanced = BalancedBlocks.Smallest(items, blockSize);
        if (balanced.Stands)
        {
            var names = Enumerable.Range(0, items).ToArray();
            for (var copy = 0; blocks - dealt.Count >= balanced.Value.Blocks.Length; copy++)
            {
                var generator = seed.Child("balanced").Child(copy).Generator();
                generator.Shuffle<int>(names);
                Deal([.. balanced.Value.Blocks.Select(block => block.Select(i => names[i]).ToArray())], dealt, counts, generator);
            }
        }

        if (dealt.Count < blocks)
        {
            var generator = seed.Child("rest").Generator();
            var rest = Start(items, blockSize, blocks - dealt.Count, counts.Copy(), generator);
            Deal(Improve(rest, items, counts.Copy(), generator), dealt, counts, generator);
        }

        return BlockDesign.Create(items, dealt);
    }

    /// <summary>Block after block of the items served least, then of those that met each other least.</summary>
    private static List<int[]> Start(int items, int size, int blocks, Counts counts, Generator generator)
    {
        var names = Enumerable.Range(0, items).ToArray();
        var result = new List<int[]>(blocks);
        for (var b = 0; b < blocks; b++)
        {
            generator.Shuffle<int>(names);
            var block = new List<int>(size);
            while (block.Count < size)
                block.Add(names.Where(i => !block.Contains(i)).MinBy(i => (ItemCost * counts.Served[i]) + block.Sum(j => counts.Together[i, j])));
            counts.Add([.. block], 1);
            result.Add([.. block]);
        }

        return result;
    }

    private static List<int[]> Improve(List<int[]> blocks, int items, Counts counts, Generator generator)
    {
        foreach (var block in blocks) counts.Add(block, 1);
        for (var exchange = 0; exchange < Exchanges; exchange++)
        {
            var block = blocks[generator.NextInt(blocks.Count)];
            var at = generator.NextInt(block.Length);
            var (old, other) = (block[at], generator.NextInt(items));
            if (block.Contains(other)) continue;

            // Either one item is exchanged, or two blocks trade one for the other so that the items' shares stay.
            var second = blocks[generator.NextInt(blocks.Count)];
            var there = ReferenceEquals(block, second) || second.Contains(old) ? -1 : Array.IndexOf(second, other);
            var change = Exchange(block, at, other, counts);
            if (there >= 0) change += Exchange(second, there, old, counts);
            if (change <= 0) continue;
            if (there >= 0) Exchange(second, there, other, counts);
            Exchange(block, at, old, counts);
        }

        return blocks;
    }

    private static long Exchange(int[] block, int at, int item, Counts counts)
    {
        var old = block[at];
        var change = ItemCost * 2L * (counts.Served[item] - counts.Served[old] + 1);
        foreach (var j in block)
        {
            if (j != old) change += 2L * (counts.Together[item, j] - counts.Together[old, j] + 1);
        }

        counts.Add(block, -1);
        block[at] = item;
        counts.Add(block, 1);
        return change;
    }

    /// <summary>Puts blocks in an order of arrival: each time the one whose items and pairs have been served least.</summary>
    private static void Deal(List<int[]> blocks, List<int[]> dealt, Counts counts, Generator generator)
    {
        var waiting = blocks.ToArray();
        generator.Shuffle<int[]>(waiting);
        var left = waiting.ToList();
        while (left.Count > 0)
        {
            var next = left.MinBy(block => block.Sum(i => (2L * ItemCost * counts.Served[i]) + block.Sum(j => (long)counts.Together[i, j])))!;
            left.Remove(next);
            counts.Add(next, 1);
            dealt.Add(next);
        }
    }

    private sealed class Counts(int items)
    {
        public int[] Served { get; private init; } = new int[items];

        public int[,] Together { get; private init; } = new int[items, items];

        public Counts Copy() => new(Served.Length) { Served = [.. Served], Together = (int[,])Together.Clone() };

        public void Add(int[] block, int times)
        {
            foreach (var i in block)
            {
                Served[i] += times;
                foreach (var j in block)
                {
                    if (i != j) Together[i, j] += times;
                }
            }
        }
    }
}
