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

    [Fact]
    public void Disconnected_items_and_upper_ties_are_refused()
    {
        Assert.Equal(RefusalKind.Disconnected, PlackettLuce.Fit(RankingSet.Create([Ranking.FromPlaces([1, 2, null, null]), Ranking.FromPlaces([null, null, 1, 2])])).Refusal!.Kind);
        Assert.Equal(RefusalKind.Separated, PlackettLuce.Fit(RankingSet.Create([Ranking.FromPlaces([1, 2, 3])])).Refusal!.Kind);
        Assert.Equal(RefusalKind.WrongDesign, PlackettLuce.Fit(RankingSet.Create([Ranking.FromPlaces([1, 1, 3])])).Refusal!.Kind);
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
