using Trier.Statistics.Discrimination;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.Discrimination;

/// <summary>
/// Least correct answers agree with FAO document V7180E, Appendix A (triangle) and GOST ISO 10399-2015, Table A.1 (duo-trio); psychometric functions by two separate
/// computations; power of the last case printed in a statistics blog (Wiekvoet 2012).
/// </summary>
public sealed class DiscriminationTests
{
    private static readonly double[] Levels = [0.2, 0.1, 0.05, 0.01, 0.001];

    [Fact]
    public void Least_correct_answers_are_the_tabled_ones()
    {
        foreach (var row in CheckData.Rows("discrimination_min_correct.csv"))
        {
            var n = CheckData.Whole(row[0]);
            for (var level = 0; level < Levels.Length; level++)
            {
                Assert.Equal(CheckData.Optional(row[1 + level]), DiscriminationTest.LeastCorrect(Presentation.Triangle, n, Levels[level]));
                Assert.Equal(CheckData.Optional(row[6 + level]), DiscriminationTest.LeastCorrect(Presentation.DuoTrio, n, Levels[level]));
                Assert.Equal(CheckData.Optional(row[11 + level]), DiscriminationTest.LeastPreferring(n, Levels[level]));
            }
        }
    }

    [Fact]
    public void Psychometric_functions_hold()
    {
        foreach (var row in CheckData.Rows("discrimination_psychometric.csv"))
        {
            var d = CheckData.Number(row[0]);
            Assert.Equal(CheckData.Number(row[1]), DiscriminationTest.ChanceCorrect(Presentation.PairedDirectional, d), 1e-8);
            Assert.Equal(CheckData.Number(row[2]), DiscriminationTest.ChanceCorrect(Presentation.ThreeDirectional, d), 1e-8);
            Assert.Equal(CheckData.Number(row[3]), DiscriminationTest.ChanceCorrect(Presentation.Triangle, d), 1e-8);
            Assert.Equal(CheckData.Number(row[4]), DiscriminationTest.ChanceCorrect(Presentation.DuoTrio, d), 1e-8);
        }
    }

    [Theory]
    [InlineData(Presentation.Triangle, 25, 50, 1.46626, 0.37087)]
    [InlineData(Presentation.Triangle, 20, 40, 1.46626, 0.41465)]
    [InlineData(Presentation.Triangle, 45, 100, 1.19322, 0.28605)]
    [InlineData(Presentation.Triangle, 18, 30, 1.97559, 0.45385)]
    public void Distances_and_errors_hold(Presentation presentation, int correct, int answers, double distance, double error)
    {
        var found = DiscriminationTest.Distance(presentation, correct, answers).Value;
        Assert.Equal(distance, found.Distance, 1e-5);
        Assert.Equal(error, found.Error!.Value, 2e-5);
    }

    [Fact]
    public void P_and_power_hold()
    {
        Assert.Equal(0.01082668445, DiscriminationTest.P(Presentation.Triangle, 25, 50), 1e-10);
        Assert.Equal(0.01000508, DiscriminationTest.P(Presentation.Triangle, 45, 100), 1e-8);
        Assert.Equal(0.00245783, DiscriminationTest.P(Presentation.Triangle, 18, 30), 1e-8);
        Assert.Equal(0.902943, DiscriminationTest.Power(Presentation.Triangle, 30, 0.6, 0.05), 1e-6);
        Assert.Equal(0.983965, DiscriminationTest.Power(Presentation.Triangle, 50, 0.6, 0.05), 1e-6);
        Assert.Equal(0.572232, DiscriminationTest.Power(Presentation.Triangle, 30, 0.5, 0.05), 1e-6);
        (int Answers, int Least, double Size)[] sizes = [(20, 11, .037637), (30, 15, .043482), (50, 23, .042389), (35, 17, .0441991589)];
        foreach (var (answers, least, size) in sizes)
        {
            Assert.Equal(least, DiscriminationTest.LeastCorrect(Presentation.Triangle, answers, 0.05));
            Assert.Equal(size, DiscriminationTest.P(Presentation.Triangle, least, answers), 1e-6);
        }

        Assert.Equal(.35829, DiscriminationTest.Distance(Presentation.PairedDirectional, 18, 30).Value.Distance, 1e-5);
        Assert.Equal(0.755337, DiscriminationTest.Power(Presentation.Triangle, 20, 0.6, 0.05), 1e-6);
        Assert.Equal(0.8417315873, DiscriminationTest.Power(Presentation.Triangle, 35, (1 / 3.0) + (2 / 9.0), 0.05), 1e-9);
        Assert.Equal(1.11522, DiscriminationTest.Distance(Presentation.DuoTrio, 18, 30).Value.Distance, 1e-5);
        Assert.Equal(RefusalKind.Separated, DiscriminationTest.Distance(Presentation.Triangle, 5, 5).Refusal!.Kind);
    }

    [Fact]
    public void Panel_sizes_are_the_tabled_ones()
    {
        foreach (var row in CheckData.Rows("discrimination_sample_size.csv").Where(row => CheckData.Whole(row[5]) <= 250))
        {
            var presentation = row[0] == "triangle" ? Presentation.Triangle : Presentation.DuoTrio;
            var size = DiscriminationTest.PanelSize(presentation, CheckData.Number(row[1]), CheckData.Number(row[2]), 1 - CheckData.Number(row[3]), 320);
            Assert.Equal((CheckData.Whole(row[4]), CheckData.Whole(row[5])), size);
        }
    }
}
