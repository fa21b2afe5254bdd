using Trier.Statistics.Distributions;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.Distributions;

public sealed class StudentizedRangeTests
{
    /// <summary>
    /// R's ptukey from 20 degrees of freedom on. Below it is coarse (off by 1.3e-4 at 2: for two groups the range is Student's t, whose tail 1 - t/sqrt(2 + t^2) it misses), so plain trapezoids over the
    /// double integral are held there. Scripts in Checks/studentized_range.R and .py.
    /// </summary>
    [Theory]
    [InlineData("studentized_range.csv", 20, 5e-8)]
    [InlineData("studentized_range_few.csv", 2, 2e-9)]
    public void Tails_are_those_of_two_references(string file, double fewest, double tolerance)
    {
        var held = 0;
        foreach (var row in Rows(file, "tail").Where(row => Freedom(row[3]) >= fewest))
        {
            Assert.Equal(CheckData.Number(row[4]), StudentizedRange.UpperTail(CheckData.Number(row[1]), CheckData.Whole(row[2]), Freedom(row[3])), tolerance);
            held++;
        }

        Assert.True(held >= 324, $"{held}");
    }

    /// <summary>R's qtukey, which stops at 0.0001; here every quantile also has the tail asked for.</summary>
    [Fact]
    public void Quantiles_are_those_of_qtukey()
    {
        foreach (var row in Rows("studentized_range.csv", "quantile").Where(row => row[3] is "2" or "20" or "120" or "Inf"))
        {
            var (tail, groups, freedom) = (CheckData.Number(row[1]), CheckData.Whole(row[2]), Freedom(row[3]));
            var q = StudentizedRange.Quantile(tail, groups, freedom);
            Assert.Equal(1, StudentizedRange.UpperTail(q, groups, freedom) / tail, 1e-9);
            if (freedom >= 20) Assert.Equal(1, q / CheckData.Number(row[4]), 1e-4);
        }
    }

    /// <summary>The value any printed table gives for three groups and ten degrees of freedom.</summary>
    [Fact]
    public void The_printed_table_holds() => Assert.Equal(3.8768, StudentizedRange.Quantile(0.05, 3, 10), 5e-5);

    /// <summary>R's qtukey(1 - a, k, Inf)/sqrt(2); Demsar (2006) Table 5a prints three decimals, to which all agree within .001.</summary>
    [Fact]
    public void Known_deviations_hold_for_two_to_ten_groups()
    {
        double[] five = [1.959963985, 2.343700588, 2.569031777, 2.727774383, 2.849705443, 2.948320061, 3.030878523, 3.101730458, 3.163683754];
        double[] ten = [1.644853627, 2.052292731, 2.291341497, 2.459515764, 2.588520602, 2.692732101, 2.779883609, 2.854606432, 2.919888841];
        double[] printedFive = [1.960, 2.343, 2.569, 2.728, 2.850, 2.949, 3.031, 3.102, 3.164];
        double[] printedTen = [1.645, 2.052, 2.291, 2.459, 2.589, 2.693, 2.780, 2.855, 2.920];
        for (var k = 2; k <= 10; k++)
        {
            var (a, b) = (StudentizedRange.Quantile(0.05, k) / Math.Sqrt(2), StudentizedRange.Quantile(0.10, k) / Math.Sqrt(2));
            Assert.Equal(five[k - 2], a, 2e-7);
            Assert.Equal(ten[k - 2], b, 2e-7);
            Assert.Equal(printedFive[k - 2], a, 1e-3);
            Assert.Equal(printedTen[k - 2], b, 1e-3);
        }
    }

    /// <summary>The first two by 200,001 trapezoids (scipy's studentized_range.sf stops at an absolute error and is 6 % off on the first); the others by scipy.</summary>
    [Theory]
    [InlineData(10, 3, 1000, 8.6519693901343e-12)]
    [InlineData(10, 5, double.PositiveInfinity, 1.5373072529237e-11)]
    [InlineData(10, 20, 5, 0.021855030056447)]
    [InlineData(7, 5, 2, 0.11452616795898)]
    [InlineData(1, 2, 3, 0.53047777093296)]
    public void Small_tails_keep_their_digits(double q, int groups, double freedom, double tail) =>
        Assert.Equal(1, StudentizedRange.UpperTail(q, groups, freedom) / tail, 1e-5);

    [Fact]
    public void Two_groups_are_Students_t()
    {
        foreach (var freedom in new[] { 1.0, 4, 30 })
        {
            foreach (var t in new[] { 0.2, 1, 2.5 })
                Assert.Equal(Tails.StudentTwoSided(t, freedom), StudentizedRange.UpperTail(t * Math.Sqrt(2), 2, freedom), 1e-8);
        }
    }

    private static IEnumerable<string[]> Rows(string file, string kind) =>
        File.ReadLines(Path.Combine(TestKit.Checkout.Root, "tests", "Trier.Statistics.Tests", "Checks", file)).Select(line => line.Split(',')).Where(row => row[0] == kind);

    private static double Freedom(string cell) => cell == "Inf" ? double.PositiveInfinity : CheckData.Number(cell);
}
