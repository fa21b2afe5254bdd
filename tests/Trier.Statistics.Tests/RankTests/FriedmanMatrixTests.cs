using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.RankTests;

public sealed class FriedmanMatrixTests
{
    /// <summary>Checks F1, F2, F3, F5: R friedman.test and SciPy; F as printed beside them.</summary>
    [Theory]
    [InlineData("friedman_grass.csv", 8.097345133, 0.04404213782, 3.192197907, 0.03621547464)]
    [InlineData("friedman_rounding_first_base.csv", 11.14285714, 0.003805040776, 7.12173913, 0.002171298388)]
    [InlineData("friedman_diuretics.csv", 23.33333333, 0.0002914597502, 17.5, 1.855532e-7)]
    [InlineData("friedman_stuttering_adaptation.csv", 1.107692308, 0.5747350346, 0.5396825397, 0.5878442544)]
    public void A_table_gives_the_published_statistics(string file, double t1, double chiSquareP, double f, double fp)
    {
        var rows = CheckData.Rows(file).Select(row => row.Skip(1).Select(CheckData.Number).ToArray()).ToArray();
        var found = FriedmanMatrix.Of(rows.SelectMany(row => row).ToArray(), rows[0].Length).Value;
        Assert.Equal(t1, found.Statistic, 1e-6 * t1);
        Assert.Equal(chiSquareP, found.ChiSquareP, 1e-6);
        Assert.Equal(f, found.F, 1e-6 * f);
        Assert.Equal(fp, found.FP, 1e-6);
    }

    [Fact]
    public void A_table_agrees_with_the_ballots_test_whatever_the_ties()
    {
        var generator = new Seed(3).Generator();
        for (var round = 0; round < 40; round++)
        {
            var items = 2 + generator.NextInt(5);
            var rows = Enumerable.Range(0, 2 + generator.NextInt(9)).Select(_ => Enumerable.Range(0, items).Select(_ => (double)generator.NextInt(6)).ToArray()).ToArray();
            var slow = Friedman.Test(CheckData.Inline(rows), new Seed(1), new Effort(0, 1, 1, 0));
            var fast = FriedmanMatrix.Of(rows.SelectMany(row => row).ToArray(), items);
            Assert.Equal(slow.Stands, fast.Stands);
            if (!fast.Stands) continue;
            Assert.Equal(slow.Value.Statistic, fast.Value.Statistic, 9);
            Assert.Equal(slow.Value.ChiSquareP, fast.Value.ChiSquareP, 9);
            Assert.Equal(slow.Value.KendallW, fast.Value.KendallW, 9);
            Assert.Equal(slow.Value.RankSums, fast.Value.RankSums);
        }
    }

    [Fact]
    public void What_cannot_be_tested_is_refused()
    {
        Assert.Equal(RefusalKind.TooFewItems, FriedmanMatrix.Of([1, 2], 1).Refusal!.Kind);
        Assert.Equal(RefusalKind.TooFewBallots, FriedmanMatrix.Of([], 3).Refusal!.Kind);
        Assert.Equal(RefusalKind.NoInformation, FriedmanMatrix.Of([1, 1, 2, 2], 2).Refusal!.Kind);
        Assert.Throws<ArgumentException>(() => FriedmanMatrix.Of([1, 2, 3], 2));
        Assert.Throws<ArgumentException>(() => FriedmanMatrix.Of([1, double.NaN], 2));
    }
}
