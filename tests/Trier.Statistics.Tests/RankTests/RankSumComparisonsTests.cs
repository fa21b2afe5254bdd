using Trier.Statistics.Distributions;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.RankTests;

/// <summary>Section 3 of the check values, from R's t, normal and studentized range. Statistics to 1e-6 relative, p-values to 1e-6.</summary>
public sealed class RankSumComparisonsTests
{
    [Theory]
    [InlineData("friedman_grass.csv", false, 11.48167759, 12.39590065, 16.2479836)]
    [InlineData("friedman_rounding_first_base.csv", false, 11.56787649, 13.00093028, 15.54635094)]
    [InlineData("friedman_diuretics.csv", false, 6.892534321, 12.70201836, 18.46820204)]
    [InlineData("friedman_demsar_auc.csv", true, 11.69596384, 13.38910297, 17.54982809)]
    [InlineData("pl_salad_ranks.csv", false, 15.75777746, 20.24242099, 26.53284611)]
    public void Least_differences_hold(string file, bool highestFirst, double conover, double normal, double nemenyi)
    {
        var set = CheckData.Scores(file, highestFirst: highestFirst);
        Assert.Equal(1, RankSumComparisons.Conover(set).Value.LeastDifference!.Value / conover, 1e-6);
        Assert.Equal(1, RankSumComparisons.Normal(set).Value.LeastDifference!.Value / normal, 1e-6);
        Assert.Equal(1, RankSumComparisons.Nemenyi(set).Value.LeastDifference!.Value / nemenyi, 1e-6);
    }

    /// <summary>Seven judges, six of whom agree: Conover's difference is absurdly sharp. A class exercise prints 15.06 for the normal one, with a degree of freedom where a 6 belongs.</summary>
    [Fact]
    public void Near_agreement_makes_Conovers_difference_absurd()
    {
        var set = CheckData.Inline(
            [1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 6, 5]);
        Assert.Equal(1.826664016, RankSumComparisons.Conover(set).Value.LeastDifference!.Value, 1e-6);
        Assert.Equal(13.71974789, RankSumComparisons.Normal(set).Value.LeastDifference!.Value, 1e-6);
        Assert.Equal(19.9479381, RankSumComparisons.Nemenyi(set).Value.LeastDifference!.Value, 1e-5);
    }

    /// <summary>Demsar (2006): critical differences of mean ranks at .05 and .10 on his fourteen data sets.</summary>
    [Fact]
    public void Critical_differences_of_mean_ranks_hold()
    {
        var set = CheckData.Scores("friedman_demsar_auc.csv", highestFirst: true);
        Assert.Equal(1.253559149, RankSumComparisons.Nemenyi(set).Value.LeastDifference!.Value / 14, 1e-7);
        Assert.Equal(1.118060167, RankSumComparisons.Nemenyi(set, 0.10).Value.LeastDifference!.Value / 14, 1e-7);
    }

    [Theory]
    [InlineData("friedman_grass.csv", 1, 2, 14.5, 0.01489518, 0.02186809, 0.09969438)]
    [InlineData("friedman_grass.csv", 1, 3, 13.5, 0.02260271, 0.03279881, 0.1421835)]
    [InlineData("friedman_grass.csv", 1, 4, 4, 0.4834343, 0.5270893, 0.9216028)]
    [InlineData("friedman_grass.csv", 2, 3, 1, 0.860437, 0.8743671, 0.9985935)]
    [InlineData("friedman_grass.csv", 2, 4, 10.5, 0.07173651, 0.09687508, 0.3449675)]
    [InlineData("friedman_grass.csv", 3, 4, 9.5, 0.1017424, 0.133076, 0.436192)]
    [InlineData("friedman_rounding_first_base.csv", 1, 2, 6, 0.301209, 0.3657123, 0.6374272)]
    [InlineData("friedman_rounding_first_base.csv", 1, 3, 21, 0.0006914535, 0.001546203, 0.00440982)]
    [InlineData("friedman_rounding_first_base.csv", 2, 3, 15, 0.01228286, 0.02373852, 0.06137076)]
    [InlineData("friedman_diuretics.csv", 1, 2, 15, 0.0001426546, 0.02063756, 0.1880345)]
    [InlineData("friedman_diuretics.csv", 1, 6, 25, 8.006288e-8, 0.0001145134, 0.001598505)]
    [InlineData("friedman_diuretics.csv", 4, 6, 23, 3.332989e-7, 0.0003867308, 0.005190279)]
    [InlineData("friedman_diuretics.csv", 1, 5, 19, 6.536023e-6, 0.003370431, 0.0395082)]
    [InlineData("pl_salad_ranks.csv", 1, 4, 20, 0.01342567, 0.05280751, 0.2127483)]
    [InlineData("pl_salad_ranks.csv", 3, 4, 16, 0.04665029, 0.1213353, 0.4080497)]
    public void Pairs_hold(string file, int a, int b, double difference, double conover, double normal, double nemenyi)
    {
        var set = CheckData.Scores(file);
        RankSumPair Of(Answer<RankSumComparison> answer) => answer.Value.Pairs.Single(pair => (pair.First, pair.Second) == (a - 1, b - 1));
        Assert.Equal(difference, Of(RankSumComparisons.Conover(set)).Difference, 1e-9);
        Assert.Equal(conover, Of(RankSumComparisons.Conover(set)).P, 1e-6 * Math.Max(1e-3, conover));
        Assert.Equal(normal, Of(RankSumComparisons.Normal(set)).P, 1e-6);
        Assert.Equal(nemenyi, Of(RankSumComparisons.Nemenyi(set)).P, 1e-6);
    }

