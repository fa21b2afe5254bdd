using Trier.Statistics.Counting;
using Trier.Statistics.Rankings;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.Counting;

/// <summary>
/// Profiles whose results are printed elsewhere (Electowiki, an election-methods list, D. MacIver 2014, T. Pereira 2016, Condorcet 1785 from memory); all results by brute force over
/// all orders with separate code.
/// </summary>
public sealed class VotingTests
{
    public static TheoryData<string> Profiles =>
    [
        "tennessee", "condorcet_cycle_3", "cycle_25_40_35", "condorcet_81", "majority_not_borda_66_34", "five_voters_borda_3_condorcet_2",
        "five_voters_irv_1_condorcet_2", "reversal_paradox_9", "apa1980", "salad",
    ];

    [Theory]
    [MemberData(nameof(Profiles))]
    public void Every_rule_gives_the_expected_winner(string profile)
    {
        var (set, names) = Read(profile);
        var expected = CheckData.Rows("voting_expected.csv").Single(row => row[0] == profile);
        var tally = Tally.Of(set);
        var points = expected[2].Split(';').ToDictionary(cell => cell.Split('=')[0], cell => CheckData.Number(cell.Split('=')[1]));
        foreach (var (name, value) in points) Assert.Equal(value, tally.Items[names.IndexOf(name, StringComparison.Ordinal)].PlacePoints);
        Assert.Equal(expected[3], Names(Standing.Of(ScoreSet.FromRankings(set, CountingRule.Borda(set.Items))).Leaders, names));
        Assert.Equal(expected[4], tally.HeadToHead.CondorcetWinner is { } winner ? names[winner].ToString() : "");
        Assert.Equal(expected[5], tally.HeadToHead.CondorcetLoser is { } loser ? names[loser].ToString() : "");
        Assert.Equal(expected[6], Names(tally.HeadToHead.CopelandWinners, names));
        Assert.Equal(expected[7], Names(Standing.Of(ScoreSet.FromRankings(set, CountingRule.Firsts)).Leaders, names));
        var kemeny = Kemeny.Optima(set).Value;
        Assert.Equal(expected[9].Split('/').Order(), kemeny.Orders.Select(order => string.Concat(order.Select(item => names[item]))).Order());
        Assert.Equal(kemeny.Orders.Length, kemeny.Optima);
        Assert.Equal(CheckData.Number(expected[10]), kemeny.Agreement);
        Assert.Equal(CheckData.Number(expected[11]), kemeny.Distance);
    }

    /// <summary>Diaconis (1988/89) prints the percentages, with B at place 4 at 24 (from memory); the file gives 1416 of 5738, 24.68.</summary>
    [Fact]
    public void The_five_candidates_of_1980_stand_at_each_place_as_printed()
    {
        var (set, names) = Read("apa1980");
        int[][] percent = [[18, 26, 23, 17, 15], [14, 19, 25, 25, 18], [28, 17, 14, 18, 23], [20, 17, 19, 20, 23], [20, 21, 20, 19, 20]];
        double[] means = [2.83949111, 3.1566748, 2.91704427, 3.09236668, 2.99442314];
        var tally = Tally.Of(set);
        for (var item = 0; item < 5; item++)
        {
            var at = names.IndexOf("ABCDE"[item], StringComparison.Ordinal);
            Assert.Equal(means[item], tally.Items[at].AveragePlace!.Value, 1e-8);
            for (var place = 1; place <= 5; place++)
            {
                var count = set.Rows.Where(row => row.Ranking.DoubledMidranks()[at] == 2 * place).Sum(row => row.Count);
                Assert.Equal(percent[item][place - 1], Math.Round(100.0 * count / 5738));
            }
        }
    }

    [Fact]
    public void A_unanimous_profile_is_its_own_Kemeny_order()
    {
        var set = RankingSet.Create([Ranking.Create(12, Enumerable.Range(0, 12).Select(item => new[] { (item * 5) % 12 }))]);
        var kemeny = Kemeny.Optima(set).Value;
        Assert.Equal(1, kemeny.Optima);
        Assert.Equal(Enumerable.Range(0, 12).Select(item => (item * 5) % 12), kemeny.Orders[0]);
    }

    [Fact]
    public void All_orders_tie_when_nothing_is_said_and_only_24_are_listed()
    {
        var kemeny = Kemeny.Optima(RankingSet.Create([Ranking.FromPlaces([1, 1, 1, 1, 1])])).Value;
        Assert.Equal(120, kemeny.Optima);
        Assert.Equal(24, kemeny.Orders.Length);
        Assert.Equal(5, kemeny.Distance);
    }

    [Fact]
    public void Place_points_of_a_partial_ballot_are_those_of_slotting_the_rest_in_at_random()
    {
        var set = RankingSet.Create([Ranking.FromPlaces([1, 2, null])]);
        var points = Standing.Of(ScoreSet.FromRankings(set, CountingRule.Borda(3))).Totals;

        // Place 1 of 2 among 3 is on average place 4/3, worth 3 - 4/3 points; place 2 is place 8/3.
        Assert.Equal(5 / 3.0, points[0], 1e-12);
        Assert.Equal(1 / 3.0, points[1], 1e-12);
    }

    [Fact]
    public void Pieces_that_no_ballot_joins_are_named()
    {
        var set = RankingSet.Create([Ranking.FromPlaces([1, 2, null, null]), Ranking.FromPlaces([null, null, 1, 2])]);
        var standing = Standing.Of(ScoreSet.FromRankings(set, CountingRule.AveragePlace));
        Assert.False(standing.IsConnected);
        Assert.Equal([0, 1], standing.Pieces[0]);
        Assert.Equal([2, 3], standing.Pieces[1]);
        Assert.Empty(standing.Leaders);
    }

    [Fact]
    public void Influence_finds_four_ballots_on_the_demo()
    {
        var scores = ScoreSet.FromRankings(Demo.Set(Demo.Wheels), CountingRule.AveragePlace);
        var fewest = Statistics.Influence.FewestBallots.Of(scores).Value;
        Assert.Equal(1, fewest.Leader);
        Assert.Equal(4, fewest.ToPass);
        Assert.Equal([0, 4], fewest.Rivals.Where(rival => rival.ToPass == 4).Select(rival => rival.Rival));
        Assert.All(Statistics.Influence.FewestBallots.LeaveOneOut(scores), leaders => Assert.Equal([1], leaders));
    }

    private static (RankingSet Set, string Names) Read(string profile)
    {
        if (profile == "salad") return (CheckData.Scores("pl_salad_ranks.csv"), "ABCD");
        var rows = profile == "apa1980"
            ? [.. CheckData.Rows("real_full_rankings_apa1980.csv").Select(row => (Count: row[5], Order: string.Concat(row.Take(5))))]
            : CheckData.Rows("voting_profiles.csv").Where(row => row[0] == profile).Select(row => (Count: row[1], Order: row[2])).ToArray();
        var names = string.Concat(rows[0].Order.Order());
        return (RankingSet.Create(names.Length, rows.Select(row => new RankingRow(
            Ranking.Create(names.Length, row.Order.Select(name => new[] { names.IndexOf(name, StringComparison.Ordinal) })), CheckData.Whole(row.Count)))), names);
    }

    private static string Names(IEnumerable<int> items, string names) => string.Join('/', items.Select(item => names[item]));
}
