using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Rankings;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.ChoiceModels;

/// <summary>Two separate codes (Newton and minorise-maximise) stand behind every value; Hunter (2004) Table 2 prints the NASCAR worths. Estimates to 1e-5, errors to 1e-4 relative.</summary>
public sealed class PlackettLuceTests
{
    [Fact]
    public void Salad_holds()
    {
        var fit = PlackettLuce.Fit(CheckData.Scores("pl_salad_ranks.csv")).Value;
        Hold(fit, [0, 2.72991398, 1.56153851, 1.0268359], [0, .448072566, .396473955, .377062018], -76.4152892);
        Assert.Equal(.64175851, fit.Worths[1], 1e-6);
    }

    [Fact]
    public void The_full_rankings_of_an_election_hold()
    {
        var rows = CheckData.Rows("real_full_rankings_apa1980.csv").Select(row => new RankingRow(
            Ranking.Create(5, row.Take(5).Select(name => new[] { name[0] - 'A' })), CheckData.Whole(row[5])));
        Hold(
            PlackettLuce.Fit(RankingSet.Create(5, rows)).Value, [0, -.213367104, -.151628918, -.245559186, -.156822987],
            [0, .0223026818, .0224831379, .0228449484, .0226328987], -27402.2939);
    }

    [Fact]
    public void Partial_orders_hold_with_the_rest_left_out_and_with_the_rest_below()
    {
        var places = CheckData.Rows("real_partial_rankings_car.csv").Select(row => row.Skip(1).Take(6).Select(CheckData.Optional).ToArray()).ToArray();
        var leftOut = PlackettLuce.Fit(RankingSet.Create(places.Select(row => CheckData.Rank(row)))).Value;
        Hold(leftOut, [0, .55257776, .25366400, .40015293, -.42046162, .35766695], [0, .087299425, .086870219, .087380706, .093983760, .088509568], -2439.4317);
        Assert.Equal(434, leftOut.Rankings);
        var below = PlackettLuce.Fit(RankingSet.Create(places.Select(row =>
        {
            var placed = Enumerable.Range(0, 6).Where(i => row[i].HasValue).OrderBy(i => row[i]).Select(i => new[] { i });
            return Ranking.Create(6, placed, Enumerable.Range(0, 6).Where(i => !row[i].HasValue));
        }))).Value;

        // The check file gives these to 1e-4.
        double[] expected = [0, .63555182, .46509183, .45553795, -.54225884, .42519147];
        for (var i = 0; i < 6; i++) Assert.Equal(expected[i], below.LogWorths[i], 1e-4);
        Assert.Equal(-2639.1822, below.LogLikelihood, 1e-3);
    }

    [Fact]
    public void Eighty_three_drivers_hold_and_four_more_are_refused()
    {
        var races = CheckData.Rows("pl_nascar2002_orderings.csv").Select(row => row.Skip(1).Select(CheckData.Whole).ToArray()).ToArray();
        Ranking Order(int[] race, int items) => Ranking.Create(items, race.Where(id => id <= items).Select(id => new[] { id - 1 }));
        var fit = PlackettLuce.Fit(RankingSet.Create(races.Select(race => Order(race, 83)))).Value;
        foreach (var row in CheckData.Rows("pl_nascar2002_expected.csv"))
        {
            var driver = CheckData.Whole(row[0]) - 1;
            Assert.Equal(CheckData.Number(row[4]), fit.LogWorths[driver], 1e-5);
            Assert.Equal(CheckData.Number(row[5]), fit.StandardErrors[driver], 2e-4);
        }

        Assert.Equal(-4191.09728, fit.LogLikelihood, 1e-4);
        Assert.Equal(RefusalKind.Separated, PlackettLuce.Fit(RankingSet.Create(races.Select(race => Order(race, 87)))).Refusal!.Kind);
    }

    [Fact]
    public void Pairs_are_the_Bradley_Terry_model()
    {
        // Eleven people, all pairs of five red wines; psychometric software and glm agree.
        var rows = CheckData.Rows("real_paired_red_wines.csv").SelectMany(row => row.Skip(1).Select((cell, pair) => Pair(pair, CheckData.Whole(cell))));
        Hold(
            PlackettLuce.Fit(RankingSet.Create(rows)).Value, [0, -.153242381, -.713494600, .713494600, .153242381],
            [0, .391893592, .408086123, .408086127, .391893592], null);

        static Ranking Pair(int pair, int sign)
        {
            (int A, int B)[] pairs = [(0, 1), (0, 2), (1, 2), (0, 3), (1, 3), (2, 3), (0, 4), (1, 4), (2, 4), (3, 4)];
            var (a, b) = pairs[pair];
            return Ranking.Create(5, sign > 0 ? [[a], [b]] : [[b], [a]]);
        }
    }