    [Fact]
    public void Letters_on_the_grass_are_those_of_Conovers_difference_and_Nemenyi_gives_one()
    {
        var set = CheckData.Scores("friedman_grass.csv");
        Assert.Equal(["a", "b", "b", "ab"], RankSumComparisons.Conover(set).Value.Letters);
        Assert.Equal(["a", "a", "a", "a"], RankSumComparisons.Nemenyi(set).Value.Letters);
        var running = RankSumComparisons.Nemenyi(CheckData.Scores("friedman_rounding_first_base.csv")).Value;
        Assert.Equal([(0, 2)], running.Pairs.Where(pair => pair.Differs).Select(pair => (pair.First, pair.Second)));
    }

    /// <summary>An R help page prints these letters for the ice cream of Conover (1999) p. 391, least difference 2.824267.</summary>
    [Fact]
    public void Letters_on_the_ice_cream_are_the_printed_ones()
    {
        double[] sums = [8, 9, 4, 3, 5, 6, 7];
        var pairs =
            from i in Enumerable.Range(0, 7) from j in Enumerable.Range(i + 1, 6 - i) let d = Math.Abs(sums[i] - sums[j]) select new RankSumPair(i, j, d, 0, d > 2.824267);
        var letters = GroupingLetters.Of([.. Enumerable.Range(0, 7).OrderByDescending(i => sums[i])], pairs);
        Assert.Equal(["ab", "a", "de", "e", "cde", "bcd", "abc"], letters);
    }

    /// <summary>Letters shared are exactly the pairs that do not differ, whatever the pattern.</summary>
    [Fact]
    public void Items_share_a_letter_where_and_only_where_they_do_not_differ()
    {
        for (var pattern = 0; pattern < 1 << 10; pattern++)
        {
            var bit = 0;
            var pairs = (from i in Enumerable.Range(0, 5) from j in Enumerable.Range(i + 1, 4 - i) select (i, j)).ToArray()
                .Select(pair => new RankSumPair(pair.i, pair.j, 0, 0, (pattern & (1 << bit++)) != 0)).ToArray();
            var letters = GroupingLetters.Of([0, 1, 2, 3, 4], pairs);
            foreach (var pair in pairs) Assert.Equal(!pair.Differs, letters[pair.First].Intersect(letters[pair.Second]).Any());
            Assert.All(letters, letter => Assert.NotEmpty(letter));
        }
    }

    /// <summary>Of the pairs of the demo's wheels only the second over the fourth stands by signs and Holm: 11 to 0, p 2/2^11 against .05 over 10.</summary>
    [Fact]
    public void Sign_tests_with_Holms_steps_show_one_pair_of_the_demo()
    {
        var signs = RankSumComparisons.SignsByHolm(Demo.Set(Demo.Wheels)).Value;
        var shown = signs.Pairs.Single(pair => pair.Differs);
        Assert.Equal((1, 3, 11.0), (shown.First, shown.Second, shown.Difference));
        Assert.Equal(Math.Pow(2, -10), shown.P, 1e-12);
    }

