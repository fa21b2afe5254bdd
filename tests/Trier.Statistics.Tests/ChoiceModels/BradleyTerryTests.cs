using System.Collections.Immutable;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Rankings;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.ChoiceModels;

/// <summary>Sections 10, 11 and 18 of the check values. Estimates to 1e-5, errors to 1e-4 relative.</summary>
public sealed class BradleyTerryTests
{
    /// <summary>Stigler (1994) in Agresti (2002) p. 448; Turner and Firth's vignette prints -2.9491, -0.4796, 0.2690, deviance 4.293, AIC 46.39. BTm and glm agree to 9 digits.</summary>
    [Fact]
    public void Citations_hold()
    {
        var fit = BradleyTerry.Fit(4, Citations()).Value;
        Hold(fit, [0, -2.949072497, -0.479569770, 0.268954056], [0, .1025453354, .0605887292, .0708299651]);
        Assert.Equal(4.29338397, fit.Deviance, 1e-6);
        Assert.Equal(3, fit.DegreesOfFreedom);
        Assert.Equal(1925.23285, fit.NullDeviance, 1e-4);
        Assert.Equal(-20.1969403, fit.LogLikelihoodOfCounts, 1e-6);
        Assert.Equal(46.39, fit.Aic, 5e-3);
        double[] worths = [0.335566758, 0.0175797632, 0.20773249, 0.439120988];
        for (var i = 0; i < 4; i++) Assert.Equal(worths[i], fit.Worths[i], 1e-7);
        (int A, int B, double Value)[] covariance = [(1, 1, .01051554581), (2, 2, .00367099411), (3, 3, .00501688396), (1, 2, .00227454712), (1, 3, .00146041940), (2, 3, .00168355768)];
        foreach (var (a, b, value) in covariance) Assert.Equal(value, fit.Covariance[a, b], 1e-9);
        Assert.Null(fit.LogTie);
        Assert.True(fit.LargestResidual < 1e-5);
    }

    /// <summary>Agresti (1990, 2002), American League 1987; BTm and glm agree to 9 digits.</summary>
    [Fact]
    public void Baseball_holds_without_and_with_the_home_effect()
    {
        string[] teams = ["Baltimore", "Boston", "Cleveland", "Detroit", "Milwaukee", "New_York", "Toronto"];
        ImmutableArray<PairCount> games =
        [
            .. CheckData.Rows("bt_baseball_1987.csv").Select(row => new PairCount(
                Array.IndexOf(teams, row[0]), Array.IndexOf(teams, row[1]), CheckData.Number(row[2]), CheckData.Number(row[3]))),
        ];
        var plain = BradleyTerry.Fit(7, games).Value;
        Hold(
            plain, [0, 1.107697705, .683852769, 1.436408432, 1.581355877, 1.247617845, 1.294485124],
            [0, .333877908, .331876399, .339568187, .343255664, .335860616, .336669093]);
        Assert.Equal(44.0534612, plain.Deviance, 1e-6);
        Assert.Equal(36, plain.DegreesOfFreedom);
        Assert.Equal(140.518601, plain.Aic, 1e-5);
        var home = BradleyTerry.Fit(7, games, orderEffect: true).Value;
        Hold(
            home, [0, 1.143802653, .704694457, 1.475357214, 1.619554994, 1.281340403, 1.327110398],
            [0, .337842189, .335001403, .344551823, .347365306, .340403359, .340322209]);
        Assert.Equal(.302260656, home.OrderEffect!.Value, 1e-6);
        Assert.Equal(.130943643, home.OrderEffect.Error, 1e-6);
        Assert.Equal(38.6428521, home.Deviance, 1e-6);
        Assert.Equal(35, home.DegreesOfFreedom);
        Assert.Equal(137.107992, home.Aic, 1e-5);
    }