    /// <summary>Best, middle and worst of three of ten varieties in 842 farmers' trials: standard errors between .1337 and .1382.</summary>
    [Fact]
    public void Triads_of_beans_hold()
    {
        (string Name, double LogWorth)[] expected =
        [
            ("ALS 0532-6", 0), ("BRT 103-182", .233413363), ("INTA Centro Sur", .344650547), ("INTA Ferroso", .086535525), ("INTA Matagalpa", .135872367),
            ("INTA Precoz", .029165763), ("INTA Rojo", .225945342), ("INTA Sequia", .475118662), ("PM2 Don Rey", .086908136), ("SJC 730-79", .074129603),
        ];
        var names = expected.Select(item => item.Name).ToArray();
        var rows = CheckData.Rows("real_triads_beans.csv").Select(row =>
        {
            int[] items = [.. row.Skip(1).Take(3).Select(name => Array.IndexOf(names, name))];
            var (best, worst) = (row[4][0] - 'A', row[5][0] - 'A');
            return Ranking.FromOrder(10, [items[best], items[3 - best - worst], items[worst]]);
        });
        var fit = PlackettLuce.Fit(RankingSet.Create(rows)).Value;
        Assert.Equal(842, fit.Rankings);
        for (var i = 0; i < 10; i++) Assert.Equal(expected[i].LogWorth, fit.LogWorths[i], 1e-5);
        Assert.Equal(.1337, fit.StandardErrors.Skip(1).Min(), 5e-5);
        Assert.Equal(.1382, fit.StandardErrors.Max(), 5e-5);
        Assert.Equal(-1497.7327, fit.LogLikelihood, 1e-3);
    }

    [Fact]
    public void The_equations_residual_is_what_it_says()
    {
        var set = CheckData.Scores("pl_salad_ranks.csv");
        var fit = PlackettLuce.Fit(set).Value;
        var most = 0.0;
        for (var item = 0; item < 4; item++)
        {
            double chosen = 0, expected = 0;
            foreach (var row in set.Rows)
            {
                int[] order = [.. row.Ranking.Groups.Select(group => group[0])];
                for (var stage = 0; stage < 3; stage++)
                {
                    if (order[stage] == item) chosen++;
                    int[] left = [.. order.Skip(stage)];
                    if (left.Contains(item)) expected += fit.Worths[item] / left.Sum(i => fit.Worths[i]);
                }
            }

            if (item > 0) most = Math.Max(most, Math.Abs(chosen - expected));
        }

        Assert.True(most < 1e-7, $"{most}");
        Assert.True(fit.LargestResidual < 1e-7);
    }

    [Fact]
    public void Disconnected_and_separated_items_are_refused_and_ghosts_join_them()
    {
        var apart = RankingSet.Create([Ranking.FromPlaces([1, 2, null, null]), Ranking.FromPlaces([null, null, 1, 2])]);
        Assert.Equal(RefusalKind.Disconnected, PlackettLuce.Fit(apart).Refusal!.Kind);
        var unanimous = RankingSet.Create([Ranking.FromPlaces([1, 2, 3])]);
        Assert.Equal(RefusalKind.Separated, PlackettLuce.Fit(unanimous).Refusal!.Kind);
        Assert.Equal(RefusalKind.Separated, PlackettLuce.Fit(RankingSet.Create([Ranking.FromPlaces([1, 1, 3])])).Refusal!.Kind);
        Assert.Equal(RefusalKind.TooFewItems, PlackettLuce.Fit(RankingSet.Create([Ranking.FromPlaces([1])])).Refusal!.Kind);
        var joined = PlackettLuce.Fit(apart, ghosts: 0.1).Value;
        Assert.True(joined.Worths[0] > joined.Worths[1] && joined.Worths[2] > joined.Worths[3]);
        Assert.Equal(joined.Worths[0], joined.Worths[2], 1e-9);
        Assert.All(PlackettLuce.Fit(unanimous, ghosts: 0.1).Value.StandardErrors, error => Assert.True(double.IsFinite(error)));
    }

    [Fact]
    public void Many_ghosts_are_the_pairs_they_stand_for()
    {
        // Two ghosts a pair are one ballot each way.
        var set = CheckData.Inline([1, 2, 3], [2, 1, 3], [1, 3, 2], [3, 1, 2]);
        var pairs = RankingSet.Create(3, set.Rows.AddRange(
            from a in Enumerable.Range(0, 3) from b in Enumerable.Range(0, 3) where a != b select new RankingRow(Ranking.FromOrder(3, [a, b]))));
        var ghosts = PlackettLuce.Fit(set, ghosts: 2).Value;
        var real = PlackettLuce.Fit(pairs).Value;
        for (var i = 0; i < 3; i++)
        {
            Assert.Equal(real.LogWorths[i], ghosts.LogWorths[i], 1e-8);
            Assert.Equal(real.StandardErrors[i], ghosts.StandardErrors[i], 1e-8);
        }
    }

    private static void Hold(PlackettLuceFit fit, double[] worths, double[] errors, double? logLikelihood)
    {
        for (var i = 0; i < worths.Length; i++)
        {
            Assert.Equal(worths[i], fit.LogWorths[i], 1e-5);
            Assert.Equal(errors[i], fit.StandardErrors[i], 1e-4 * Math.Max(errors[i], 1e-3));
        }

        if (logLikelihood is { } log) Assert.Equal(log, fit.LogLikelihood, 1e-6 * Math.Abs(log));
    }
}
