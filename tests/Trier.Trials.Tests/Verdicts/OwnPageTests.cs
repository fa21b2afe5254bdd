using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Makes;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Tests.Verdicts;

/// <summary>No sentence is contradicted by what stands elsewhere on its own page.</summary>
public sealed class OwnPageTests
{
    private static readonly JudgingEffort Little = new(Effort.Usual with { ExactWork = 1e4, Draws = 199, CloseDraws = 199 }, new SamplingEffort(2, 50, 600), 1e8, 99, 0, 0);

    [Fact]
    public void Every_way_of_counting_means_the_other_weights_too()
    {
        // By 1-1-0 B has 10 points and A 8; every rule else has A first.
        var verdict = Judged([.. Enumerable.Repeat("ABC", 8), "BCA", "BCA"]);
        Assert.Contains(verdict.OtherWeights, weights => weights.Leaders.SequenceEqual(["WB"]));
        Assert.Contains("Every rule we tried puts Wheel A first; with other weights for the places Wheel B leads.", verdict.Words.Disagreement);
    }

    [Fact]
    public void Nobody_put_it_last_looks_at_ballots_outside_the_headline_too()
    {
        string[] complete = ["ABC", "ABC", "ACB", "BAC", "ABC"];
        Assert.StartsWith("Wheel A is our best bet: nobody put it last", Judged([.. complete, "AB"]).Words.Top[0], StringComparison.Ordinal);
        Assert.DoesNotContain("nobody put it last", Judged([.. complete, "BA"]).Words.Top[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Ties_that_count_half_are_said_to()
    {
        var ties = Judged(["ABC", "ABC", "ABC", "ABC", "BAC", "A=BC"]);
        Assert.Contains(ties.Words.HowSure, sentence => sentence.StartsWith("4½ of 6 voices put Wheel A above Wheel B, a tie counted half for each; ", StringComparison.Ordinal));
        Assert.DoesNotContain(Judged(["ABC", "ABC", "ABC", "ABC", "BAC", "ABC"]).Words.HowSure, sentence => sentence.Contains("counted half", StringComparison.Ordinal));
    }

    [Fact]
    public void Ballots_that_nothing_connects_are_not_told_that_they_are_too_few()
    {
        var pieces = Judge.Of(Panels.Of("ABCD", "AB", "CD", "BA", "DC", "AB"), new Seed(1), Little);
        Assert.Contains("5 ballots could be counted; a comparison needs ballots that tie the wheels together.", pieces.Words.HowSure);
        Assert.Contains("4 ballots could be counted; a comparison needs somebody who prefers one wheel to another.", Judged(["A=B=C", "A=B=C", "A=B=C", "A=B=C"]).Words.HowSure);
    }

    [Fact]
    public void What_such_a_panel_shows_is_said_only_where_everybody_had_every_wheel()
    {
        Assert.NotNull(Judged(["ABC", "ABC", "ACB", "BAC", "ABC"]).Deep!.Reach);
        Assert.Null(Judged(["AB", "BC", "CA", "BA", "AB"]).Deep!.Reach);
    }

    [Fact]
    public void More_ballots_than_there_are_are_never_said_to_have_to_go()
    {
        Assert.Null(Judged(["AB", "AC", "AB", "AC"]).Fewest);
    }

    [Fact]
    public void A_mark_that_all_bear_tips_nothing()
    {
        var record = Panels.Of("ABC", "ABC", "ABC", "ACB", "BAC", "ABC");
        var all = record with { Voters = [.. record.Voters.Select(voter => voter with { Marks = VoterMarks.AfterKeyOpened })] };
        Assert.DoesNotContain(Judge.Of(all, new Seed(1), Little).Variants, variant => variant.Kind == VariantKind.WithoutAfterKey);
    }

    [Fact]
    public void The_interval_of_two_wheels_of_a_recipe_turns_with_them()
    {
        // By the pair's own ballots B stands above A; by the places, adjusted for what each was served, A above B.
        var record = Panels.Of("ABC", "AC", "CBA", "AB", "CB", "CBA");
        record = record with { Samples = [.. record.Samples.Select(sample => sample with { Facts = Panels.Facts(sample.Id == "WC" ? "c" : "a").With(WheelFacts.MadeFact, sample.Id == "WB" ? "2025-03-28" : "2025-03-30") })] };
        var verdict = Judge.Of(record, new Seed(1), Little);
        var same = Assert.Single(verdict.SameRecipe);
        var pair = Assert.Single(verdict.Pairs, pair => pair.Better is "WA" or "WB" && pair.Worse is "WA" or "WB");
        Assert.Equal(("WA", "WB", "WB"), (same.Better, same.Worse, pair.Better));
        Assert.Equal((-pair.GapInterval!.High, -pair.GapInterval!.Low), (same.Interval!.Low, same.Interval!.High));
    }

    private static Verdict Judged(string[] ballots) => Judge.Of(Panels.Of("ABC", ballots), new Seed(1), Little);
}
