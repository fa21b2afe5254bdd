using System.Collections.Immutable;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Tests.Verdicts;

/// <summary>Where average liking is the rule, those count who gave likings, and the words say so.</summary>
public sealed class LikingRuleTests
{
    private static readonly JudgingEffort Little = new(Effort.Usual with { ExactWork = 1e4, Draws = 199, CloseDraws = 199 }, new SamplingEffort(2, 50, 600), 1e8, 0, 0, 0);

    [Fact]
    public void Voices_are_those_who_gave_likings_not_those_who_gave_places()
    {
        // Nine place all three; six of them gave every wheel a liking.
        var verdict = Judged(Panel(9, liked: 6));
        Assert.Equal((6, 6, 6L, 6L), (verdict.Panel.Placing, verdict.Panel.Complete, verdict.Panel.Ballots, verdict.Panel.Voices));
        Assert.Contains("6 of 9 blind tasters gave all 3 wheels a liking and count here, by average liking, the rule fixed beforehand; each is one voice, which makes 6.", verdict.Words.Top);
    }

    [Fact]
    public void Three_who_gave_likings_are_too_few_whatever_was_placed()
    {
        var verdict = Judged(Panel(9, liked: 3));
        Assert.Equal(NothingToTest.TooFewVoices, verdict.Level.Reason);
        Assert.Contains("3 ballots could be counted; a comparison needs at least two wheels and four voices.", verdict.Words.HowSure);
    }

    [Fact]
    public void Likings_without_places_count_and_the_caution_says_so()
    {
        var record = Panel(6, liked: 6);
        var verdict = Judged(record.With("T01", voter => voter with { Places = [] }));
        Assert.Equal(6, verdict.Panel.Ballots);
        Assert.Contains("Taster T01 placed fewer than two wheels and is left out of every order; likings they gave count.", verdict.Cautions);
    }

    [Fact]
    public void A_wheel_named_aloud_is_left_out_of_later_likings()
    {
        var record = Panel(6, liked: 6);
        foreach (var id in new[] { "T01", "T02", "T03" }) record = record.With(id, voter => voter with { Named = ["WA"], Answers = Likes(9, 1, 1) });
        foreach (var id in new[] { "T04", "T05", "T06" }) record = record.With(id, voter => voter with { Answers = Likes(4, 6, 1) });
        var verdict = Judged(record);
        Assert.Equal(["WA"], verdict.Leaders);
        Assert.Equal(["WB"], Assert.Single(verdict.Variants, variant => variant.Kind == VariantKind.WithoutNamed).Leaders);
    }

    private static Verdict Judged(TastingRecord record) => Judge.Of(record.By(new CountingRule.MeanLiking()), new Seed(1), Little);

    private static TastingRecord Panel(int tasters, int liked)
    {
        var record = Panels.Of("ABC", [.. Enumerable.Repeat("ABC", tasters)]);
        return record with { Voters = [.. record.Voters.Select((voter, i) => i < liked ? voter with { Answers = Likes(8, 6 + (i % 2), 3) } : voter)] };
    }

    private static ImmutableSortedDictionary<string, SampleAnswer> Likes(int a, int b, int c) =>
        new[] { ("WA", a), ("WB", b), ("WC", c) }.ToImmutableSortedDictionary(x => x.Item1, x => new SampleAnswer { Liking = x.Item2 }, StringComparer.Ordinal);
}
