using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.RankTests;

/// <summary>
/// Published examples. F1 [Conover1999] (NIST Dataplot prints the same), F2 [HollanderWolfe1973] p. 140 and R's friedman.test, F3 Sachs (1997) p. 675, F4 Demsar (2006)
/// Table 6, F5 [HollanderWolfe1973], F6 Critchlow and Fligner (1991), F7 University of Zurich methods pages, F8 and F9 WaveMetrics, F10 a class exercise.
/// Where paper and exact tie correction differ (F4), the tie-corrected value of R is held.
/// </summary>
public sealed class FriedmanTests
{
    private static readonly Seed Seed = new(1);

    private static readonly double[][] TenPersons =
    [
        [275, 273, 288, 273, 244], [292, 283, 284, 285, 329], [281, 274, 298, 270, 252], [284, 275, 271, 272, 258], [285, 294, 307, 278, 275],
        [283, 279, 301, 276, 279], [290, 265, 298, 291, 295], [294, 277, 295, 290, 271], [300, 304, 293, 279, 271], [284, 297, 352, 292, 284],
    ];

    public static TheoryData<string, double, double, double, double, double, double> Published => new()
    {
        { "F1", 7.625, 8.097345133, 0.04404213782, 3.192197907, 0.03621547464, 0.2249262537 },
        { "F2", 10.63636364, 11.14285714, 0.003805040776, 7.12173913, 0.002171298388, 0.2532467532 },
        { "F3", 23.33333333, 23.33333333, 0.0002914597502, 17.5, 1.855532e-7, 0.7777777778 },
        { "F4", 9.857142857, 10.95238095, 0.01198617633, 4.585889571, 0.007628838731, 0.2607709751 },
        { "F4b", 9.278571429, 10.22834646, 0.01672158033, 4.185130112, 0.01162065952, 0.2435320585 },
        { "F5", 1, 1.107692308, 0.5747350346, 0.5396825397, 0.5878442544, 0.03076923077 },
        { "F6", 41.1, 41.1, 6.227518e-9, 23.20765027, 2.666430e-11, 0.428125 },
        { "F7", 13.06, 13.25888325, 0.01007773279, 4.462414579, 0.004956400152, 0.3314720812 },
        { "F7b", 9.3, 9.738219895, 0.04507592663, 2.896193772, 0.03547973641, 0.2434554974 },
        { "F8", 9.24, 9.24, 0.02626441799, 6.416666667, 0.007696549309, 0.616 },
        { "F9", 1.08, 1.08, 0.7819042243, 0.3103448276, 0.8175621499, 0.072 },
        { "F10", 34.51020408, 34.51020408, 1.884191e-6, 422.75, 7.466534e-27, 0.9860058309 },
    };

    [Theory]
    [MemberData(nameof(Published))]
    public void Published_examples_hold(string id, double q, double t1, double chiSquareP, double f, double fp, double w)
    {
        var result = Friedman.Test(Data(id), Seed).Value;
        Assert.Equal(q, result.Uncorrected, 1e-6 * q);
        Assert.Equal(t1, result.Statistic, 1e-6 * t1);
        Assert.Equal(chiSquareP, result.ChiSquareP, 1e-6 * Math.Max(chiSquareP, 1e-3));
        Assert.Equal(f, result.F, 1e-6 * f);
        Assert.Equal(1, result.FP / fp, 1e-5);
        Assert.Equal(w, result.KendallW, 1e-6 * w);
    }

    /// <summary>Exact given each row's ties: convolution by separate code; F8 and F9 as printed by WaveMetrics.</summary>
    [Theory]
    [InlineData("F1", 0.04005718368)]
    [InlineData("F2", 0.003149827282)]
    [InlineData("F8", 0.01667088638)]
    [InlineData("F9", 0.8565598476)]
    [InlineData("F5", 0.6049895291)]
    [InlineData("F7", 0.006467111477)]
    [InlineData("F4", 0.009124952481)]
    public void Exact_p_given_the_ties_holds(string id, double p)
    {
        var exact = Friedman.Test(Data(id), Seed).Value.P;
        Assert.Equal(TestMethod.Exact, exact.Method);
        Assert.Equal(p, exact.Value, 1e-9);
        var drawn = Friedman.Test(Data(id), Seed, Effort.DrawsOnly).Value.P;
        Assert.InRange(drawn.Value, p - (4 * drawn.Error) - 1e-5, p + (4 * drawn.Error) + 1e-5);
    }

    [Fact]
    public void The_whole_null_distribution_is_the_tabled_one()
    {
        foreach (var table in CheckData.Rows("exact_friedman_tails.csv").GroupBy(row => (Judges: CheckData.Whole(row[0]), Items: CheckData.Whole(row[1]))))
        {
            var points = Friedman.NullDistribution(table.Key.Items, table.Key.Judges).Value;
            var rows = table.ToArray();
            Assert.Equal(rows.Length, points.Length);
            Assert.Equal(1, points.Sum(point => point.Chance), 1e-12);
            for (var i = 0; i < rows.Length; i++)
            {
                Assert.Equal(CheckData.Number(rows[i][2]), points[i].SquaredDeviations, 1e-6);
                Assert.Equal(1, points[i].Chance / CheckData.Number(rows[i][4]), 1e-8);
                Assert.Equal(1, points[i].AtLeast / CheckData.Number(rows[i][5]), 1e-8);
            }
        }
    }