    /// <summary>
    /// The smallest difference that a pair fixed beforehand needs, by separate convolution, and what the normal rule says in its place.
    /// </summary>
    [Fact]
    public void The_exact_table_of_one_pair_holds_with_the_normal_difference_beside_it()
    {
        var held = 0;
        foreach (var row in CheckData.Rows("exact_pairwise_rank_sum_critical.csv"))
        {
            var (k, n, alpha) = (CheckData.Whole(row[0]), CheckData.Whole(row[1]), CheckData.Number(row[2]));
            var ballots = RankingSet.Create(k, [new RankingRow(Ranking.FromOrder(k, [.. Enumerable.Range(0, k)]), n)]);
            Assert.Equal(CheckData.Number(row[5]), RankSumComparisons.Normal(ballots, alpha).Value.LeastDifference!.Value, 5e-4);
            var most = n * (k - 1);
            var critical = Enumerable.Range(1, most).Cast<int?>().FirstOrDefault(d => RankSumComparisons.ExactPair(k, n, d!.Value) <= alpha);
            Assert.Equal(CheckData.Optional(row[3]), critical);
            if (critical is { } c) Assert.Equal(1, RankSumComparisons.ExactPair(k, n, c) / CheckData.Number(row[4]), 1e-5);
            held++;
        }

        Assert.Equal(276, held);
        Assert.Equal(0.00925926, RankSumComparisons.ExactPair(3, 3, 6), 1e-8);
    }

    /// <summary>The smallest range of rank sums at a level, by separate code.</summary>
    [Fact]
    public void The_exact_table_of_all_items_holds()
    {
        var held = 0;
        foreach (var row in CheckData.Rows("exact_friedman_critical.csv").Where(row => CheckData.Optional(row[5]) is not null))
        {
            var (k, n, critical) = (CheckData.Whole(row[0]), CheckData.Whole(row[1]), CheckData.Whole(row[5]));
            if (k * n > 32) continue;
            var tail = RankSumRange.AtLeast(k, n, critical);
            Assert.Equal(1, tail.Value / CheckData.Number(row[6]), 1e-5);
            Assert.True(RankSumRange.AtLeast(k, n, critical - 1).Value > CheckData.Number(row[2]));
            held++;
        }

        Assert.True(held >= 30, $"{held}");
        Assert.Equal(RefusalKind.TooManyItems, RankSumRange.AtLeast(7, 2, 3).Refusal!.Kind);
    }

    /// <summary>
    /// Newell and MacFarlane (1987) Table 1 at 5 %: 44 of 54 cells agree, ten are one too small. They follow the large-sample formula and exceed 5 %, each with the chance given here; the exact values are held.
    /// </summary>
    [Theory]
    [InlineData(3, 9, 10, .05950)]
    [InlineData(3, 11, 11, .06209)]
    [InlineData(3, 13, 12, .05831)]
    [InlineData(3, 15, 13, .05510)]
    [InlineData(3, 17, 14, .05166)]
    [InlineData(3, 20, 15, .05428)]
    [InlineData(4, 10, 15, .05218)]
    [InlineData(4, 16, 19, .05134)]
    [InlineData(4, 18, 20, .05409)]
    [InlineData(4, 20, 21, .05543)]
    public void Ten_printed_cells_exceed_their_level(int items, int judges, int printed, double chance) =>
        Assert.Equal(chance, RankSumRange.AtLeast(items, judges, printed).Value, 5e-6);

    [Fact]
    public void What_cannot_be_compared_is_refused()
    {
        Assert.Equal(RefusalKind.NotComplete, RankSumComparisons.Nemenyi(Demo.Set(Demo.Wheels, completeOnly: false)).Refusal!.Kind);
        Assert.Equal(RefusalKind.TooFewBallots, RankSumComparisons.Conover(CheckData.Inline([1, 2, 3])).Refusal!.Kind);
        Assert.Equal(RefusalKind.NoInformation, RankSumComparisons.Normal(CheckData.Inline([1, 1], [1, 1])).Refusal!.Kind);
        Assert.Equal(RefusalKind.TooFewItems, RankSumComparisons.SignsByHolm(CheckData.Inline([1.0])).Refusal!.Kind);

        // Judges who all agree: the difference needed is nothing, and no p is not a number.
        Assert.All(RankSumComparisons.Conover(CheckData.Inline([1, 2, 3], [1, 2, 3])).Value.Pairs, pair => Assert.Equal(0, pair.P));
    }
}
