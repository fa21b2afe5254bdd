using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.RankTests;

public sealed class ClassicalTests
{
    private static readonly Seed Seed = new(3);

    /// <summary>Hollander and Wolfe's cotton strength example; scipy's page_trend_test prints 158 and 0.002492476851851852.</summary>
    [Fact]
    public void Pages_L_on_cotton_strength()
    {
        var page = PageTrend.Test(CheckData.Scores("page_cotton_strength.csv"), [0, 1, 2, 3, 4]).Value;
        Assert.Equal(158, page.L);
        Assert.Equal(2.655811238, page.Z, 1e-8);
        Assert.Equal(0.00395589434, page.NormalP, 1e-9);
        Assert.Equal(0.002492476852, page.P.Value, 1e-11);
    }

    /// <summary>scipy's documentation example. Its exact p rounds L down and ignores ties; the p given the ties is held here.</summary>
    [Fact]
    public void Pages_L_with_ties_is_exact_given_the_ties()
    {
        var set = CheckData.Scores("page_teaching_styles.csv");
        var page = PageTrend.Test(set, [0, 1, 2]).Value;
        Assert.Equal(133.5, page.L);
        Assert.Equal(3.01869177, page.Z, 1e-7);
        Assert.Equal(0.001269343369, page.NormalP, 1e-10);
        Assert.Equal(0.0003842148047, page.P.Value, 1e-11);
        Assert.Equal(109.5, PageTrend.Test(set, [1, 2, 0]).Value.L);
    }

    /// <summary>
    /// Page's (1963) table as reprinted by Siegel and Castellan (1988): 155 of 156 cells agree with the exact distribution by separate code, which is held. The odd one is 6 items, 8 judges at .001: printed 655, whose exact chance
    /// is .0010019.
    /// </summary>
    [Fact]
    public void Pages_critical_values_are_the_tabled_ones()
    {
        var held = 0;
        foreach (var panel in CheckData.Rows("exact_page_critical.csv").GroupBy(row => (Items: CheckData.Whole(row[0]), Judges: CheckData.Whole(row[1]))))
        {
            var (lowest, chances) = PageTrend.NullDistribution(panel.Key.Items, panel.Key.Judges);
            Assert.Equal(1, chances.Sum(), 1e-12);
            foreach (var row in panel)
            {
                var tail = 0.0;
                var at = chances.Length;
                while (at > 0 && tail + chances[at - 1] <= CheckData.Number(row[2])) tail += chances[--at];
                Assert.Equal(CheckData.Optional(row[3]), at == chances.Length ? null : lowest + at);
                if (at < chances.Length) Assert.Equal(1, tail / CheckData.Number(row[4]), 1e-6);
                held++;
            }
        }

        Assert.Equal(156, held);
        var (low, eight) = PageTrend.NullDistribution(6, 8);
        Assert.Equal(.0010019, eight.Skip(655 - (int)low).Sum(), 5e-8);
    }

    /// <summary>The same through the test itself, on panels that reach the critical value.</summary>
    [Fact]
    public void Pages_p_is_the_tabled_tail()
    {
        var held = 0;
        foreach (var row in CheckData.Rows("exact_page_critical.csv").Where(row => CheckData.Optional(row[3]) is not null && CheckData.Whole(row[1]) <= 8))
        {
            var (k, n) = (CheckData.Whole(row[0]), CheckData.Whole(row[1]));
            if (Panel(k, n, CheckData.Whole(row[3])) is not { } set) continue;
            var page = PageTrend.Test(set, [.. Enumerable.Range(0, k)]).Value;
            Assert.Equal(CheckData.Number(row[3]), page.L);
            Assert.Equal(1, page.P.Value / CheckData.Number(row[4]), 1e-6);
            held++;
        }

        Assert.True(held >= 60, $"{held} cells held");
    }

    /// <summary>Conover (1999) p. 391; an R help page prints T1 12, p 0.0619688, LSD 2.824267; another manual T2 = 8 on 6 and 8.</summary>
    [Fact]
    public void Durbin_on_ice_cream_and_chemicals()
    {
        var ice = Durbin.Test(Blocks("durbin_ice_cream.csv"), Seed).Value;
        Assert.Equal([8, 9, 4, 3, 5, 6, 7], ice.RankSums);
        Assert.Equal(12, ice.Statistic, 1e-9);
        Assert.Equal(0.06196880442, ice.ChiSquareP, 1e-9);
        Assert.Equal(8, ice.F, 1e-9);
        Assert.Equal(8, ice.FDegreesOfFreedom);
        Assert.Equal(0.004904419077, ice.FP, 1e-9);
        Assert.Equal(2.824266738, ice.LeastDifference, 1e-7);
        var toxic = Durbin.Test(Blocks("durbin_chemical_toxicity.csv"), Seed).Value;
        Assert.Equal(7.714285714, toxic.Statistic, 1e-8);
        Assert.Equal(0.2597916047, toxic.ChiSquareP, 1e-9);
        Assert.Equal(1.636363636, toxic.F, 1e-8);
        Assert.Equal(0.2535788469, toxic.FP, 1e-9);
        Assert.Equal(toxic.Statistic, toxic.Gate.Statistic, 1e-9);
        Assert.Equal(RefusalKind.WrongDesign, Durbin.Test(Demo.Set(Demo.Wheels, completeOnly: false), Seed).Refusal!.Kind);
    }

