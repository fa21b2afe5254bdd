using System.Collections.Immutable;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Distributions;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.Tests.Reference;

namespace Trier.Statistics.Tests.ChoiceModels;

public sealed class AcrossTastingsTests
{
    private static readonly SamplingEffort Short = new(2, 500, 4_000);

    // Two tastings: recipes 0 and 1 twice each, recipe 2 once; wheel 0 comes back 60 days older.
    private static readonly ImmutableArray<Served> Items = [new(0, 0, 90), new(1, 1, 95), new(2, 2, 90), new(0, 0, 150), new(1, 3, 100), new(0, 4, 110)];
    private static readonly int[][] Orders = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [2, 0, 1], [3, 5, 4], [3, 4, 5], [5, 3, 4]];

    /// <summary>Held against draws from the prior weighed by the likelihood, written apart: half a million of them.</summary>
    [Fact]
    public void Two_tastings_agree_with_a_second_implementation()
    {
        // The person behind the first ballot of each tasting is one voice: each of the two weighs a half.
        var rows = Orders.Select((order, i) => new RankingRow(Ranking.FromOrder(6, order), 1, i is 0 or 4 ? 1 : null));
        var found = AcrossTastings.Sample(Items, RankingSet.Create(6, rows), new Seed(3)).Value;
        Assert.True(found.Mixed, $"effective {found.EffectiveSize}, R-hat {found.RHat}");
        var slow = ImportanceAcross.Of([.. Items], [.. Orders.Select((order, i) => (order, i is 0 or 4 ? 0.5 : 1.0))], 3, 5, 500_000, new Seed(4).Generator());
        void Near(double fast, int value, double spread) => Assert.InRange(fast - slow[value].Mean, -4 * Both(slow[value].Error, spread / Math.Sqrt(found.EffectiveSize)), 4 * Both(slow[value].Error, spread / Math.Sqrt(found.EffectiveSize)));
        Near(found.Recipes[0].LogWorth, 1, Spread(found.Recipes[0].Interval));
        Near(found.AgePer30Days!.Value, 2, Spread(found.AgeInterval!));
        Near(found.WheelSpread, 3, Spread(found.WheelSpreadInterval));
        Assert.True(slow[1].Error < 0.01);
    }

    /// <summary>Truths drawn from the prior, three tastings each with an anchor recipe: the 90 % intervals of a recipe's worth cover 90 in 100 on average.</summary>
    [Fact]
    public void Intervals_cover_what_the_prior_draws()
    {
        const int Sets = 150;
        ImmutableArray<Served> items = [new(0, 0, 100), new(1, 1, 100), new(2, 2, 130), new(0, 3, 95), new(1, 4, 120), new(3, 5, 100), new(0, 6, 100), new(2, 7, 160), new(3, 8, 90)];
        var (worth, slope) = (0, 0);
        for (var set = 0; set < Sets; set++)
        {
            var generator = new Seed(8).Child(set).Generator();
            var s = 0.8 * Math.Abs(generator.NextNormal());
            var tau = 0.5 * Math.Abs(generator.NextNormal());
            var recipe = Enumerable.Range(0, 4).Select(_ => s * generator.NextNormal()).ToArray();
            var b = 0.25 * generator.NextNormal();
            var own = Enumerable.Range(0, 9).Select(_ => tau * generator.NextNormal()).ToArray();
            var mean = items.Average(item => item.AgeDays!.Value);
            var worths = items.Select(item => Math.Exp(recipe[item.Recipe] + (b * (item.AgeDays!.Value - mean) / 30) + own[item.Wheel])).ToArray();
            var rows = new List<RankingRow>();
            for (var tasting = 0; tasting < 3; tasting++)
            {
                for (var taster = 0; taster < 10; taster++)
                    rows.Add(new RankingRow(Ranking.FromOrder(9, [.. Enumerable.Range(3 * tasting, 3).OrderBy(item => generator.NextExponential() / worths[item])])));
            }

            var found = AcrossTastings.Sample(items, RankingSet.Create(9, rows), new Seed(9).Child(set), new SamplingEffort(2, 300, 1_500)).Value;
            if (Inside(found.Recipes[1].Interval, recipe[1] - recipe.Average())) worth++;
            if (Inside(found.AgeInterval!, b)) slope++;
        }

        // 90 % of 150 with four binomial errors.
        Assert.InRange(worth / (double)Sets, 0.80, 0.99);
        Assert.InRange(slope / (double)Sets, 0.80, 0.99);
    }

    [Fact]
    public void Only_recipes_with_two_makes_have_a_chance()
    {
        var found = AcrossTastings.Sample(Items, RankingSet.Create(Orders.Select(order => Ranking.FromOrder(6, order))), new Seed(1), Short).Value;
        Assert.Equal([2, 2, 1], found.Recipes.Select(recipe => recipe.Wheels));
        Assert.Null(found.Recipes[2].ChanceBest);
        Assert.Null(found.Recipes[2].ChanceNext);
        Assert.Equal(1, found.Recipes[0].ChanceBest!.Value + found.Recipes[1].ChanceBest!.Value, 9);
        Assert.Equal(1, found.Recipes[0].ChanceNext!.Value + found.Recipes[1].ChanceNext!.Value, 9);
        // The next make strays as makes do, so its chance is nearer to a half.
        Assert.True(Math.Abs(found.Recipes[0].ChanceNext!.Value - 0.5) < Math.Abs(found.Recipes[0].ChanceBest!.Value - 0.5));
        Assert.Equal(0, found.Recipes.Sum(recipe => recipe.LogWorth), 9);
        Assert.Equal([0, 1, 2, 1, 0], found.Wheels.Select(wheel => wheel.Recipe));
    }

    [Fact]
    public void Two_wheels_of_one_vat_are_one_make()
    {
        ImmutableArray<Served> vat = [.. Items.Select(item => item with { Make = item.Recipe == 0 ? 7 : item.Wheel })];
        var found = AcrossTastings.Sample(vat, RankingSet.Create(Orders.Select(order => Ranking.FromOrder(6, order))), new Seed(1), Short).Value;
        Assert.Equal([(2, 1), (2, 2), (1, 1)], found.Recipes.Select(recipe => (recipe.Wheels, recipe.Makes)));
        Assert.All(found.Recipes, recipe => Assert.Null(recipe.ChanceBest));
    }

    [Fact]
    public void Tastings_that_no_recipe_joins_are_named_in_pieces_and_refused()
    {
        ImmutableArray<Served> items = [new(0, 0, 90), new(2, 1, 90), new(1, 2, 90), new(3, 3, 90)];
        var ballots = RankingSet.Create([Ranking.FromOrder(4, [0, 1]), Ranking.FromOrder(4, [2, 3])]);
        Assert.Equal([[0, 2], [1, 3]], AcrossTastings.Pieces(items, ballots).Select(piece => piece.ToArray()));
        Assert.Equal(RefusalKind.Disconnected, AcrossTastings.Sample(items, ballots, new Seed(1)).Refusal!.Kind);
        // One wheel of recipe 2 in the second tasting joins them.
        ImmutableArray<Served> joined = [.. items, new(2, 4, 80)];
        var more = RankingSet.Create([Ranking.FromOrder(5, [0, 1]), Ranking.FromOrder(5, [2, 3, 4])]);
        Assert.Single(AcrossTastings.Pieces(joined, more));
        Assert.True(AcrossTastings.Sample(joined, more, new Seed(1), Short).Stands);
        // A ballot that ties everything compares nothing.
        Assert.Equal(2, AcrossTastings.Pieces([new(0, 0, 1), new(1, 1, 1)], RankingSet.Create([Ranking.FromPlaces([1, 1])])).Length);
    }

    [Fact]
    public void Without_a_difference_of_age_no_slope_is_told_and_one_recipe_is_refused()
    {
        ImmutableArray<Served> items = [new(0, 0, null), new(1, 1, null), new(0, 2, null), new(1, 3, null)];
        var ballots = RankingSet.Create([Ranking.FromOrder(4, [0, 1, 2, 3]), Ranking.FromOrder(4, [1, 0, 2, 3])]);
        var found = AcrossTastings.Sample(items, ballots, new Seed(1), Short).Value;
        Assert.Null(found.AgePer30Days);
        Assert.Null(found.AgeInterval);
        Assert.Equal(RefusalKind.TooFewItems, AcrossTastings.Sample([new(0, 0, 1), new(0, 1, 1)], RankingSet.Create([Ranking.FromOrder(2, [0, 1])]), new Seed(1)).Refusal!.Kind);
        Assert.Throws<ArgumentException>(() => AcrossTastings.Sample([new(0, 0, 1), new(2, 1, 1)], RankingSet.Create([Ranking.FromOrder(2, [0, 1])]), new Seed(1)));
        Assert.Throws<ArgumentException>(() => AcrossTastings.Sample([new(0, 0, 1), new(1, 0, 1)], RankingSet.Create([Ranking.FromOrder(2, [0, 1])]), new Seed(1)));
    }

    [Fact]
    public void The_same_seed_gives_the_same_bits()
    {
        AcrossPosterior Once() => AcrossTastings.Sample(Items, RankingSet.Create(Orders.Select(order => Ranking.FromOrder(6, order))), new Seed(5), new SamplingEffort(2, 50, 200)).Value;
        Assert.Equal(Once().Recipes, Once().Recipes);
        Assert.Equal(Once().WheelSpread, Once().WheelSpread);
    }

    private static double Spread(Interval interval) => (interval.High - interval.Low) / 3.29;

    private static double Both(double one, double other) => Math.Sqrt((one * one) + (other * other));

    private static bool Inside(Interval interval, double value) => value >= interval.Low && value <= interval.High;
}