    [Fact]
    public void Ten_judges_agreeing_on_four_items_is_one_chance_in_24_to_the_9()
    {
        var set = RankingSet.Create(4, [new RankingRow(Ranking.FromPlaces([1, 2, 3, 4]), 10)]);
        Assert.Equal(1, Friedman.Test(set, Seed).Value.P.Value / (1 / Math.Pow(24, 9)), 1e-10);
    }

    [Fact]
    public void Critical_values_are_the_tabled_ones()
    {
        foreach (var row in CheckData.Rows("exact_friedman_critical.csv").Where(row => CheckData.Whole(row[0]) * CheckData.Whole(row[1]) <= 40))
        {
            var points = Friedman.NullDistribution(CheckData.Whole(row[0]), CheckData.Whole(row[1])).Value;
            var alpha = CheckData.Number(row[2]);
            var critical = points.FirstOrDefault(point => point.AtLeast <= alpha);
            Assert.Equal(CheckData.Optional(row[3]) is null, critical is null);
            if (critical is null) continue;
            Assert.Equal(CheckData.Number(row[3]), critical.Statistic, 1e-5);
            Assert.Equal(CheckData.Number(row[4]), critical.AtLeast, 1e-7);
        }
    }

    [Fact]
    public void Kendalls_W_of_four_judges_and_ten_projects()
    {
        // A teaching note prints sum D^2 = 1048.
        var set = CheckData.Inline([1, 3, 4, 5, 2, 8, 6, 7, 10, 9], [2, 1, 4, 5, 6, 3, 8, 7, 10, 9], [3, 2, 1, 5, 7, 4, 6, 8, 9, 10], [4, 2, 3, 1, 6, 7, 5, 9, 8, 10]);
        var result = Friedman.Test(set, Seed).Value;
        Assert.Equal(0.7939393939, result.KendallW, 1e-9);
        Assert.Equal(0.7252525253, result.MeanRankCorrelation!.Value, 1e-9);
        Assert.Equal(28.58181818, result.Statistic, 1e-7);
        Assert.Equal(0.0007620800685, result.ChiSquareP, 1e-9);
    }

    [Fact]
    public void Kendalls_W_of_the_small_arbitrary_example()
    {
        // ProofWiki, Kendall's Coefficient of Concordance, Arbitrary Example 1: 1/16.
        var result = Friedman.Test(CheckData.Inline([1, 3, 2], [1, 2, 3], [2, 3, 1], [3, 1, 2]), Seed).Value;
        Assert.Equal(1 / 16.0, result.KendallW, 1e-12);
        Assert.Equal(-0.25, result.MeanRankCorrelation!.Value, 1e-12);
    }

    [Fact]
    public void Kendalls_W_with_ties_on_twelve_birds()
    {
        // Zar (2010) Example 20.5, measurements from memory; the rank sums are those printed in the Unistat manual.
        var set = CheckData.Inline(
            [10.4, 10.8, 11.1, 10.2, 10.3, 10.2, 10.7, 10.5, 10.8, 11.2, 10.6, 11.4],
            [7.4, 7.6, 7.9, 7.2, 7.4, 7.1, 7.4, 7.2, 7.8, 7.7, 7.8, 8.3],
            [17, 17, 20, 14.5, 15.5, 13, 19.5, 16, 21, 20, 18, 22]);
        var result = Friedman.Test(set, Seed).Value;
        Assert.Equal(0.9133644134, result.UncorrectedW, 1e-9);
        Assert.Equal(0.9241352201, result.KendallW, 1e-9);
        Assert.Equal([14.5, 21, 30.5, 6, 11, 3.5, 20, 11.5, 29, 28.5, 22.5, 36], result.RankSums);
        Assert.Equal(0.001323545917, result.ChiSquareP, 1e-9);
    }

    private static RankingSet Data(string id)
    {
        double[][] Changed(params (int Row, int Column, double Value)[] changes)
        {
            var rows = TenPersons.Select(row => (double[])row.Clone()).ToArray();
            foreach (var (row, column, value) in changes) rows[row][column] = value;
            return rows;
        }

        return id switch
        {
            "F1" => CheckData.Scores("friedman_grass.csv"),
            "F2" => CheckData.Scores("friedman_rounding_first_base.csv"),
            "F3" => CheckData.Scores("friedman_diuretics.csv"),
            "F4" => CheckData.Scores("friedman_demsar_auc.csv", highestFirst: true),
            "F4b" => RankingSet.Create(CheckData.Rows("friedman_demsar_auc.csv").Select(row => CheckData.Rank(
                [.. row.Skip(1).Select((cell, column) => row[0] == "voting" && column == 2 ? 0.97501 : CheckData.Optional(cell))], highestFirst: true))),
            "F5" => CheckData.Scores("friedman_stuttering_adaptation.csv"),
            "F6" => CheckData.Scores("pl_salad_ranks.csv"),
            "F7" => CheckData.Inline(TenPersons),
            "F7b" => CheckData.Inline(Changed((0, 4, 273), (9, 2, 284))),
            "F8" => CheckData.Inline([1, 4, 3, 2], [2, 4, 3, 1], [1, 4, 2, 3], [1, 3, 4, 2], [1, 2, 4, 3]),
            "F9" => CheckData.Inline([1, 2, 3, 4], [1, 4, 2, 3], [4, 2, 1, 3], [3, 2, 4, 1], [1, 3, 4, 2]),
            "F10" => CheckData.Inline([1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 5, 6], [1, 2, 3, 4, 6, 5]),
            _ => throw new ArgumentOutOfRangeException(nameof(id)),
        };
    }
}
