using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;
using Trier.Statistics.Tests.Checks;

namespace Trier.Statistics.Tests.ChoiceModels;

public sealed class TwoClassesTests
{
    private static readonly Seed Seed = new(41);

    [Fact]
    public void Mirrored_camps_are_found_and_their_worths_with_them()
    {
        var set = Camps(60, 30);
        var fit = TwoClasses.Fit(set, Seed).Value;
        Assert.Equal(1, fit.Classes.Sum(one => one.Share), 1e-12);
        Assert.InRange(fit.Classes[0].Share, 0.5, 0.65);
        Assert.Equal(4, Math.Abs(Best(fit.Classes[0]) - Best(fit.Classes[1])));
        Assert.True(fit.LikelihoodRatio > 40, $"{fit.LikelihoodRatio}");
        var test = TwoClasses.Test(Camps(30, 30), Seed, panels: 199).Value;
        Assert.True(test.Parted, $"{test.P} {test.Fit.LikelihoodRatio}");
        Assert.InRange(test.Critical, 8, 22);

        static int Best(ChoiceClass one) => one.Worths.IndexOf(one.Worths.Max());
    }

    /// <summary>
    /// The method page gives 14.8 as the 95 % point at 5 items and 14 to 40 voices (simulated, 400 panels; chi-square's is 11.1). Panels drawn from one class of equals, 5 % of them above: the point of 200 panels has an error of about 1.
    /// </summary>
    [Fact]
    public void The_ratio_of_one_class_has_its_95_percent_point_near_15()
    {
        var ratios = new double[200];
        Parallel.For(0, ratios.Length, panel => ratios[panel] = TwoClasses.Fit(Camps(20, 1, new Seed(900).Child(panel)), Seed.Child(panel)).Value.LikelihoodRatio);
        Array.Sort(ratios);
        Assert.InRange(ratios[190], 12, 18);
    }

    /// <summary>The climb's log-likelihood is that of the ballots, by the separate ballot-by-ballot code, ties and joined voices among them.</summary>
    [Fact]
    public void The_log_likelihood_is_that_of_the_ballots()
    {
        var rows = Demo.Set(Demo.Wheels, joined: true, completeOnly: false).Rows.Add(new RankingRow(Ranking.FromPlaces([1, 1, 2, null, 2])));
        var set = RankingSet.Create(5, rows);
        var fit = TwoClasses.Fit(set, Seed).Value;
        double VoiceLog(RankingRow[] voice, IEnumerable<double> worths)
        {
            double[] logs = [.. worths.Select(worth => Math.Log(worth))];
            return voice.Average(row => OrderLikelihood.Of(RankingSet.Create([row.Ranking])).Value.Log(logs));
        }

        double one = 0, two = 0;
        foreach (var voice in Enumerable.Range(0, rows.Length).GroupBy(r => rows[r].Voice ?? -1 - r))
        {
            RankingRow[] members = [.. voice.Select(r => rows[r])];
            one += VoiceLog(members, fit.OneClass);
            two += Math.Log(fit.Classes.Sum(part => part.Share * Math.Exp(VoiceLog(members, part.Worths))));
        }

        Assert.Equal(one, fit.OneClassLogLikelihood, 1e-8);
        Assert.Equal(two, fit.LogLikelihood, 1e-6);
    }

    [Fact]
    public void Counts_are_ballots_written_out_and_the_same_seed_gives_the_same_bits()
    {
        var set = Camps(24, 5);
        var counted = RankingSet.Create(5, set.Rows.GroupBy(row => row.Ranking).Select(group => new RankingRow(group.Key, group.Count())));
        Assert.Equal(TwoClasses.Fit(set, Seed).Value.OneClassLogLikelihood, TwoClasses.Fit(counted, Seed).Value.OneClassLogLikelihood, 1e-8);
        Assert.Equal(TwoClasses.Test(set, Seed, panels: 9).Value.P, TwoClasses.Test(set, Seed, panels: 9).Value.P);
    }

    [Fact]
    public void Fewer_than_twenty_voices_are_refused_a_test()
    {
        var refusal = TwoClasses.Test(Camps(19, 9), Seed).Refusal!;
        Assert.Equal(RefusalKind.TooFewBallots, refusal.Kind);
        Assert.Equal("Camps by model need 20 voices; there are 19.", refusal.Sentence);
        Assert.Equal(RefusalKind.TooFewItems, TwoClasses.Fit(RankingSet.Create([Ranking.FromPlaces([1])]), Seed).Refusal!.Kind);
        Assert.Equal(RefusalKind.TooManyItems, TwoClasses.Fit(RankingSet.Create([Ranking.FromOrder(17, [1, 0])]), Seed).Refusal!.Kind);
        Assert.Equal(RefusalKind.TooFewBallots, TwoClasses.Fit(RankingSet.Create([Ranking.FromPlaces([1, 2])]), Seed).Refusal!.Kind);
    }

    /// <summary>Half the voices by worths falling geometrically from the ratio to 1, half by the mirror image.</summary>
    private static RankingSet Camps(int voices, double ratio, Seed? seed = null)
    {
        var generator = (seed ?? new Seed(6)).Generator();
        return RankingSet.Create(Enumerable.Range(0, voices).Select(voice =>
        {
            double[] keys = [.. Enumerable.Range(0, 5).Select(item => generator.NextExponential() / Math.Pow(ratio, (voice % 2 == 0 ? item : 4 - item) / 4.0))];
            return Ranking.FromPlaces([.. keys.Select(key => (double?)key)]);
        }));
    }
}