    /// <summary>Bradley and Terry (1952), two judges pooled.</summary>
    [Fact]
    public void Pork_holds()
    {
        string[] names = ["C", "Cp", "CP"];
        var rows = CheckData.Rows("bt_pork_1952.csv").Where(row => row[0] != row[1]).Select(row => new PairCount(
            Array.IndexOf(names, row[0]), Array.IndexOf(names, row[1]), CheckData.Number(row[2]), 0));
        var fit = BradleyTerry.Fit(3, [.. rows]).Value;
        Hold(fit, [0, 0.543081277, 0.271540638], [0, .530625185, .523545740]);
        double[] worths = [.247936751, .426774152, .325289097];
        for (var i = 0; i < 3; i++) Assert.Equal(worths[i], fit.Worths[i], 1e-7);

        // One row a winner here, so each row fits itself; the deviance of the pairs is that of the pooled rows.
        var pooled = BradleyTerry.Fit(3, [.. Pooled(rows)]).Value;
        Assert.Equal(0.56933314, pooled.Deviance, 1e-7);
        Assert.Equal(1, pooled.DegreesOfFreedom);
    }

    /// <summary>Springall (1973), nine samples, ties split half and half.</summary>
    [Fact]
    public void Springall_holds_with_ties_halved()
    {
        ImmutableArray<PairCount> rows =
        [
            .. CheckData.Rows("bt_springall_contests.csv").Select(row => new PairCount(
                CheckData.Whole(row[0]) - 1, CheckData.Whole(row[1]) - 1, CheckData.Number(row[2]), CheckData.Number(row[3]), CheckData.Number(row[4]))),
        ];
        foreach (var row in CheckData.Rows("bt_springall_contests.csv"))
            Assert.Equal(CheckData.Number(row[2]) + (CheckData.Number(row[4]) / 2), CheckData.Number(row[5]));

        // The check values stand for "column over row": of two items the second's worth over the first's.
        var fit = BradleyTerry.Fit(9, rows, TieModel.Halves).Value;
        double[] values = [0, -1.539784843, -2.223691009, -.269573467, -1.284542101, -1.923778954, .862258588, .002749287, -.412568899];
        double[] errors = [0, .228712257, .251900640, .214762993, .224468423, .239505709, .239792244, .218161930, .214240373];
        for (var i = 0; i < 9; i++)
        {
            Assert.Equal(values[i], -fit.LogWorths[i], 1e-5);
            Assert.Equal(errors[i], fit.StandardErrors[i], 1e-4 * Math.Max(errors[i], 1e-3));
        }

        Assert.Equal(14.4154266, fit.Deviance, 1e-6);
        Assert.Equal(28, fit.DegreesOfFreedom);
    }

    /// <summary>psychotools' btmodel on 192 people and six parties, all pairs.</summary>
    [Fact]
    public void German_parties_hold()
    {
        string[] names = ["none", "Linke", "Gruene", "SPD", "CDU/CSU", "FDP"];
        var fit = BradleyTerry.Fit(RankingSet.Create(PairedAnswers("real_paired_german_parties.csv", names))).Value;
        Hold(fit, [0, -0.240508, 1.561317, 1.188660, .551182, .375562], [0, .091340, .097806, .093222, .089271, .089015]);
        Assert.Equal(-1716.8073, fit.LogLikelihood, 1e-3);
    }

    /// <summary>Davidson (1970) Example 2. His printed worths are those of seven iterations; the maximum, by BFGS and a log-linear glm, is held here.</summary>
    [Fact]
    public void Pudding_with_ties_holds()
    {
        ImmutableArray<PairCount> rows =
        [
            .. CheckData.Rows("davidson_pudding.csv").Select(row => new PairCount(
                CheckData.Whole(row[0]) - 1, CheckData.Whole(row[1]) - 1, CheckData.Number(row[3]), CheckData.Number(row[4]), CheckData.Number(row[5]))),
        ];
        var fit = BradleyTerry.Fit(6, rows).Value;
        Hold(fit, [0, 0.2202419, 0.1529777, 0.1751449, 0.1338652, 0.3771349], [0, .1872170, .1935184, .1882111, .1927046, .1924062]);
        Assert.Equal(-0.2919271, fit.LogTie!.Value, 1e-6);
        Assert.Equal(0.0824987, fit.LogTie.Error, 1e-6);
        Assert.Equal(0.7468230, Math.Exp(fit.LogTie.Value), 1e-6);
        double[] worths = [0.1388034, 0.1730015, 0.1617474, 0.1653730, 0.1586854, 0.2023893];
        for (var i = 0; i < 6; i++) Assert.Equal(worths[i], fit.Worths[i], 1e-6);
        Assert.Equal(-809.70951, fit.LogLikelihood, 1e-4);
        Assert.Equal(15.7704058, fit.Deviance, 1e-6);
        Assert.Equal(24, fit.DegreesOfFreedom);
    }

