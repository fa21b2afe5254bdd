using System.Collections.Immutable;
using Trier.Statistics.Ratings;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.Ratings;

/// <summary>Section 14 of the check values. Estimates to 1e-5, errors to 1e-4 relative, statistics to 1e-6.</summary>
public sealed class ProportionalOddsTests
{
    /// <summary>McCullagh and Nelder (1989) p. 175. ordinal's clm, MASS's polr and statsmodels agree; the expected-information errors are those SAS prints. Here an effect above 0 means liked more, so the signs are turned.</summary>
    [Fact]
    public void Cheese_additives_hold()
    {
        var fit = ProportionalOdds.Fit(Additives()).Value;
        (double Value, double Observed, double Expected)[] thresholds =
        [
            (-7.0801661, 0.5640101, 0.5624029), (-6.0249800, 0.4764311, 0.4754991), (-4.9254155, 0.4256513, 0.4271719), (-3.8568014, 0.3880216, 0.3901763),
            (-2.5205516, 0.3452682, 0.3430949), (-1.5685382, 0.3122077, 0.3085790), (-0.0668752, 0.2738191, 0.2657817), (1.4929743, 0.3356956, 0.3310026),
        ];
        (double Value, double Observed, double Expected)[] effects =
            [(-1.6127909, 0.3805437, 0.3777761), (-4.9646400, 0.4767205, 0.4741252), (-3.3226828, 0.4218302, 0.4251000)];
        Assert.Equal(8, fit.Thresholds.Length);
        for (var j = 0; j < 8; j++) Hold(thresholds[j], fit.Thresholds[j]);
        for (var p = 0; p < 3; p++) Hold(effects[p], fit.Effects[p]);
        Assert.Equal(-355.673952, fit.LogLikelihood, 1e-5);
        Assert.Equal(-429.900902, fit.NullLogLikelihood, 1e-5);
        Assert.Equal(733.347905, fit.Aic, 1e-5);
        Assert.Equal(770.060824, fit.Bic, 1e-5);
        Assert.Equal(148.453899, fit.LikelihoodRatio.Statistic, 1e-5);
        Assert.Equal(3, fit.LikelihoodRatio.DegreesOfFreedom);
        Assert.True(fit.LargestResidual < 1e-6);
        double[] odds = [5.0167931, 143.256962, 27.7346567];
        for (var p = 0; p < 3; p++) Assert.Equal(odds[p], Math.Exp(-fit.Effects[p].Value), 1e-5 * odds[p]);
        Assert.Equal(0.0350195412, Math.Exp(fit.Effects[1].Value - fit.Effects[0].Value), 1e-6);
    }

    /// <summary>Score and Wald tests: both informations are right, and say which. SAS prints the observed-information score test of proportional odds (17.2866) and stops its Wald figure early (115.1504); both from memory.</summary>
    [Fact]
    public void Cheese_additives_tests_hold()
    {
        var table = Additives();
        Assert.Equal(111.266967, RatingTests.NoEffect(table).Value.Statistic, 1e-5);
        Assert.Equal(3, RatingTests.NoEffect(table).Value.DegreesOfFreedom);
        Assert.Equal(115.152886, RatingTests.Wald(table, InformationKind.Expected).Value.Statistic, 1e-5);
        Assert.Equal(114.32582, RatingTests.Wald(table, InformationKind.Observed).Value.Statistic, 1e-4);
        var expected = RatingTests.SameAtEveryCut(table, InformationKind.Expected).Value;
        Assert.Equal(20.9379359, expected.Statistic, 1e-5);
        Assert.Equal(21, expected.DegreesOfFreedom);
        Assert.Equal(0.46274012, expected.P, 1e-6);
        var observed = RatingTests.SameAtEveryCut(table, InformationKind.Observed).Value;
        Assert.Equal(17.286815, observed.Statistic, 1e-5);
        Assert.Equal(0.69358007, observed.P, 1e-6);
        var (deviance, pearson) = RatingTests.GoodnessOfFit(table, ProportionalOdds.Fit(table).Value);
        Assert.Equal(20.3081921, deviance.Statistic, 1e-5);
        Assert.Equal(expected.Statistic, pearson.Statistic, 1e-6);
        Assert.Equal(21, pearson.DegreesOfFreedom);
    }