    /// <summary>Skillings and Mack (1981) Table 1, printed 15.493049; Brady (1969) by Hollander and Wolfe; and complete data, where it is Friedman's.</summary>
    [Theory]
    [InlineData("skillings_mack_assembly.csv", 15.4930488, 0.001440296302, "-14.12559752 4.281244146 -4.281244146 14.12559752")]
    [InlineData("skillings_mack_metronome.csv", 13.28095184, 0.001306405348, "-11.39230485 -1.732050808 13.12435565")]
    [InlineData("friedman_diuretics.csv", 23.33333333, 0.0002914597502, "-17.02099544 2.618614683 5.237229366 -14.40238076 7.855844048 15.7116881")]
    public void Skillings_and_Mack_hold(string file, double statistic, double p, string sums)
    {
        var result = SkillingsMack.Test(CheckData.Scores(file), Seed).Value;
        Assert.Equal(statistic, result.Statistic, 1e-6);
        Assert.Equal(p, result.ChiSquareP, 1e-8);
        var expected = sums.Split(' ').Select(CheckData.Number).ToArray();
        for (var i = 0; i < expected.Length; i++) Assert.Equal(expected[i], result.AdjustedSums[i], 1e-7);
    }

    /// <summary>The covariance behind them: minus the number of ballots that hold both items off the diagonal.</summary>
    [Theory]
    [InlineData("skillings_mack_assembly.csv", "22 21 23 20", "-7 -8 -7 -8 -6 -7")]
    [InlineData("skillings_mack_metronome.csv", "15 14 15", "-7 -8 -7")]
    public void The_covariance_of_Skillings_and_Mack_is_the_printed_one(string file, string diagonal, string beside)
    {
        var set = CheckData.Scores(file);
        var covariance = new Laplacian(set.Items);
        foreach (var row in set.Rows) covariance.Add(row.Ranking.Served.AsSpan(), row.Ranking.Served.Length);
        var own = diagonal.Split(' ').Select(CheckData.Number).ToArray();
        for (var i = 0; i < own.Length; i++) Assert.Equal(own[i], covariance[i, i], 1e-12);
        var off = beside.Split(' ').Select(CheckData.Number);
        Assert.Equal(off, from i in Enumerable.Range(0, own.Length) from j in Enumerable.Range(i + 1, own.Length - 1 - i) select Math.Round(covariance[i, j], 9));
    }

    /// <summary>SAS FREQ example (p = 0.0145), statsmodels' cochrans_q and its test suite.</summary>
    [Fact]
    public void Cochrans_Q_holds()
    {
        static CochranResult Of(string rows) => CochranResult.Of([.. rows.Split(' ').Select(row => System.Collections.Immutable.ImmutableArray.CreateRange(row.Select(c => c == '1')))], Seed).Value;
        var first = Of("1011 0111 1110 0100 0100 1010 0100 1111 0100");
        Assert.Equal(4.2, first.Q, 1e-9);
        Assert.Equal(0.2406618852, first.ChiSquareP, 1e-9);
        Assert.Equal(TestMethod.Exact, first.P.Method);
        var second = Of("00110 01010 01101 10001 11000 10100 01000 00110 00000");
        Assert.Equal(1.217391304, second.Q, 1e-8);
        Assert.Equal(0.875227037, second.ChiSquareP, 1e-8);
    }

