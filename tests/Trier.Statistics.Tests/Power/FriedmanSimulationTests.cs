using Trier.Statistics.Counting;
using Trier.Statistics.Distributions;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.Power;

/// <summary>
/// power_friedman_plackett_luce.csv holds exact powers, found by a second implementation (Fourier convolution of the one-judge distribution, NumPy). There the last item has the other worth, here the first.
/// </summary>
public sealed class FriedmanSimulationTests
{
    private const int Panels = 20_000;

    [Fact]
    public void Simulated_power_lies_within_four_errors_of_the_exact_one()
    {
        var rows = CheckData.Rows("power_friedman_plackett_luce.csv");
        Assert.Equal(60, rows.Length);
        foreach (var row in rows)
        {
            var (items, judges, worth) = (CheckData.Whole(row[0]), CheckData.Whole(row[1]), CheckData.Number(row[2]));
            var found = FriedmanSimulation.Run(PanelModel.Favourite(items, worth), judges, Panels, new Seed(11)).Value;
            Near(row[3], found.AtLeast(Tails.ChiSquareQuantile(0.05, items - 1)));
            Near(row[4], found.AtLeast(CheckData.Number(row[5]) - 1e-4));
            Near(row[6], found.FAtLeast(FQuantile(items - 1, (items - 1) * (judges - 1))));
            Near(row[7], found.FirstAlone);
            Near(row[8], found.FirstTied);
        }
    }

    /// <summary>One judge, worths 4 3 2 1 (check values, section 12).</summary>
    [Theory]
    [InlineData("ABCD", 0.133333)]
    [InlineData("ABDC", 0.066667)]
    [InlineData("ACBD", 0.1)]
    [InlineData("BACD", 0.114286)]
    [InlineData("DCBA", 0.009524)]
    public void The_chances_of_whole_orders_are_those_of_the_model(string order, double chance)
    {
        var table = new OrderTable(4);
        var chances = table.Chances([4, 3, 2, 1]);
        var at = Enumerable.Range(0, table.Count).Single(i => Enumerable.Range(0, 4).All(item => table.PlacesOf(i)[item] == order.IndexOf((char)('A' + item), StringComparison.Ordinal)));
        Assert.Equal(chance, chances[at], 6);
        Assert.Equal(1, chances.Sum(), 12);
    }

    [Fact]
    public void The_alias_table_draws_each_payload_with_its_chance()
    {
        double[] chances = [0.5, 0.25, 0.2, 0.04, 0.01, 0];
        var table = new AliasTable(chances, [0, 1, 2, 3, 4, 5]);
        var generator = new Seed(3).Generator();
        var counts = new long[6];
        for (var i = 0; i < 400_000; i++) counts[table.Draw(generator)]++;
        for (var i = 0; i < 6; i++)
            Assert.InRange(counts[i] / 400_000.0, chances[i] - (4 * Math.Sqrt(chances[i] / 400_000)), chances[i] + (4 * Math.Sqrt(chances[i] / 400_000)));
    }

    /// <summary>200 judges of 7 items overflow a lane of 9 bits unless it is emptied; the slow way adds places one by one.</summary>
    [Theory]
    [InlineData(7, 200)]
    [InlineData(5, 12)]
    [InlineData(3, 9)]
    public void Packed_lanes_give_the_statistic_of_the_ballots_themselves(int items, int judges)
    {
        var model = PanelModel.Favourite(items, 1.5);
        var found = FriedmanSimulation.Run(model, judges, 16, new Seed(5)).Value.Statistics;
        var draw = new PanelDraw(model);
        for (var part = 0; part < 16; part++)
        {
            var words = new ulong[512];
            new WideXoshiro(new Seed(5).Child(part).Generator()).Fill(words);
            var set = RankingSet.Create(words.Take(judges).Select(word => draw.RankingOf(draw.Packed!.Of(word))));
            Assert.Equal(Gate.Test(set, new Seed(1), new Effort(0, 1, 1, 1e9)).Value.Statistic, found[part], 8);
        }
    }

    [Fact]
    public void One_thread_and_many_agree_bit_for_bit()
    {
        var model = PanelModel.Favourite(5, 2);
        var one = FriedmanSimulation.Run(model, 12, 5_003, new Seed(8), threads: 1).Value.Statistics;
        Assert.Equal(one, FriedmanSimulation.Run(model, 12, 5_003, new Seed(8), threads: 2).Value.Statistics);
        Assert.Equal(one, FriedmanSimulation.Run(model, 12, 5_003, new Seed(8)).Value.Statistics);
        Assert.NotEqual(one, FriedmanSimulation.Run(model, 12, 5_003, new Seed(9)).Value.Statistics);
    }

    [Theory]
    [InlineData(3, 9)]
    [InlineData(5, 7)]
    public void The_looked_up_p_is_the_gates_own(int items, int judges)
    {
        var table = UntiedNull.Of(items, judges, new Seed(0));
        Assert.True(table.IsExact);
        var draw = new PanelDraw(PanelModel.Favourite(items, 2));
        var generator = new Seed(4).Generator();
        for (var round = 0; round < 20; round++)
        {
            var set = draw.Panel(judges, generator);
            var totals = Standing.Of(ScoreSet.FromRankings(set, CountingRule.AveragePlace)).Totals.Select(total => (long)total - judges);
            Assert.Equal(Gate.Test(set, new Seed(1), new Effort(2e8, 1, 1, 1e9)).Value.P.Value, table.P(totals.Sum(total => total * total)), 10);
        }
    }

    [Fact]
    public void A_simulated_null_is_near_the_counted_one()
    {
        var counted = UntiedNull.Of(4, 12, new Seed(1));
        var drawn = UntiedNull.Of(4, 12, new Seed(1), largestWork: 0);
        Assert.False(drawn.IsExact);
        foreach (var (squares, _) in Friedman.NullSquares(4, 12))
            Assert.InRange(drawn.P(squares) - counted.P(squares), -0.0022, 0.0022);
    }

    [Fact]
    public void What_the_table_cannot_hold_is_refused()
    {
        Assert.Equal(RefusalKind.TooManyItems, FriedmanSimulation.Run(PanelModel.Favourite(8, 2), 12, 10, new Seed(1)).Refusal!.Kind);
        Assert.Equal(RefusalKind.NotComplete, FriedmanSimulation.Run(PanelModel.Favourite(5, 2) with { TieChance = 0.5 }, 12, 10, new Seed(1)).Refusal!.Kind);
    }

    private static void Near(string exact, Simulated found)
    {
        var p = CheckData.Number(exact);
        var error = Math.Sqrt(p * (1 - p) / Panels);
        Assert.InRange(found.Share, p - (4 * error), p + (4 * error));
    }

    private static double FQuantile(int numerator, int denominator)
    {
        double low = 0, high = 100;
        while (high - low > 1e-10)
        {
            var middle = (low + high) / 2;
            if (Tails.F(middle, numerator, denominator) > 0.05) low = middle;
            else high = middle;
        }

        return high;
    }
}