    [Theory]
    [InlineData(0, 6.25, ".004205 .007779 .023157 .060727 .191591 .223603 .313262 .132807 .042870")]
    [InlineData(1, 3.5, ".107597 .149648 .252560 .241921 .168402 .047454 .025010 .005842 .001566")]
    [InlineData(2, 4.86538462, ".022810 .040028 .104762 .201957 .320873 .162045 .110406 .029082 .008037")]
    [InlineData(3, 7.42307692, ".000841 .001571 .004796 .013491 .053732 .097995 .310863 .333237 .183476")]
    public void Cheese_additives_chances_hold(int additive, double mean, string chances)
    {
        var found = ProportionalOdds.Fit(Additives()).Value.Chances(Additive(additive + 1).AsSpan());
        var expected = chances.Split(' ').Select(CheckData.Number).ToArray();
        for (var c = 0; c < 9; c++) Assert.Equal(expected[c], found[c], 6e-7);
        Assert.Equal(1, found.Sum(), 1e-12);
        var rows = CheckData.Rows("ordinal_cheese_additives.csv").Where(row => CheckData.Whole(row[0]) == additive + 1).ToArray();
        Assert.Equal(mean, rows.Sum(row => CheckData.Number(row[1]) * CheckData.Number(row[2])) / 52, 1e-8);
    }

    /// <summary>Randall (1989); Christensen's vignette prints 2.5031 (.5287), 1.5278 (.4766), -86.49, LR 26.928 and 11.043, tests of proportional odds 3.1750 and 0.5667.</summary>
    [Fact]
    public void Wine_bitterness_holds()
    {
        var fit = ProportionalOdds.Fit(Wine(true, true)).Value;
        (double Value, double Error)[] thresholds = [(-1.344383, .517102), (1.250809, .437880), (3.466887, .597760), (5.006404, .730906)];
        for (var j = 0; j < 4; j++) Hold(thresholds[j], fit.Thresholds[j]);
        Hold((2.503102, .528680), fit.Effects[0]);
        Hold((1.527798, .476623), fit.Effects[1]);
        Assert.Equal(-86.4919234, fit.LogLikelihood, 1e-6);
        Assert.Equal(184.983847, fit.Aic, 1e-5);
        Assert.Equal(26.9279751, fit.Against(ProportionalOdds.Fit(Wine(false, true)).Value).Statistic, 1e-5);
        Assert.Equal(11.0430043, fit.Against(ProportionalOdds.Fit(Wine(true, false)).Value).Statistic, 1e-5);
        var crossed = ProportionalOdds.Fit(Wine(true, true, crossed: true)).Value.Against(fit);
        Assert.Equal(0.15145, crossed.Statistic, 1e-4);
        Assert.Equal(0.69716, crossed.P, 1e-4);
    }

    [Fact]
    public void Wine_tests_of_proportional_odds_and_profile_intervals_hold()
    {
        var table = Wine(true, true);
        var temperature = RatingTests.SameAtEveryCut(table, 0).Value;
        Assert.Equal(3.1749771, temperature.Statistic, 1e-5);
        Assert.Equal(3, temperature.DegreesOfFreedom);
        Assert.Equal(0.365425944, temperature.P, 1e-6);
        var contact = RatingTests.SameAtEveryCut(table, 1).Value;
        Assert.Equal(0.566740268, contact.Statistic, 1e-5);
        Assert.Equal(0.90400239, contact.P, 1e-6);
        var first = ProportionalOdds.ProfileInterval(table, 0).Value;
        Assert.Equal(1.509763, first.Low, 5e-5);
        Assert.Equal(3.595225, first.High, 5e-5);
        var second = ProportionalOdds.ProfileInterval(table, 1).Value;
        Assert.Equal(.615792, second.Low, 5e-5);
        Assert.Equal(2.492404, second.High, 5e-5);
        var probit = ProportionalOdds.Fit(table, CumulativeLink.Probit).Value;
        Hold((1.499375, .291790), probit.Effects[0]);
        Hold((.867744, .266907), probit.Effects[1]);
        Assert.Equal(-85.7611484, probit.LogLikelihood, 1e-6);
    }

    [Fact]
    public void Soup_holds()
    {
        var table = RatingTable.Create(CheckData.Rows("real_ratings_soup.csv").Select(row => new RatingRow([row[1] == "Test" ? 1 : 0], CheckData.Whole(row[3]))));
        var fit = ProportionalOdds.Fit(table).Value;
        Assert.Equal(1847, table.Count);
        int[] Counts(string product) => [.. Enumerable.Range(1, 6).Select(sureness => CheckData.Rows("real_ratings_soup.csv").Count(row => row[1] == product && CheckData.Whole(row[3]) == sureness))];
        Assert.Equal([132, 161, 65, 41, 121, 219], Counts("Ref"));
        Assert.Equal([96, 99, 50, 57, 156, 650], Counts("Test"));
        Hold((1.144436281, .0892803372), fit.Effects[0]);
        double[] thresholds = [-1.405004413, -.424742564, -.101266349, .150775652, .812553776];
        for (var j = 0; j < 5; j++) Assert.Equal(thresholds[j], fit.Thresholds[j].Value, 1e-5);
        Assert.Equal(-2690.33203, fit.LogLikelihood, 1e-4);
    }