    /// <summary>SAS FREQ example: 28, 28 and 16 of 46 favourable, p = 0.0145; statsmodels' cochrans_q and R's friedman.test on the answers give the same number.</summary>
    [Fact]
    public void Cochrans_Q_on_three_drugs_holds_with_and_without_those_who_answer_alike()
    {
        var people = CheckData.Rows("cochran_drugs.csv")
            .SelectMany(row => Enumerable.Repeat(System.Collections.Immutable.ImmutableArray.CreateRange(row.Take(3).Select(cell => cell == "F")), CheckData.Whole(row[3])))
            .ToArray();
        Assert.Equal([28, 28, 16], Enumerable.Range(0, 3).Select(drug => people.Count(person => person[drug])));
        foreach (var kept in new[] { people, [.. people.Where(person => person.Distinct().Count() == 2)] })
        {
            var result = CochranResult.Of([.. kept], Seed).Value;
            Assert.Equal(8.470588235, result.Q, 1e-8);
            Assert.Equal(2, result.DegreesOfFreedom);
            Assert.Equal(0.01447555206, result.ChiSquareP, 1e-9);
        }

        (long, long) Changes(int from, int to) => (people.LongCount(person => person[from] && !person[to]), people.LongCount(person => !person[from] && person[to]));
        Assert.Equal((6, 6), Changes(0, 1));
        foreach (var (yesNo, noYes) in new[] { Changes(0, 2), Changes(1, 2) })
        {
            Assert.Equal((8, 20), (Math.Min(yesNo, noYes), Math.Max(yesNo, noYes)));
            var pair = McNemarResult.Of(yesNo, noYes).Value;
            Assert.Equal(5.142857143, pair.ChiSquare, 1e-8);
            Assert.Equal(0.02334220201, pair.ChiSquareP, 1e-9);
            Assert.Equal(4.321428571, pair.Corrected, 1e-8);
            Assert.Equal(0.03569813818, pair.ExactP, 1e-9);
        }

        Assert.Equal(0, McNemarResult.Of(6, 6).Value.ChiSquare);
    }

    /// <summary>Friedman on the answers as two places is Cochran's Q: a slow second way, over every small table of three people and three items.</summary>
    [Fact]
    public void Cochrans_Q_is_Friedmans_statistic_on_every_small_table()
    {
        var few = Effort.Usual with { Draws = 9 };
        for (var bits = 0; bits < 1 << 9; bits++)
        {
            var rows = Enumerable.Range(0, 3).Select(person => Enumerable.Range(0, 3).Select(item => (bits & (1 << ((3 * person) + item))) != 0).ToArray()).ToArray();
            var cochran = CochranResult.Of([.. rows.Select(row => System.Collections.Immutable.ImmutableArray.CreateRange(row))], Seed, few);
            var friedman = Friedman.Test(RankingSet.Create(rows.Select(row => Ranking.FromPlaces([.. row.Select(yes => (double?)(yes ? 1 : 2))]))), Seed, few);
            Assert.Equal(friedman.Stands, cochran.Stands);
            if (friedman.Stands) Assert.Equal(friedman.Value.Statistic, cochran.Value.Q, 1e-9);
        }
    }

    /// <summary>Agresti (1990) p. 350 and R's mcnemar.test; R's binom.test help example.</summary>
    [Fact]
    public void McNemar_and_the_sign_test_hold()
    {
        var result = McNemarResult.Of(150, 86).Value;
        Assert.Equal(17.3559322, result.ChiSquare, 1e-6);
        Assert.Equal(16.81779661, result.Corrected, 1e-7);
        Assert.Equal(3.099293e-5, result.ChiSquareP, 1e-10);
        Assert.Equal(4.114562e-5, result.CorrectedP, 1e-10);
        Assert.Equal(3.715936e-5, result.ExactP, 1e-10);
        Assert.Equal(0.03569813818, McNemarResult.Of(8, 20).Value.ExactP, 1e-9);
        Assert.Equal(1, McNemarResult.Of(6, 6).Value.ExactP, 1e-9);
        Assert.Equal(0.3824915596, SignTest.TwoSided(682, 925, 0.75), 1e-9);
        Assert.Equal(0.03857421875, SignTest.TwoSided(10, 12), 1e-9);
        Assert.Equal(0.1459960938, SignTest.TwoSided(9, 12), 1e-9);
        Assert.Equal(0.02265584469, SignTest.TwoSided(18, 24), 1e-9);
        Assert.Equal(0.08069046775, SignTest.TwoSided(14, 40), 1e-9);
    }

    /// <summary>A printed textbook table (Pearson, Table A-7) in every row; with five or fewer nothing is possible.</summary>
    [Theory]
    [InlineData(6, 8, 0)]
    [InlineData(9, 11, 1)]
    [InlineData(12, 14, 2)]
    [InlineData(15, 16, 3)]
    [InlineData(17, 19, 4)]
    [InlineData(20, 22, 5)]
    [InlineData(23, 24, 6)]
    [InlineData(25, 25, 7)]
    public void Sign_test_critical_counts_are_the_textbook_ones(int from, int to, int count)
    {
        for (var n = from; n <= to; n++)
        {
            Assert.True(SignTest.TwoSided(count, n) <= 0.05);
            Assert.True(SignTest.TwoSided(count + 1, n) > 0.05);
        }

        Assert.True(SignTest.TwoSided(0, 5) > 0.05);
    }

