using System.Collections.Immutable;

namespace Trier.Statistics.Designs;

/// <summary>Which items each taster gets where nobody gets all: blocks of one size. Immutable.</summary>
public sealed class BlockDesign
{
    private BlockDesign(int items, int blockSize, ImmutableArray<ImmutableArray<int>> blocks)
    {
        Items = items;
        BlockSize = blockSize;
        Blocks = blocks;
        var replicates = new int[items];
        var together = new int[items, items];
        foreach (var block in blocks)
        {
            foreach (var i in block)
            {
                replicates[i]++;
                foreach (var j in block)
                {
                    if (i != j) together[i, j]++;
                }
            }
        }

        Replicates = [.. replicates];
        Together = [.. Enumerable.Range(0, items).Select(i => Enumerable.Range(0, items).Select(j => together[i, j]).ToImmutableArray())];
    }

    /// <summary>v.</summary>
    public int Items { get; }

    /// <summary>Items in a block.</summary>
    public int BlockSize { get; }

    /// <summary>The blocks, each in rising order.</summary>
    public ImmutableArray<ImmutableArray<int>> Blocks { get; }

    /// <summary>Per item in how many blocks it stands.</summary>
    public ImmutableArray<int> Replicates { get; }

    /// <summary>[i][j]: in how many blocks both stand; 0 on the diagonal.</summary>
    public ImmutableArray<ImmutableArray<int>> Together { get; }

    /// <summary>Largest minus smallest count of blocks of an item.</summary>
    public int ReplicateSpread => Replicates.Max() - Replicates.Min();

    /// <summary>Largest minus smallest count of blocks that a pair shares.</summary>
    public int TogetherSpread
    {
        get
        {
            var counts = Together.SelectMany((row, i) => row.Where((_, j) => i != j)).ToArray();
            return counts.Max() - counts.Min();
        }
    }

    /// <summary>True where every item stands in equally many blocks and so does every pair.</summary>
    public bool IsBalanced => ReplicateSpread == 0 && TogetherSpread == 0;

    /// <summary>
    /// The average efficiency factor: how much a comparison of two items is worth here against one with as many tastings in complete blocks, averaged over all pairs:
    /// (v - 1)/(r sum 1/l), r the mean number of blocks an item stands in, l the eigenvalues but one of R - N N'/m. For a balanced design v lambda/(r m). Zero where the blocks do not join all items.
    /// Source: [JohnWilliams1995], section 2.3.
    /// </summary>
    public double Efficiency
    {
        get
        {
            var information = new Laplacian(Items);
            foreach (var block in Blocks) information.Add(block.AsSpan(), 1);
            if (information.Pieces().Length > 1) return 0;
            var inverse = information.PseudoInverse();
            var trace = 0.0;
            for (var i = 0; i < Items; i++) trace += inverse[i, i];
            return (Items - 1) / ((double)Blocks.Length * BlockSize / Items * trace);
        }
    }

    /// <summary>What a balanced design of these sizes would reach, and no design exceeds: v(m - 1)/(m(v - 1)).</summary>
    public double LargestEfficiency => Items * (BlockSize - 1.0) / (BlockSize * (Items - 1.0));

    /// <summary>Makes a design of given blocks.</summary>
    /// <param name="items">At least 2.</param>
    /// <param name="blocks">At least one; all of one size from 2 to <paramref name="items"/>, each of different items.</param>
    /// <exception cref="ArgumentException">A block breaks a rule.</exception>
    public static BlockDesign Create(int items, IEnumerable<IEnumerable<int>> blocks)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(items, 2);
        ArgumentNullException.ThrowIfNull(blocks);
        var kept = blocks.Select(block => block.Order().ToImmutableArray()).ToImmutableArray();
        if (kept.IsEmpty) throw new ArgumentException("There is no block.", nameof(blocks));
        for (var b = 0; b < kept.Length; b++)
        {
            var block = kept[b];
            if (block.Length < 2 || block.Length != kept[0].Length) throw new ArgumentException($"Block {b} has {block.Length} items: all need the same number, at least 2.", nameof(blocks));
            if (block[0] < 0 || block[^1] >= items) throw new ArgumentException($"Block {b} names an item outside 0 to {items - 1}.", nameof(blocks));
            if (block.Distinct().Count() != block.Length) throw new ArgumentException($"Block {b} names an item twice.", nameof(blocks));
        }

        return new BlockDesign(items, kept[0].Length, kept);
    }
}