    /// <summary>With two ratings and a factor the model is a two-by-two table: the effect is the log of its odds ratio, the error the root of the summed reciprocals.</summary>
    [Fact]
    public void Two_ratings_are_an_odds_ratio()
    {
        var fit = ProportionalOdds.Fit(RatingTable.Create([new([0], 0, 12), new([0], 1, 5), new([1], 0, 7), new([1], 1, 9)])).Value;
        Assert.Equal(Math.Log(12.0 * 9 / (5 * 7)), fit.Effects[0].Value, 1e-8);
        Assert.Equal(Math.Sqrt((1 / 12.0) + (1 / 5.0) + (1 / 7.0) + (1 / 9.0)), fit.Effects[0].ObservedError, 1e-8);
        Assert.Equal(fit.Effects[0].ObservedError, fit.Effects[0].ExpectedError, 1e-8);
    }

    [Fact]
    public void Turning_the_scale_round_turns_the_signs()
    {
        var fit = ProportionalOdds.Fit(Wine(true, true)).Value;
        var turned = ProportionalOdds.Fit(RatingTable.Create(WineRows(true, true).Select(row => row with { Rating = -row.Rating }))).Value;
        Assert.Equal(fit.LogLikelihood, turned.LogLikelihood, 1e-9);
        for (var j = 0; j < 4; j++) Assert.Equal(fit.Thresholds[j].Value, -turned.Thresholds[3 - j].Value, 1e-7);
        Assert.Equal(fit.Effects[1].Value, -turned.Effects[1].Value, 1e-7);
    }

    [Fact]
    public void What_cannot_be_fitted_is_refused_with_a_reason()
    {
        static RefusalKind Refused(params RatingRow[] rows) => ProportionalOdds.Fit(RatingTable.Create(rows)).Refusal!.Kind;
        Assert.Equal(RefusalKind.TooFewBallots, Refused());
        Assert.Equal(RefusalKind.NoInformation, Refused(new([0], 3), new([1], 3)));
        Assert.Equal(RefusalKind.WrongDesign, Refused(new([1], 3), new([1], 4)));
        Assert.Equal(RefusalKind.Separated, Refused(new([0], 1, 4), new([0], 2, 3), new([1], 3, 5)));
        Assert.Equal(RefusalKind.Separated, Refused(new([0], 1, 4), new([1], 2, 5)));
        Assert.Throws<ArgumentException>(() => RatingTable.Create([new([double.NaN], 1)]));
        Assert.Throws<ArgumentException>(() => RatingTable.Create([new([0], 1, 0)]));
    }

    internal static RatingTable Additives() => RatingTable.Create(CheckData.Rows("ordinal_cheese_additives.csv")
        .Where(row => CheckData.Number(row[2]) > 0)
        .Select(row => new RatingRow(Additive(CheckData.Whole(row[0])), CheckData.Whole(row[1]), CheckData.Number(row[2]))));

    private static ImmutableArray<double> Additive(int number) => [number == 1 ? 1 : 0, number == 2 ? 1 : 0, number == 3 ? 1 : 0];

    private static RatingTable Wine(bool temperature, bool contact, bool crossed = false) => RatingTable.Create(WineRows(temperature, contact, crossed));

    private static IEnumerable<RatingRow> WineRows(bool temperature, bool contact, bool crossed = false) =>
        CheckData.Rows("ordinal_wine_bitterness.csv").Select(row =>
        {
            var (warm, yes) = (row[2] == "warm" ? 1.0 : 0, row[3] == "yes" ? 1.0 : 0);
            return new RatingRow([.. temperature ? [warm] : Array.Empty<double>(), .. contact ? [yes] : Array.Empty<double>(), .. crossed ? [warm * yes] : Array.Empty<double>()], CheckData.Whole(row[1]));
        });

    private static void Hold((double Value, double Observed, double Expected) held, RatingEstimate found)
    {
        Hold((held.Value, held.Observed), found);
        Assert.Equal(held.Expected, found.ExpectedError, 1e-4 * held.Expected);
    }

    private static void Hold((double Value, double Observed) held, RatingEstimate found)
    {
        Assert.Equal(held.Value, found.Value, 1e-5);
        Assert.Equal(held.Observed, found.ObservedError, 1e-4 * held.Observed);
    }
}
