using Trier.Statistics.Counting;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.RankTests;

/// <summary>Section 14 of the verdict's method page: numbers computed for it by separate code.</summary>
public sealed class DemoVerdictTests
{
    private static readonly Seed Seed = new(20250830);

    [Fact]
    public void The_gate_on_twelve_complete_guests_is_exact()
    {
        var gate = Gate.Test(Demo.Set(Demo.Wheels), Seed).Value;
        Assert.Equal(12, gate.Voices);
        Assert.Equal(9.824268, gate.Statistic, 1e-6);
        Assert.Equal(TestMethod.Exact, gate.P.Method);
        Assert.Equal(0.0387451, gate.P.Value, 1e-7);
        Assert.Equal(0.0586, gate.LeadLuck!.Value, 0.0005 + (4 * gate.LeadLuck.Error));
    }

    [Fact]
    public void Shuffles_agree_with_the_exact_p_within_four_errors()
    {
        var p = Gate.Test(Demo.Set(Demo.Wheels), Seed, Effort.DrawsOnly).Value.P;
        Assert.Equal(TestMethod.Permutation, p.Method);
        Assert.InRange(p.Value, 0.0387451 - (4 * p.Error), 0.0387451 + (4 * p.Error));
    }

    [Fact]
    public void A_joined_pair_is_one_voice()
    {
        var gate = Gate.Test(Demo.Set(Demo.Wheels, joined: true), Seed).Value;
        Assert.Equal(11, gate.Voices);
        Assert.Equal(12, gate.Ballots);

        // The page gives .0633 +- .0005 from a simulation (1.9 errors off); a separate exact count over sorted states gives the value held here.
        Assert.Equal(TestMethod.Exact, gate.P.Method);
        Assert.Equal(0.0623580615, gate.P.Value, 1e-10);
    }

    [Fact]
    public void All_thirteen_ballots_use_the_general_statistic()
    {
        var gate = Gate.Test(Demo.Set(Demo.Wheels, completeOnly: false), Seed).Value;
        Assert.Equal(13, gate.Voices);
        Assert.Equal(8.436430, gate.Statistic, 1e-6);
        Assert.Equal(TestMethod.Permutation, gate.P.Method);
        Assert.InRange(gate.P.Value, 0.0714 - 0.0006 - (4 * gate.P.Error), 0.0714 + 0.0006 + (4 * gate.P.Error));
    }

    [Fact]
    public void The_rule_of_firsts_sees_no_difference()
    {
        var gate = Gate.Test(ScoreSet.FromRankings(Demo.Set(Demo.Wheels), CountingRule.Firsts), Seed).Value;
        Assert.Equal(TestMethod.Exact, gate.P.Method);

        // Exact by counting: 12 firsts over 5 wheels are multinomial; P(sum of squares >= 42) = 0.2680382464. The page's .267 +- .001 is a simulation.
        Assert.Equal(0.2680382464, gate.P.Value, 1e-10);
    }

    [Fact]
    public void Friedman_gives_the_mean_rank_correlation()
    {
        var friedman = Friedman.Test(Demo.Set(Demo.Wheels), Seed).Value;
        Assert.Equal(0.132, friedman.MeanRankCorrelation!.Value, 5e-4);
        Assert.Equal(0.205, friedman.KendallW, 5e-4);
        Assert.Equal(0.0387451, friedman.P.Value, 1e-7);
        Assert.Equal([34, 24.5, 36, 48.5, 37], friedman.RankSums);
    }

    [Theory]
    [InlineData(1, 3, .0009766, 6, true)]
    [InlineData(0, 3, .015625, 6, false)]
    [InlineData(1, 2, .072266, 6, false)]
    [InlineData(2, 3, .085449, 6, false)]
    [InlineData(1, 0, .139648, 6, false)]
    [InlineData(1, 4, .165039, 4, false)]
    [InlineData(4, 3, .243164, 4, false)]
    public void Pairs_are_the_exact_sign_flips_and_their_steps(int better, int worse, double p, int divisor, bool shown)
    {
        var scores = ScoreSet.FromRankings(Demo.Set(Demo.Wheels), CountingRule.AveragePlace);
        var pair = Assert.Single(Pairs.Compare(scores, 0.0387451), pair => pair.Better == better && pair.Worse == worse);
        Assert.Equal(p, pair.P, 5e-7);
        Assert.Equal(divisor, pair.Divisor);
        Assert.Equal(shown, pair.Shown);
    }

    [Fact]
    public void No_pair_is_shown_when_the_gate_is_shut() =>
        Assert.DoesNotContain(Pairs.Compare(ScoreSet.FromRankings(Demo.Set(Demo.Wheels), CountingRule.AveragePlace), 0.0633), pair => pair.Shown);

    [Fact]
    public void Adjusted_places_take_the_partial_ballot_in()
    {
        var standing = Standing.Of(ScoreSet.FromRankings(Demo.Set(Demo.Wheels, completeOnly: false), CountingRule.AveragePlace));
        double[] expected = [2.8907, 2.0676, 3.1369, 3.8215, 3.0833];
        for (var i = 0; i < expected.Length; i++) Assert.Equal(expected[i], standing.Averages[i]!.Value, 5e-5);
        Assert.Equal([1], standing.Leaders);
    }

    [Fact]
    public void The_tally_counts_firsts_lasts_and_points()
    {
        var tally = Tally.Of(Demo.Set(Demo.Wheels));
        Assert.Equal([4, 3, 1, 0, 4], tally.Items.Select(item => (int)item.Firsts));
        Assert.Equal([2, 0, 0, 5, 5], tally.Items.Select(item => (int)item.Lasts));
        Assert.Equal([26, 35.5, 24, 11.5, 23], tally.Items.Select(item => item.PlacePoints));
        Assert.Equal(23, tally.HeadToHead.DoubledWins(1, 3));
        Assert.Equal(1, tally.HeadToHead.CondorcetWinner);
    }

    [Fact]
    public void Three_Kemeny_orders_tie_all_led_by_the_second_wheel()
    {
        var kemeny = Kemeny.Optima(Demo.Set(Demo.Wheels)).Value;
        Assert.Equal(3, kemeny.Optima);
        Assert.Equal(3, kemeny.Orders.Length);
        Assert.Contains(79.5, new[] { kemeny.Distance, kemeny.Agreement });
        Assert.All(kemeny.Orders, order => Assert.Equal(1, order[0]));
    }

    [Fact]
    public void The_other_code_changes_the_firsts()
    {
        var tally = Tally.Of(Demo.Set(Demo.OtherCode));
        Assert.Equal([2, 5, 4], new[] { 0, 1, 4 }.Select(i => (int)tally.Items[i].Firsts));
        Assert.Equal(1, tally.Items[1].FirstsShared);
        Assert.Equal([36, 22.5, 36, 48.5, 37], tally.Items.Select(item => item.RankSum));
    }
}
