using System.Collections.Immutable;
using Trier.Statistics.Designs;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.Tests.Designs;

public sealed class ServingPlanTests
{
    [Fact]
    public void From_2_to_40_tasters_and_2_to_8_samples_positions_differ_by_at_most_one_and_neighbours_hardly_more()
    {
        for (var items = 2; items <= 8; items++)
        {
            var rows = ServingOrders.Square(items).Length;
            for (var tasters = 2; tasters <= 40; tasters++)
            {
                var balance = ServingPlan.For(items, tasters, items, new Seed(8)).Value.Balance;
                Assert.InRange(balance.PositionSpread, 0, 1);
                Assert.InRange(balance.CarryOverSpread, 0, items % 2 == 0 ? 1 : 2);
                if (tasters % rows == 0) Assert.True(balance.IsPerfect, $"{tasters} tasters by {items} samples are not perfectly balanced.");
            }
        }
    }

    [Theory]
    [InlineData(5, 40)]
    [InlineData(6, 40)]
    [InlineData(7, 31)]
    [InlineData(8, 40)]
    public void Whoever_stays_away_at_the_end_the_orders_dealt_so_far_are_even(int items, int tasters)
    {
        var orders = ServingPlan.For(items, tasters, items, new Seed(2)).Value.Orders;
        for (var come = 1; come <= tasters; come++)
        {
            var balance = Balance.Of(items, orders.Take(come));
            Assert.InRange(balance.PositionSpread, 0, 1);
            Assert.InRange(balance.CarryOverSpread, 0, items % 2 == 0 ? 1 : 2);
        }
    }

    [Theory]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void With_a_repeat_positions_stay_even_for_any_number_of_arrivals_and_the_cost_is_told(int items)
    {
        var plan = ServingPlan.For(items, 25, items, new Seed(3), (0, 2)).Value;
        for (var come = 1; come <= 25; come++) Assert.InRange(Balance.Of(items, plan.Orders.Take(come)).PositionSpread, 0, 1);
        Assert.Equal(0, plan.Balance.Adjacent(0, 2));
        Assert.True(plan.RepeatCost > 0);
        Assert.Equal(plan.Balance.CarryOverUnevenness - plan.WithoutRepeat!.CarryOverUnevenness, plan.RepeatCost, 12);
    }

    /// <summary>The counts stand beside the held squares; half a Williams square has every ordered pair twice or never.</summary>
    [Theory]
    [InlineData(5, 10)]
    [InlineData(7, 28)]
    public void The_first_half_of_an_odd_set_is_more_even_than_half_a_Williams_square(int items, int once)
    {
        int Once(IEnumerable<ImmutableArray<int>> orders) => Balance.Of(items, orders).CarryOver.Sum(row => row.Count(n => n == 1));
        var orders = ServingOrders.Williams(items, 2 * items, new Seed(9));
        Assert.Equal(once, Once(orders.Take(items)));
        Assert.Equal(0, Once(ServingOrders.Square(items).Take(items)));
        Assert.True(Balance.Of(items, orders).IsPerfect);
    }

    [Fact]
    public void Later_sets_even_out_what_an_earlier_one_left_uneven()
    {
        var once = ServingPlan.For(6, 6, 6, new Seed(5), (1, 4)).Value.Balance;
        var four = ServingPlan.For(6, 24, 6, new Seed(5), (1, 4)).Value.Balance;
        var others = Enumerable.Range(0, 36).Select(n => (I: n / 6, J: n % 6)).Where(p => p.I != p.J && (p.I, p.J) is not ((1, 4) or (4, 1))).ToArray();
        Assert.True(others.Max(p => once.CarryOver[p.I][p.J]) * 4 > others.Max(p => four.CarryOver[p.I][p.J]) + 1);
        Assert.InRange(others.Max(p => four.CarryOver[p.I][p.J]) - others.Min(p => four.CarryOver[p.I][p.J]), 0, 3);
    }

    [Theory]
    [InlineData(7, 21, 3)]
    [InlineData(6, 20, 3)]
    [InlineData(9, 18, 4)]
    [InlineData(10, 24, 6)]
    public void Where_each_taster_gets_some_every_sample_is_spread_over_the_positions(int items, int tasters, int perTaster)
    {
        var plan = ServingPlan.For(items, tasters, perTaster, new Seed(6)).Value;
        Assert.All(plan.Orders, order => Assert.Equal(perTaster, order.Distinct().Count()));
        Assert.Equal(plan.Blocks!.Blocks.Select(block => string.Join(',', block)), plan.Orders.Select(order => string.Join(',', order.Order())));
        Assert.InRange(plan.Balance.PositionSpread, 0, 2);
        Assert.InRange(plan.Balance.CarryOverSpread, 0, 3);
        Assert.Equal(plan.Blocks.Efficiency, plan.Efficiency);
        Assert.InRange(plan.Efficiency, 0.9 * plan.Blocks.LargestEfficiency, 1);
    }

    [Fact]
    public void A_repeat_is_kept_apart_where_each_taster_gets_some()
    {
        var plan = ServingPlan.For(7, 28, 4, new Seed(6), (0, 1)).Value;
        Assert.Equal(0, plan.Balance.Adjacent(0, 1));
        Assert.True(ServingPlan.For(7, 28, 4, new Seed(6)).Value.Balance.Adjacent(0, 1) > 0, "Without a repeat the two are neighbours: the check can fail.");
        Assert.Equal(RefusalKind.NotFound, ServingPlan.For(7, 28, 2, new Seed(6), (0, 1)).Refusal!.Kind);
        Assert.Equal(RefusalKind.NotFound, ServingPlan.For(3, 6, 3, new Seed(6), (0, 1)).Refusal!.Kind);
    }

    /// <summary>By hand: ABC and its rotations have every pair A-B, B-C, C-A twice and no other; without one of the three each item is missing at one position.</summary>
    [Fact]
    public void The_loss_by_missing_tasters_is_that_counted_by_hand()
    {
        ImmutableArray<ImmutableArray<int>> orders = [[0, 1, 2], [1, 2, 0], [2, 0, 1]];
        Assert.Equal(new MissingTasters(0, 2), MissingTasters.Worst(3, orders, 0));
        Assert.Equal(new MissingTasters(1, 2), MissingTasters.Worst(3, orders, 1));
        Assert.Equal(new MissingTasters(1, 1), MissingTasters.Worst(3, orders, 2));
    }

    [Fact]
    public void The_loss_is_the_worst_over_all_choices_counted_the_slow_way()
    {
        var orders = ServingOrders.Williams(5, 9, new Seed(1));
        var slow = (from a in Enumerable.Range(0, 9)
                    from b in Enumerable.Range(0, a)
                    select Balance.Of(5, orders.Where((_, i) => i != a && i != b))).ToList();
        var found = MissingTasters.Worst(5, orders, 2);
        Assert.Equal(slow.Max(balance => balance.PositionSpread), found.PositionSpread);
        Assert.Equal(slow.Max(balance => balance.CarryOverSpread), found.CarryOverSpread);
    }
}
