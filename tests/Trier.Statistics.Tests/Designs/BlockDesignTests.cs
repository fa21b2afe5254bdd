using Trier.Statistics.Designs;
using Trier.Statistics.Randomness;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.Designs;

/// <summary>
/// The check files hold for 4 to 10 items the smallest numbers by the counting conditions, each built and checked by a second implementation (cyclic methods, local search, complements). For 11 and 12 items the same
/// conditions are worked out here.
/// </summary>
public sealed class BlockDesignTests
{
    [Fact]
    public void Every_design_of_the_check_table_is_built_with_its_numbers()
    {
        var rows = CheckData.Rows("bibd_table.csv");
        Assert.Equal(35, rows.Length);
        foreach (var row in rows)
        {
            var (items, size) = (CheckData.Whole(row[0]), CheckData.Whole(row[1]));
            var design = BalancedBlocks.Smallest(items, size).Value;
            Assert.True(design.IsBalanced, $"{items} items by {size} is not balanced.");
            Assert.Equal(CheckData.Whole(row[2]), design.Blocks.Length);
            Assert.Equal(CheckData.Whole(row[3]), design.Replicates[0]);
            Assert.Equal(CheckData.Whole(row[4]), design.Together[0][1]);
            Assert.Equal(CheckData.Number(row[5]), design.Efficiency, 6);
        }
    }

    [Fact]
    public void The_check_files_own_blocks_are_balanced_by_the_same_measure()
    {
        var table = CheckData.Rows("bibd_table.csv").ToDictionary(row => (row[0], row[1]), row => CheckData.Number(row[5]));
        foreach (var design in CheckData.Rows("bibd_blocks.csv").GroupBy(row => (row[0], row[1])))
        {
            var blocks = BlockDesign.Create(CheckData.Whole(design.Key.Item1), design.Select(row => row[3].Select(letter => letter - 'A')));
            Assert.True(blocks.IsBalanced);
            Assert.Equal(table[design.Key], blocks.Efficiency, 6);
        }
    }

    [Theory]
    [InlineData(11)]
    [InlineData(12)]
    public void Eleven_and_twelve_items_have_the_smallest_balanced_designs_that_counting_allows(int items)
    {
        for (var size = 2; size < items; size++)
        {
            var design = BalancedBlocks.Smallest(items, size).Value;
            Assert.True(design.IsBalanced, $"{items} items by {size} is not balanced.");
            Assert.Equal(LeastBlocks(items, size), design.Blocks.Length);
            Assert.Equal(design.LargestEfficiency, design.Efficiency, 9);
        }
    }

    [Theory]
    [InlineData(7, 3, 12)]
    [InlineData(6, 4, 14)]
    [InlineData(8, 5, 13)]
    [InlineData(10, 6, 24)]
    [InlineData(12, 6, 40)]
    [InlineData(15, 5, 30)]
    public void Any_number_of_tasters_gets_blocks_as_even_as_numbers_allow(int items, int size, int tasters)
    {
        var design = NearBalancedBlocks.Find(items, size, tasters, new Seed(4));
        Assert.Equal(tasters, design.Blocks.Length);
        Assert.InRange(design.ReplicateSpread, 0, tasters * size % items == 0 ? 0 : 1);
        Assert.InRange(design.TogetherSpread, 0, 2);
        Assert.InRange(design.Efficiency, 0.96 * design.LargestEfficiency, design.LargestEfficiency + 1e-12);
        Assert.Equal(design.Blocks.SelectMany(block => block), NearBalancedBlocks.Find(items, size, tasters, new Seed(4)).Blocks.SelectMany(block => block));
    }

    [Fact]
    public void Whoever_comes_first_already_has_an_even_share_of_the_blocks()
    {
        var design = NearBalancedBlocks.Find(7, 3, 20, new Seed(1));
        for (var come = 1; come <= 20; come++)
            Assert.InRange(BlockDesign.Create(7, design.Blocks.Take(come).Select(block => block.AsEnumerable())).ReplicateSpread, 0, 2);
    }

    [Fact]
    public void A_whole_number_of_balanced_designs_is_balanced()
    {
        Assert.True(NearBalancedBlocks.Find(7, 3, 14, new Seed(1)).IsBalanced);
        Assert.True(NearBalancedBlocks.Find(6, 3, 20, new Seed(2)).IsBalanced);
    }

    [Fact]
    public void Efficiency_is_zero_where_the_blocks_do_not_join_the_items_and_one_for_complete_blocks()
    {
        Assert.Equal(0, BlockDesign.Create(4, [[0, 1], [2, 3]]).Efficiency);
        Assert.Equal(1, BlockDesign.Create(4, [[0, 1, 2, 3], [3, 2, 1, 0]]).Efficiency, 12);
    }

    [Fact]
    public void Efficiency_falls_when_a_balanced_design_loses_a_block()
    {
        var whole = BalancedBlocks.Smallest(7, 3).Value;
        var less = BlockDesign.Create(7, whole.Blocks.Skip(1).Select(block => block.AsEnumerable()));
        Assert.True(less.Efficiency < whole.Efficiency - 0.01);
        Assert.False(less.IsBalanced);
    }

    [Fact]
    public void Blocks_that_break_a_rule_are_named()
    {
        Assert.Contains("Block 1", Assert.Throws<ArgumentException>(() => BlockDesign.Create(4, [[0, 1], [0, 1, 2]])).Message, StringComparison.Ordinal);
        Assert.Contains("twice", Assert.Throws<ArgumentException>(() => BlockDesign.Create(4, [[0, 0]])).Message, StringComparison.Ordinal);
        Assert.Contains("outside", Assert.Throws<ArgumentException>(() => BlockDesign.Create(4, [[0, 4]])).Message, StringComparison.Ordinal);
        Assert.Equal(RefusalKind.TooManyItems, BalancedBlocks.Smallest(13, 4).Refusal!.Kind);
    }

    private static int LeastBlocks(int items, int size)
    {
        for (var lambda = 1; ; lambda++)
        {
            if (lambda * (items - 1) % (size - 1) != 0) continue;
            var replicates = lambda * (items - 1) / (size - 1);
            if (items * replicates % size == 0 && items * replicates / size >= items) return items * replicates / size;
        }
    }
}