    /// <summary>Dittrich, Hatzinger and Katzenbeisser (1998); psychotools' btmodel with undecided answers is identical to 8 digits.</summary>
    [Fact]
    public void Schools_with_undecided_students_hold()
    {
        string[] names = ["London", "Paris", "Milano", "StGallen", "Barcelona", "Stockholm"];
        var fit = BradleyTerry.Fit(RankingSet.Create(PairedAnswers("real_paired_cems.csv", names))).Value;
        Hold(
            fit, [0, -0.79026812, -1.38082982, -1.22447989, -1.20986951, -1.82280198],
            [0, .079241961, .081180328, .079418663, .079360369, .083144890]);
        Assert.Equal(-1.31717973, fit.LogTie!.Value, 1e-6);
        Assert.Equal(.048508314, fit.LogTie.Error, 1e-6);
        Assert.Equal(77.282244, fit.Deviance, 1e-5);
        Assert.Equal(24, fit.DegreesOfFreedom);
    }

    /// <summary>One pair a person; how often the first and the second shown was preferred, as the check values list it: they count the answers 1 and -1, not 2 and -2.</summary>
    [Theory]
    [InlineData(1, 16, 17)]
    [InlineData(2, 17, 9)]
    [InlineData(3, 16, 10)]
    [InlineData(4, 25, 13)]
    [InlineData(5, 14, 10)]
    [InlineData(6, 14, 8)]
    public void Wine_by_ambient_light_counts_as_listed(int column, int first, int second)
    {
        var answers = CheckData.Rows("real_paired_ambient_light_wine.csv").Select(row => CheckData.Optional(row[column])).OfType<double>().ToArray();
        Assert.Equal((first, second), (answers.Count(answer => answer.Equals(1)), answers.Count(answer => answer.Equals(-1))));
    }

    [Fact]
    public void Two_item_ballots_give_what_Plackett_and_Luce_give()
    {
        string[] names = ["none", "Linke", "Gruene", "SPD", "CDU/CSU", "FDP"];
        var set = RankingSet.Create(PairedAnswers("real_paired_german_parties.csv", names));
        var (pairs, orders) = (BradleyTerry.Fit(set).Value, PlackettLuce.Fit(set).Value);
        for (var i = 0; i < 6; i++)
        {
            Assert.Equal(orders.LogWorths[i], pairs.LogWorths[i], 1e-8);
            Assert.Equal(orders.StandardErrors[i], pairs.StandardErrors[i], 1e-8);
        }
    }

    [Fact]
    public void What_has_no_finite_estimate_is_refused_with_a_reason()
    {
        Assert.Equal(RefusalKind.Disconnected, BradleyTerry.Fit(4, [new(0, 1, 1, 1), new(2, 3, 1, 1)]).Refusal!.Kind);
        Assert.Equal(RefusalKind.Separated, BradleyTerry.Fit(3, [new(0, 1, 3, 2), new(1, 2, 4, 0)]).Refusal!.Kind);
        Assert.Equal(RefusalKind.NoInformation, BradleyTerry.Fit(2, [new(0, 1, 0, 0, 5)]).Refusal!.Kind);
        Assert.Equal(RefusalKind.TooFewBallots, BradleyTerry.Fit(2, [new(0, 1, 0, 0)]).Refusal!.Kind);
        Assert.Equal(RefusalKind.TooFewItems, BradleyTerry.Fit(1, []).Refusal!.Kind);

        // One item wins or ties and never loses: worth and tie parameter grow together for ever.
        Assert.Equal(RefusalKind.Separated, BradleyTerry.Fit(2, [new(0, 1, 5, 0, 5)]).Refusal!.Kind);
        Assert.True(BradleyTerry.Fit(2, [new(0, 1, 5, 1, 5)]).Stands);

        // Whoever is shown first always wins.
        Assert.Equal(RefusalKind.Separated, BradleyTerry.Fit(2, [new(0, 1, 3, 0), new(1, 0, 3, 0)], orderEffect: true).Refusal!.Kind);
        Assert.Equal(RefusalKind.Separated, BradleyTerry.Fit(2, [new(0, 1, 3, 0), new(1, 0, 3, 0)], orderEffect: true, ghosts: 0.1).Refusal!.Kind);
        Assert.True(BradleyTerry.Fit(3, [new(0, 1, 3, 2), new(1, 2, 4, 0)], ghosts: 0.1).Stands);
        Assert.Equal(RefusalKind.WrongDesign, BradleyTerry.Fit(RankingSet.Create([Ranking.FromPlaces([1, 2, 3])])).Refusal!.Kind);
        Assert.Throws<ArgumentException>(() => BradleyTerry.Fit(2, [new(0, 0, 1, 1)]));
        Assert.Throws<ArgumentException>(() => BradleyTerry.Fit(2, [new(0, 1, double.NaN, 1)]));
    }