    /// <summary>Hollander and Wolfe (1973) p. 187, R's cor.test; Conover's MBA example (from memory), R and scipy; scipy's documentation.</summary>
    [Fact]
    public void Rank_correlations_hold()
    {
        var tuna = RankCorrelation.Of([44.4, 45.9, 41.9, 53.3, 44.7, 44.1, 50.7, 45.2, 60.1], [2.6, 3.1, 2.5, 5.0, 3.6, 4.0, 5.2, 2.8, 3.8]).Value;
        Assert.Equal(0.4444444444, tuna.TauB, 1e-9);
        Assert.Equal(26, tuna.Concordant);
        Assert.True(tuna.TauExact);
        Assert.Equal(0.11943893298, tuna.TauP, 1e-9);
        Assert.Equal(0.6, tuna.Rho, 1e-12);
        Assert.Equal(0.0876228290, tuna.RhoP, 1e-8);
        Assert.Equal(0.09679784, tuna.RhoExactP!.Value, 5e-9);
        var mba = RankCorrelation.Of([710, 610, 640, 580, 545, 560, 610, 530, 560, 540, 570, 560], [4.0, 4.0, 3.9, 3.8, 3.7, 3.6, 3.5, 3.5, 3.5, 3.3, 3.2, 3.2]).Value;
        Assert.Equal(0.5900187627, mba.Rho, 1e-9);
        Assert.Equal(0.04344017175, mba.RhoP, 1e-9);
        Assert.Equal(0.4390389003, mba.TauB, 1e-9);
        Assert.Equal(0.05786570914, mba.TauP, 1e-9);
        Assert.Equal((42, 15), (mba.Concordant, mba.Discordant));
        Assert.Equal(0.4736842105, mba.Gamma, 1e-9);
        Assert.Equal(0.4090909091, mba.TauA(12), 1e-9);
        Assert.Null(mba.RhoExactP);
        var short5 = RankCorrelation.Of([12, 2, 1, 12, 2], [1, 4, 7, 1, 0]).Value;
        Assert.Equal(-0.4714045208, short5.TauB, 1e-9);
        Assert.Equal(0.2827454599, short5.TauP, 1e-9);
        Assert.Equal(-0.5407380704, short5.Rho, 1e-9);
    }

    /// <summary>Exact Spearman, ties and all, against every one of the orders of y.</summary>
    [Theory]
    [InlineData("1 2 3 4", "2 1 4 3")]
    [InlineData("1 2 2 4 5", "3 1 1 1 2")]
    [InlineData("3 1 2 5 4 6", "1 2 4 3 6 5")]
    public void Exact_Spearman_is_the_share_of_all_orders(string x, string y)
    {
        double[] a = [.. x.Split(' ').Select(CheckData.Number)];
        double[] b = [.. y.Split(' ').Select(CheckData.Number)];
        var observed = RankCorrelation.Of(a, b).Value;
        var all = Arrangements.All([.. Enumerable.Range(0, b.Length)]).Chunk(b.Length).Select(order => RankCorrelation.Of(a, [.. order.Select(i => b[i])]).Value.Rho).ToArray();
        Assert.Equal(all.Count(rho => Math.Abs(rho) >= Math.Abs(observed.Rho) - 1e-12) / (double)all.Length, observed.RhoExactP!.Value, 1e-12);
    }

    /// <summary>A panel without ties with a given L, found greedily from the unanimous one; null where the greedy way misses it.</summary>
    private static RankingSet? Panel(int k, int n, int l)
    {
        var orders = Arrangements.All([.. Enumerable.Range(1, k)]).Chunk(k).OrderByDescending(Sum).ToArray();
        var most = Sum(orders[0]);
        var lack = (most * n) - l;
        var ballots = new List<int[]>();
        for (var i = 0; i < n; i++)
        {
            var share = lack / (n - i);
            var order = orders.FirstOrDefault(o => most - Sum(o) == share) ?? orders.First(o => most - Sum(o) > share);
            lack -= most - Sum(order);
            ballots.Add(order);
        }

        return lack == 0 ? RankingSet.Create(ballots.Select(order => Ranking.FromPlaces([.. order.Select(place => (double?)place)]))) : null;

        static int Sum(int[] order) => order.Select((place, j) => (j + 1) * place).Sum();
    }

    private static RankingSet Blocks(string file)
    {
        var rows = CheckData.Rows(file);
        var names = rows.Select(row => row[1]).Distinct().Order(StringComparer.Ordinal).ToArray();
        return RankingSet.Create(rows.GroupBy(row => row[0]).Select(block =>
        {
            var scores = new double?[names.Length];
            foreach (var row in block) scores[Array.IndexOf(names, row[1])] = CheckData.Number(row[2]);
            return Ranking.FromPlaces(scores);
        }));
    }
}
