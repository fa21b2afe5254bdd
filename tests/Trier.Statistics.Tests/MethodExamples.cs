using System.Collections.Immutable;
using Trier.Statistics.Agreement;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Counting;
using Trier.Statistics.Designs;
using Trier.Statistics.Discrimination;
using Trier.Statistics.Distributions;
using Trier.Statistics.Influence;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;
using Trier.Statistics.Ratings;
using Trier.Statistics.Resampling;

namespace Trier.Statistics.Tests;

/// <summary>The worked examples of docs/methods: each page prints the body of one test here, word for word.</summary>
public sealed class MethodExamples
{
    [Fact]
    public void Page_gate()
    {
        // Six tasters, four wheels; a place each, ties share one.
        var set = RankingSet.Create(
        [
            Ranking.FromPlaces([1, 2, 3, 4]), Ranking.FromPlaces([1, 3, 2, 4]), Ranking.FromPlaces([2, 1, 3, 4]),
            Ranking.FromPlaces([1, 2, 2, 4]), Ranking.FromPlaces([2, 1, 4, 3]), Ranking.FromPlaces([1, 2, 4, 3]),
        ]);
        var gate = Gate.Test(set, new Seed(1)).Value;
        Assert.Equal(TestMethod.Exact, gate.P.Method);
        Assert.Equal(12.4576, gate.Statistic, 4);
        Assert.Equal(0.00133, gate.P.Value, 5);
    }

    [Fact]
    public void Page_pairs()
    {
        // Nine tasters all put the first wheel on top; the others change about.
        var rows = Enumerable.Range(0, 9).Select(i => Ranking.FromOrder(3, i % 2 == 0 ? [0, 1, 2] : [0, 2, 1]));
        var scores = ScoreSet.FromRankings(RankingSet.Create(rows), CountingRule.AveragePlace);
        var gate = Gate.Test(scores, new Seed(1)).Value;
        var pairs = Pairs.Compare(scores, gate.P.Value);
        Assert.Equal(2, pairs.Count(pair => pair.Shown && pair.Better == 0));
        Assert.Equal(2 / 512.0, pairs[0].P, 12);
        Assert.False(pairs[2].Shown);
    }

    [Fact]
    public void Page_favourite()
    {
        var set = RankingSet.Create(3, [new RankingRow(Ranking.FromOrder(3, [1, 0, 2]), 5), new RankingRow(Ranking.FromOrder(3, [0, 1, 2]), 3)]);
        var posterior = BayesianPlackettLuce.Sample(set, new Seed(1)).Value;
        Assert.True(posterior.Mixed);
        Assert.Equal(1, posterior.ChanceFavourite.Sum(), 9);
        Assert.True(posterior.ChanceFavourite[1] is > 0.6 and < 0.85);
    }

    [Fact]
    public void Page_rank_tests()
    {
        // Was the milder wheel placed better, the older the worse? The order was written down before the tasting.
        var set = RankingSet.Create([Ranking.FromPlaces([1, 2, 3]), Ranking.FromPlaces([1, 3, 2]), Ranking.FromPlaces([1, 2, 3]), Ranking.FromPlaces([2, 1, 3])]);
        var trend = PageTrend.Test(set, [0, 1, 2]).Value;
        Assert.Equal(54, trend.L);
        Assert.Equal(0.0255, trend.P.Value, 4);

        // Friedman's F and chi-square on the same ballots, for a table that asks for them.
        var friedman = Friedman.Test(set, new Seed(1)).Value;
        Assert.Equal(4.5, friedman.Statistic, 9);
        Assert.Equal(0.5625, friedman.KendallW, 9);

        // Letters as other reports print them; they are not what a verdict says.
        Assert.Equal(["b", "ab", "a"], RankSumComparisons.Conover(set).Value.Letters);
    }

