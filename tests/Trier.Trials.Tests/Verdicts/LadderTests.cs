using System.Collections.Immutable;
using System.Globalization;
using Trier.Statistics.Randomness;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Tests.Verdicts;

/// <summary>Levels worked out by hand: a sign-flip p of n agreeing voices is 2 over 2 to the n, Shaffer's first step of three wheels is 0.05.</summary>
public class LadderTests
{
    private static readonly Seed Seed = new(417);

    [Theory]
    [InlineData(NothingToTest.TooFewVoices, "ABC")]
    [InlineData(NothingToTest.TooFewVoices, "ABC", "ABC", "ABC")]
    [InlineData(NothingToTest.TooFewVoices, "", "", "", "", "")]
    [InlineData(NothingToTest.AllTied, "A=B=C", "A=B=C", "A=B=C", "A=B=C", "A=B=C")]
    [InlineData(NothingToTest.AllTied, "A=B=C")]
    [InlineData(NothingToTest.Pieces, "AB", "AB", "BA", "AB", "BA")]
    public void Level_0_says_why_nothing_can_be_tested(NothingToTest reason, params string[] ballots)
    {
        var verdict = Judge.Of(Panels.Of("ABC", ballots), Seed);
        Assert.Equal(0, verdict.Level.Level);
        Assert.Equal(reason, verdict.Level.Reason);
        Assert.Null(verdict.Gate);
        Assert.Empty(verdict.Pairs);
        Assert.Equal(3, verdict.Tally.Length);
        Assert.Single(verdict.Words.Top, s => s.Contains("nothing can be tested", StringComparison.Ordinal));
    }

    [Fact]
    public void One_wheel_or_none_left_gives_level_0()
    {
        Assert.Equal(NothingToTest.TooFewWheels, Judge.Of(Panels.Of("A", "A", "A", "A", "A"), Seed).Level.Reason);
        Assert.Equal(0, Judge.Of(Panels.Of("", "", ""), Seed).Level.Level);
        Assert.Equal(0, Judge.Of(Panels.Of("", "", "").By(new CountingRule.MeanLiking()), Seed).Level.Level);
    }

    [Fact]
    public void Wheels_that_nobody_compared_are_named_as_pieces()
    {
        var verdict = Judge.Of(Panels.Of("ABCD", "AB", "CD", "BA", "DC", "AB"), Seed);
        Assert.Equal([["WA", "WB"], ["WC", "WD"]], verdict.Level.Pieces.Select(p => p.ToArray()));
        Assert.Equal("No ballot compares Wheel A and Wheel B with Wheel C and Wheel D, so nothing can be tested across them; here are the counts.", verdict.Words.Top[0]);
    }

    [Fact]
    public void Level_1_leaves_a_tie_a_tie()
    {
        var verdict = Judge.Of(Panels.Of("ABC", "ABC", "BCA", "CAB", "ABC", "BCA", "CAB"), Seed);
        Assert.Equal(1, verdict.Level.Level);
        Assert.Equal(["WA", "WB", "WC"], verdict.Leaders);
        Assert.Equal("Wheel A, Wheel B and Wheel C share the best average place, and we leave it a tie.", verdict.Words.Top[0]);

        // 7.8 to 12.7 % in the ladder's simulations at eight to twenty-four voices; six voices tie a little more often.
        Assert.InRange(verdict.Gate!.TieLuck!.Value, 0.08, 0.25);
    }

    [Fact]
    public void Level_2_says_that_nobody_should_call_the_leader_better()
    {
        var verdict = Judge.Of(Panels.Of("ABC", "ABC", "ABC", "ABC", "CBA", "BAC"), Seed);
        Assert.Equal(2, verdict.Level.Level);
        Assert.StartsWith("Wheel A is the best guess we have", verdict.Words.Top[0], StringComparison.Ordinal);
        Assert.EndsWith("nobody should call Wheel A better.", verdict.Words.Top[2], StringComparison.Ordinal);
    }