    /// <summary>R's qvcalc; script and print-out in Checks/choice_models.R and .txt.</summary>
    [Fact]
    public void Quasi_variances_hold()
    {
        var fit = BradleyTerry.Fit(4, Citations()).Value;
        var found = fit.Covariance.QuasiVariances().Value;
        var recorded = Recorded.Of("choice_models.txt");
        for (var i = 0; i < 4; i++) Assert.Equal(recorded[$"citations qv {i}"], found.Values[i], 1e-8);
        Assert.Equal(recorded["citations qv least error"], found.WorstTooSmall, 1e-6);
        Assert.Equal(recorded["citations qv most error"], found.WorstTooLarge, 1e-6);
        Assert.Equal(RefusalKind.TooFewItems, BradleyTerry.Fit(2, [new(0, 1, 3, 2)]).Value.Covariance.QuasiVariances().Refusal!.Kind);
    }

    private static ImmutableArray<PairCount> Citations()
    {
        string[] names = ["Biometrika", "Comm_Statist", "JASA", "JRSS-B"];
        return
        [
            .. CheckData.Rows("bt_citations.csv").Select(row => new PairCount(
                Array.IndexOf(names, row[0]), Array.IndexOf(names, row[1]), CheckData.Number(row[2]), CheckData.Number(row[3]))),
        ];
    }

    private static IEnumerable<PairCount> Pooled(IEnumerable<PairCount> rows) =>
        rows.GroupBy(row => (Math.Min(row.First, row.Second), Math.Max(row.First, row.Second))).Select(pair => new PairCount(
            pair.Key.Item1, pair.Key.Item2, pair.Where(row => row.First == pair.Key.Item1).Sum(row => row.FirstWins), pair.Where(row => row.First == pair.Key.Item2).Sum(row => row.FirstWins)));

    /// <summary>Pairs in the order 01 02 12 03 13 23 ...; 1 the first, -1 the second, 0 undecided, empty missing.</summary>
    private static IEnumerable<Ranking> PairedAnswers(string file, string[] names)
    {
        (int A, int B)[] pairs = [.. from b in Enumerable.Range(1, names.Length - 1) from a in Enumerable.Range(0, b) select (a, b)];
        foreach (var row in CheckData.Rows(file))
        {
            for (var pair = 0; pair < pairs.Length; pair++)
            {
                if (CheckData.Optional(row[pair + 1]) is not { } answer) continue;
                var (a, b) = pairs[pair];
                yield return Ranking.Create(names.Length, answer > 0 ? [[a], [b]] : answer < 0 ? [[b], [a]] : [[a, b]]);
            }
        }
    }

    private static void Hold(BradleyTerryFit fit, double[] worths, double[] errors)
    {
        for (var i = 0; i < worths.Length; i++)
        {
            Assert.Equal(worths[i], fit.LogWorths[i], 1e-5);
            Assert.Equal(errors[i], fit.StandardErrors[i], 1e-4 * Math.Max(errors[i], 1e-3));
        }
    }
}
