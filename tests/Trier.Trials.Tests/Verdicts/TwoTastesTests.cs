using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tests.Verdicts;

public class TwoTastesTests
{
    private static readonly JudgingEffort Quick = new(new Effort(1e6, 999, 999, 4e9), new SamplingEffort(2, 100, 1_000), 1e8, 0, 0, 199);

    [Fact]
    public void Two_halves_that_turn_each_other_round_are_told_without_naming_anybody()
    {
        var verdict = Judge.Of(Panels.Of("ABCD", [.. Enumerable.Repeat("ABCD", 13), .. Enumerable.Repeat("DCBA", 9)]), new Seed(417), Quick);
        var tastes = verdict.Deep!.Tastes!;
        Assert.True(tastes.Parted);
        Assert.Equal(0.59, tastes.Classes[0].Share, 0.03);
        Assert.Equal(["WA", "WD"], tastes.Classes.Select(one => one.Wheels.MaxBy(wheel => wheel.First)!.Id));
        Assert.All(tastes.Classes, one => Assert.Equal(1, one.Wheels.Sum(wheel => wheel.First), 1e-9));
        Assert.Contains(verdict.Words.Disagreement, sentence => sentence.StartsWith("Without asking what anybody likes, the ballots look like two tastes rather than one: about 6 in 10 who mostly put Wheel A first and about 4 in 10 who mostly put Wheel D first;", StringComparison.Ordinal));
    }

    [Fact]
    public void One_taste_is_not_called_two_and_a_small_company_is_not_asked()
    {
        var one = Judge.Of(Panels.Of("ABC", [.. Enumerable.Repeat("ABC", 14), .. Enumerable.Repeat("BAC", 8)]), new Seed(417), Quick);
        Assert.False(one.Deep!.Tastes!.Parted);
        Assert.DoesNotContain(one.Words.Disagreement, sentence => sentence.Contains("two tastes", StringComparison.Ordinal));
        Assert.Null(Judge.Of(Panels.Of("ABC", [.. Enumerable.Repeat("ABC", 10), .. Enumerable.Repeat("CBA", 9)]), new Seed(417), Quick).Deep!.Tastes);
    }

    [Fact]
    public void A_corrected_ballot_is_left_out_in_a_variant()
    {
        var verdict = Judge.Of(Panels.Of("ABC", "ABC", "ABC", "ABC", "BAC", "BAC").With("T01", voter => voter with { Marks = VoterMarks.Corrected }), new Seed(417), Quick);
        Assert.Equal("without the corrected ballot of Taster T01", Assert.Single(verdict.Variants, variant => variant.Kind == Trier.Trials.Verdicts.Findings.VariantKind.WithoutCorrected).Label);
    }
}