    [Fact]
    public void Level_4_where_two_lead_alike_over_a_third()
    {
        // A over C and B over C on 8 of 8 ballots: 2/256 each, shown at 0.05/1.
        var verdict = Judge.Of(Panels.Of("ABC", "ABC", "BAC", "BAC", "ABC", "ABC", "BAC", "BAC", "BAC"), Seed);
        Assert.Equal(["WB"], verdict.Leaders);
        var tied = Judge.Of(Panels.Of("ABC", "ABC", "ABC", "BAC", "BAC", "ABC", "ABC", "BAC", "BAC"), Seed);
        Assert.Equal(4, tied.Level.Level);
        Assert.Equal(["WA", "WB"], tied.Leaders);
        Assert.EndsWith("Shown: Wheel A was placed above Wheel C; Wheel B was placed above Wheel C.", tied.Words.Top[2], StringComparison.Ordinal);
        Assert.Equal(5, verdict.Level.Level);
    }

    [Fact]
    public void Level_5_names_whom_it_is_shown_over_and_what_is_open()
    {
        var verdict = Judge.Of(Panels.Of("ABC", "ABC", "BAC", "BAC", "ABC", "ABC", "BAC", "ABC"), Seed);
        Assert.Equal(5, verdict.Level.Level);
        Assert.Equal(["WC"], verdict.Level.ShownOver);
        Assert.Equal(["WB"], verdict.Level.Open);
        Assert.StartsWith("Shown: Wheel A was placed above Wheel C; against Wheel B it is open.", verdict.Words.Top[2], StringComparison.Ordinal);
    }