    [Fact]
    public void Page_choice_models()
    {
        // Three wheels tasted two at a time; ties allowed.
        var fit = BradleyTerry.Fit(3, [new(0, 1, FirstWins: 7, SecondWins: 3, Ties: 2), new(0, 2, 8, 2, 2), new(1, 2, 6, 5, 1)]).Value;
        Assert.Equal(1, fit.Worths.Sum(), 9);
        Assert.True(fit.Worths[0] > fit.Worths[1] && fit.Worths[1] > fit.Worths[2]);
        Assert.True(fit.LargestResidual < 1e-6);

        // Whole orders; wheel 2 never comes last, so only ghost comparisons keep its worth finite.
        var orders = RankingSet.Create([Ranking.FromOrder(3, [2, 0, 1]), Ranking.FromOrder(3, [2, 1, 0])]);
        Assert.Equal(RefusalKind.Separated, PlackettLuce.Fit(orders).Refusal!.Kind);
        var worths = PlackettLuce.Fit(orders, ghosts: 0.1).Value;
        Assert.True(worths.Worths[2] > 0.9);
    }

    [Fact]
    public void Page_ratings()
    {
        // Likings in three classes, two wheels: the first wheel's ratings carry a 1.
        var table = RatingTable.Create([new([1], 1, 2), new([1], 2, 5), new([1], 3, 9), new([0], 1, 8), new([0], 2, 6), new([0], 3, 3)]);
        var fit = ProportionalOdds.Fit(table).Value;
        Assert.True(fit.Effects[0].Value > 0);
        Assert.Equal(0.0079, fit.LikelihoodRatio.P, 4);

        // Too salty for three of nine: how much less they liked it.
        var salt = JustAboutRight.Of([
            (Amount.JustRight, 7), (Amount.JustRight, 8), (Amount.JustRight, 6), (Amount.JustRight, 7), (Amount.JustRight, 8), (Amount.JustRight, 6),
            (Amount.TooMuch, 4), (Amount.TooMuch, 5), (Amount.TooMuch, 3)]).Value;
        Assert.Equal(3, salt.Drops.Single().Drop, 9);
        Assert.Null(salt.Drops.Single().Interval);
    }

    [Fact]
    public void Page_counting()
    {
        // Five voters, three wheels: place points favour wheel 2, head to head wheel 1 beats both others.
        var set = RankingSet.Create(3, [new RankingRow(Ranking.FromOrder(3, [1, 2, 0]), 3), new RankingRow(Ranking.FromOrder(3, [2, 0, 1]), 2)]);
        Assert.Equal([2], Standing.Of(ScoreSet.FromRankings(set, CountingRule.AveragePlace)).Leaders);
        Assert.Equal(1, Tally.Of(set).HeadToHead.CondorcetWinner);
        var kemeny = Kemeny.Optima(set).Value;
        Assert.Equal([1, 2, 0], kemeny.Orders.Single());
        Assert.Equal((11.0, 4.0), (kemeny.Agreement, kemeny.Distance));
    }

    [Fact]
    public void Page_influence()
    {
        var set = RankingSet.Create(2, [new RankingRow(Ranking.FromOrder(2, [0, 1]), 6), new RankingRow(Ranking.FromOrder(2, [1, 0]), 4)]);
        var fewest = FewestBallots.Of(ScoreSet.FromRankings(set, CountingRule.AveragePlace)).Value;
        Assert.Equal(0, fewest.Leader);
        Assert.Equal((2L, 3L), (fewest.ToTie!.Value, fewest.ToPass!.Value));

        // Two tables: without the first the other wheel leads.
        var without = FewestBallots.LeaveGroupOut(ScoreSet.FromRankings(set, CountingRule.AveragePlace), [1, 2]);
        Assert.Equal([1], without[0].Leaders);
        Assert.Equal([0], without[1].Leaders);
    }

    [Fact]
    public void Page_agreement()
    {
        // Samples 0 and 3 are one wheel served twice; three tasters put them side by side.
        var samples = RankingSet.Create([Ranking.FromOrder(4, [0, 3, 1, 2]), Ranking.FromOrder(4, [2, 0, 3, 1]), Ranking.FromOrder(4, [1, 2, 3, 0])]);
        var repeat = HiddenRepeat.Compare(samples, 0, 3).Value;
        Assert.Equal((3.0, 5.0), (repeat.SumOfDistances, Math.Round(repeat.ExpectedSum, 9)));
        Assert.Equal(0.125, repeat.P, 9);
    }

