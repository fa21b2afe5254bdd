using System.Collections.Immutable;
using Trier.Statistics.Designs;
using Trier.Statistics.Randomness;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.Designs;

public sealed class ServingOrdersTests
{
    [Fact]
    public void Squares_are_those_of_the_construction_in_the_check_file()
    {
        foreach (var table in CheckData.Rows("williams_squares.csv").GroupBy(row => CheckData.Whole(row[0])))
        {
            var expected = table.Select(row => row[2]).Order(StringComparer.Ordinal);
            var found = ServingOrders.Square(table.Key).Select(order => string.Concat(order.Select(item => (char)('A' + item)))).Order(StringComparer.Ordinal);
            Assert.Equal(expected, found);
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(11)]
    [InlineData(12)]
    public void Squares_are_balanced_for_position_and_carry_over(int items)
    {
        var balance = Balance.Of(items, ServingOrders.Square(items));
        Assert.True(balance.IsPerfect);
        Assert.Equal(items % 2 == 0 ? 1 : 2, balance.Positions[0][0]);
    }

    /// <summary>Published squares: a pharmaceutical-statistics forum (k 4, correcting a misprint), the help of an R cross-over package (k 10).</summary>
    [Theory]
    [InlineData(4, "ABCD BDAC CADB DCBA", true)]
    [InlineData(4, "ABCD BDAC CABD DCBA", false)]
    [InlineData(6, "126354 231465 342516 453621 564132 615243", true)]
    [InlineData(3, "123 231 312 321 132 213", true)]
    [InlineData(4, "ABCD BCDA CDAB DABC", false)]
    public void The_balance_checker_knows_good_squares_from_bad(int items, string square, bool good)
    {
        var orders = square.Split(' ').Select(row => row.Select(c => char.IsDigit(c) ? c - '1' : c - 'A').ToImmutableArray());
        Assert.Equal(good, Balance.Of(items, orders).IsPerfect);
    }

    [Theory]
    [InlineData(5, 12)]
    [InlineData(6, 14)]
    [InlineData(4, 3)]
    [InlineData(3, 40)]
    public void Any_number_of_tasters_is_dealt_evenly(int items, int tasters)
    {
        var orders = ServingOrders.Williams(items, tasters, new Seed(3));
        Assert.Equal(tasters, orders.Length);
        Assert.All(orders, order => Assert.Equal(Enumerable.Range(0, items), order.Order()));
        Assert.InRange(Balance.Of(items, orders).PositionSpread, 0, 2);
        Assert.Equal(orders.SelectMany(order => order), ServingOrders.Williams(items, tasters, new Seed(3)).SelectMany(order => order));
    }

    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void The_repeat_is_never_served_next_to_itself(int items)
    {
        var orders = ServingOrders.WithRepeat(items, 2 * items, 1, items - 1, new Seed(5)).Value;
        var balance = Balance.Of(items, orders);
        Assert.Equal(0, balance.Adjacent(1, items - 1));
        Assert.Equal(0, balance.PositionSpread);
        Assert.Equal(2, balance.Positions[0][0]);
    }

    [Fact]
    public void Six_samples_reach_the_evenness_found_before()
    {
        var orders = ServingOrders.WithRepeat(6, 6, 1, 4, new Seed(5)).Value;
        var carry = Balance.Of(6, orders).CarryOver;
        var others = Enumerable.Range(0, 36).Select(n => (I: n / 6, J: n % 6)).Where(p => p.I != p.J && (p.I, p.J) is not ((1, 4) or (4, 1))).Select(p => carry[p.I][p.J]).ToArray();
        Assert.Equal(28, others.Length);
        Assert.All(others, n => Assert.InRange(n, 0, 2));
        Assert.True(others.Count(n => n == 1) >= 22, $"{others.Count(n => n == 1)} of 28 neighbours stand exactly once.");
    }
}