    [Fact]
    public void Level_6_where_all_agree()
    {
        var verdict = Judge.Of(Panels.Of("ABC", "ABC", "ABC", "ABC", "ACB", "ABC", "ACB"), Seed);
        Assert.Equal(6, verdict.Level.Level);
        Assert.StartsWith("Shown: our tasters placed Wheel A above every other wheel.", verdict.Words.Top[2], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(4, 0, 3, 0.125)]
    [InlineData(6, 0, 6, 0.03125)]
    [InlineData(5, 1, 2, 0.21875)]
    [InlineData(9, 1, 6, 0.021484375)]
    [InlineData(3, 3, 1, 1)]
    public void Two_wheels_are_judged_by_the_sign_test_alone(int first, int second, int level, double p)
    {
        var verdict = Judge.Of(Panels.Of("AB", [.. Enumerable.Repeat("AB", first), .. Enumerable.Repeat("BA", second)]), Seed);
        Assert.Equal(p, verdict.Pairs[0].P, 1e-12);
        Assert.Equal(level, verdict.Level.Level);
    }

    [Fact]
    public void Joined_tasters_are_one_voice()
    {
        var apart = Panels.Of("ABC", "ABC", "ABC", "ABC", "ABC", "ABC", "ABC");
        var joined = apart.With("T01", v => v with { Voice = 1 }).With("T02", v => v with { Voice = 1 }).With("T03", v => v with { Voice = 1 });
        Assert.Equal(6, Judge.Of(apart, Seed).Level.Level);
        var verdict = Judge.Of(joined, Seed);
        Assert.Equal(4, verdict.Panel.Voices);
        Assert.Equal(6, verdict.Panel.Ballots);
        Assert.Equal(0.125, verdict.Pairs[0].P, 1e-12);
        Assert.Contains("Taster T01, Taster T02 and Taster T03 compared notes and are one voice, which makes 4 voices", verdict.Words.Top[1], StringComparison.Ordinal);
        Assert.Contains(verdict.Variants, v => v.Kind == VariantKind.JoinedApart && v.Level == 6 && v.Effect == VariantEffect.LevelChanges);
        Assert.Contains(verdict.Variants, v => v.Kind == VariantKind.WithoutJoined && v.Level == 0);
    }

    [Fact]
    public void Complete_ballots_head_the_verdict_from_two_thirds_on()
    {
        var most = Judge.Of(Panels.Of("ABC", "ABC", "ABC", "ABC", "ABC", "AB", "AB"), Seed);
        Assert.Equal((MainCount.CompleteBallots, 4L, 6), (most.Panel.Main, most.Panel.Ballots, most.Panel.Placing));
        Assert.Contains(most.Variants, v => v.Kind == VariantKind.OtherCount && v.Label.StartsWith("with all 6 ballots", StringComparison.Ordinal));
        var few = Judge.Of(Panels.Of("ABC", "ABC", "ABC", "ABC", "AB", "AB", "BC", "CB"), Seed);
        Assert.Equal((MainCount.AllBallots, 7L), (few.Panel.Main, few.Panel.Ballots));
        Assert.Contains("adjusted for what each was served", few.Words.Top[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Samples_left_below_count_as_a_shared_last_place()
    {
        var verdict = Judge.Of(Panels.Of("ABC", "A|BC", "A|BC", "A|BC", "A|BC"), Seed);
        Assert.Equal(MainCount.CompleteBallots, verdict.Panel.Main);
        var line = verdict.Tally.Single(t => t.Id == "WB");
        Assert.Equal((2.5, 4L, 4L), (line.AveragePlace, line.Lasts, line.LastsShared));
    }

    [Fact]
    public void Planned_weights_and_planned_likings_decide_where_they_are_planned()
    {
        var record = Panels.Of("ABC", "ABC", "ABC", "BCA", "BCA", "BAC");
        Assert.Equal(["WB"], Judge.Of(record, Seed).Leaders);
        Assert.Equal(["WB"], Judge.Of(record.By(new CountingRule.Firsts()), Seed).Leaders);
        var weighted = Judge.Of(record.By(new CountingRule.PlacePoints([2.5m, 1m, 0m])), Seed);
        Assert.Equal([2.5m, 1m, 0m], weighted.Tally[0].Weights);
        Assert.Equal(9.5, weighted.Tally.Single(t => t.Id == "WB").PlacePoints);
        Assert.Equal(6, weighted.Tally.Single(t => t.Id == "WA").PlacePoints);
        ImmutableSortedDictionary<string, SampleAnswer> Likes(int a, int b, int c) =>
            new[] { ("WA", a), ("WB", b), ("WC", c) }.ToImmutableSortedDictionary(x => x.Item1, x => new SampleAnswer { Liking = x.Item2 }, StringComparer.Ordinal);
        var liked = record with { Voters = [.. record.Voters.Select(v => v with { Answers = Likes(9, 5, 2) })] };
        Assert.Equal(["WA"], Judge.Of(liked.By(new CountingRule.MeanLiking()), Seed).Leaders);
    }

    [Theory]
    [InlineData(2, 1, 0)]
    [InlineData(4, 2, 0)]
    [InlineData(2.5, 1.5, 0.5)]
    public void Other_weights_are_those_with_other_steps(double first, double second, double third)
    {
        var record = Panels.Of("ABC", "ABC", "ABC", "BCA", "BCA", "BAC").By(new CountingRule.PlacePoints([(decimal)first, (decimal)second, (decimal)third]));
        Assert.Equal(["3 1 0", "1 1 0"], Judge.Headline(record, Seed).OtherWeights.Select(tried => string.Join(' ', tried.Weights.Select(weight => weight.ToString("0.#", CultureInfo.InvariantCulture)))));
    }

    [Fact]
    public void The_finest_and_largest_points_that_there_are_can_be_counted()
    {
        var record = Panels.Of("ABC", "ABC", "ABC", "BCA", "BCA", "BAC", "BA", "CB").By(new CountingRule.PlacePoints([1000m, 0.055m, -1000m]));
        Assert.NotEmpty(Judge.Of(record, Seed).Leaders);
    }

    [Fact]
    public void Chances_near_a_threshold_read_alike()
    {
        Assert.Equal("about 1 time in 20", Chance.OneIn(0.051));
        Assert.Equal(Chance.OneIn(0.051), Chance.OneIn(0.049));
        Assert.Equal("about 1 time in 100\u00A0000", Chance.OneIn(1e-5));
        Assert.Equal("about 1 time in 680", Chance.OneIn(1 / 683.0));
        Assert.Equal("less than 1 time in a million", Chance.OneIn(1e-9));
        Assert.Equal("about 5 times in 10", Chance.TimesInTen(0.48));
        Assert.Equal("nearly always", Chance.TimesInTen(0.99));
    }
}