    [Fact]
    public void Page_resampling()
    {
        // Two couples and three people on their own: who tasted together is drawn together.
        var units = ResamplingUnits.ByGroup([1, 1, 2, 2, null, null, null]);
        double[] liking = [6, 7, 4, 4, 8, 5, 7];
        var mean = Bootstrap.Of(units, rows => rows.Average(row => liking[row]), new Seed(1), draws: 999).Value;
        Assert.Equal(41 / 7.0, mean.Estimate, 9);
        Assert.True(mean.StandardError is > 0.3 and < 0.8);
        Assert.Equal(mean, Bootstrap.Of(units, rows => rows.Average(row => liking[row]), new Seed(1), draws: 999, threads: 1).Value);
    }

    [Fact]
    public void Page_discrimination()
    {
        // Eighteen of thirty picked the odd sample of three.
        Assert.Equal(0.00245783, DiscriminationTest.P(Presentation.Triangle, 18, 30), 8);
        Assert.Equal(15, DiscriminationTest.LeastCorrect(Presentation.Triangle, 30, 0.05));
        Assert.Equal(1.97559, DiscriminationTest.Distance(Presentation.Triangle, 18, 30).Value.Distance, 5);
    }

    [Fact]
    public void Page_distributions()
    {
        Assert.Equal(3.8768, StudentizedRange.Quantile(0.05, groups: 3, degreesOfFreedom: 10), 4);
        Assert.Equal(0.05, Tails.Normal(1.6448536269514722), 12);
        var share = Interval.OfShare(9, 12);
        Assert.True(share.Low < 0.75 && share.High > 0.75);
    }

    [Fact]
    public void Page_power()
    {
        // Fourteen tasters, three wheels, one preferred 2 : 1 over each other.
        var found = PanelPower.Simulate(PanelModel.Favourite(3, 2), 14, new Seed(1));
        Assert.InRange(found.LeaderRight.Share, 0.79, 0.87);
        Assert.InRange(found.ShownRight.Share, 0.19, 0.28);
        Assert.True(found.ShownWrong.Share < 0.02);
        Assert.Equal((37, 42), HeadToHeadPower.PanelSize(2, 0.5));
    }

    [Fact]
    public void Page_serving_orders()
    {
        // Seven wheels, three a taster, fourteen tasters: two balanced designs.
        var some = ServingPlan.For(7, 14, 3, new Seed(1)).Value;
        Assert.True(some.Blocks!.IsBalanced);
        Assert.Equal(7.0 / 9, some.Efficiency, 9);

        // Five wheels and one of them again, twelve tasters: the repeat is never served next to itself.
        var repeat = ServingPlan.For(6, 12, 6, new Seed(1), (0, 5)).Value;
        Assert.Equal(0, repeat.Balance.Adjacent(0, 5));
        Assert.Equal(0, repeat.Balance.PositionSpread);
    }

    [Fact]
    public void Page_aliasing()
    {
        // Two recipes; the second one's wheels both come from another lot of milk, one of them aged in another cave.
        var recipe = new Factor("recipe", ["house", "house", "thistle", "thistle"]);
        var found = Aliasing.Of(recipe, [new Factor("lot", ["1", "1", "2", "2"]), new Factor("cave", ["a", "b", "a", "b"])]);
        Assert.Equal([Telling.Together, Telling.Apart], found.Select(one => one.Telling));
        Assert.Equal([[0, 1], [2, 3]], found[0].Groups.Select(group => group.ToArray()));

        // Ages of 60 and 62 days against 90 and 92 follow the recipe nearly.
        Assert.Equal(226, Aliasing.VarianceInflation(recipe, [60, 62, 90, 92]), 9);
    }

    [Fact]
    public void Page_across_tastings()
    {
        // Two tastings of two recipes, a fresh make of each at each; all four tasters like recipe 0.
        ImmutableArray<Served> wheels = [new(0, 0, 90), new(1, 1, 90), new(0, 2, 120), new(1, 3, 100)];
        var ballots = RankingSet.Create([Ranking.FromOrder(4, [0, 1]), Ranking.FromOrder(4, [0, 1]), Ranking.FromOrder(4, [2, 3]), Ranking.FromOrder(4, [2, 3])]);
        var found = AcrossTastings.Sample(wheels, ballots, new Seed(1)).Value;
        Assert.True(found.Mixed);
        Assert.True(found.Recipes[0].ChanceBest is > 0.7 and < 0.95);
        Assert.True(found.Recipes[0].ChanceNext < found.Recipes[0].ChanceBest);
    }
}
