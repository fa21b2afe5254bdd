using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Plans.FollowUps;
using Trier.Trials.Tests.Verdicts;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tests.Plans;

public sealed class FollowUpTests
{
    private static readonly JudgingEffort Little = new(Effort.Usual with { ExactWork = 1e5, Draws = 199, CloseDraws = 199 }, new SamplingEffort(2, 50, 600), 1e8, 0, 0, 0);
    private static readonly TrialId Trial = new(new Guid(1, 2, 3, [0, 0, 0, 0, 0, 0, 0, 4]));
    private static readonly TrialPlan Stands = new("Four ways", "Which?", "A kitchen", Outlines.Day, new CountingRule.PlacePoints([2, 1, 0]), JuniorsCount: false, Invented: true);

    [Fact]
    public void Leader_and_the_nearest_it_is_not_shown_over_come_again_in_two_makes_each()
    {
        var follow = From(["a", "b", "c"], "ABC", "BAC", "ACB", "ABC", "BCA", "ABC");
        Assert.Equal("a or b?", follow.Plan.Title);
        Assert.Equal("Which do people like better, a or b, in two makes each?", follow.Plan.Question);
        Assert.Equal(["a 1", "b 1", "a 2", "b 2"], follow.Wheels.Select(wheel => wheel.Name));
        Assert.Equal(["a", "b", "a", "b"], follow.Wheels.Select(wheel => wheel.Facts.Recipe!));
        Assert.Equal(0, follow.ServeTwice);
        Assert.Null(follow.Plan.Day);
        // The points were for three wheels.
        Assert.IsType<CountingRule.AveragePlace>(follow.Plan.Rule);
        Assert.False(follow.Plan.JuniorsCount);
        var aims = follow.Plan.Aims!;
        Assert.Equal((Trial, 2.0, 153), (aims.Follows!.Value, aims.Preference!.Value, aims.AgeDays!.Value));
        Assert.True(aims.Tasters is 24 or 30 or 40);
        Assert.Equal("Wheel A leads, and against Wheel B it is open.", aims.Reasons[0]);
        Assert.Contains(aims.Reasons, reason => reason.StartsWith($"With {aims.Tasters} tasters a preference of 2 to 1", StringComparison.Ordinal));
        Assert.All(aims.Reasons, reason => Assert.EndsWith(".", reason, StringComparison.Ordinal));
    }

    [Fact]
    public void A_shared_lead_and_one_recipe_at_the_top_have_plans_of_their_own()
    {
        Assert.Equal("Wheel A and Wheel B share the lead.", From(["a", "b", "c"], "ABC", "BAC", "ABC", "BAC").Plan.Aims!.Reasons[0]);
        var one = From(["a", "a", "c"], "ABC", "BAC", "ACB", "ABC", "BCA", "ABC");
        Assert.Equal(["a 1", "a 2", "a 3", "a 4"], one.Wheels.Select(wheel => wheel.Name));
        Assert.Equal("How far do four makes of a fall apart?", one.Plan.Question);
    }

    [Fact]
    public void Two_parts_of_one_vat_ask_for_what_was_done_with_each()
    {
        var record = With(Panels.Of("ABC", "ABC", "BAC", "ACB", "ABC", "BCA", "ABC"), ["a", "a", "c"]);
        record = record with { Samples = [.. record.Samples.Select(sample => sample with { Facts = sample.Facts.With(WheelFacts.PartFact, sample.Id == "WA" ? "hot" : "mild") })] };
        var follow = FollowUp.From(Judge.Of(record, new Seed(1), Little), Trial, Stands, 200).Value;
        Assert.Equal("Which do people like better, Wheel A or Wheel B, in two makes each?", follow.Plan.Question);
        Assert.Equal(["Wheel A 1", "Wheel B 1", "Wheel A 2", "Wheel B 2"], follow.Wheels.Select(wheel => wheel.Name));
        Assert.Equal(["a, hot", "a, mild", "a, hot", "a, mild"], follow.Wheels.Select(wheel => $"{wheel.Facts.Recipe}, {wheel.Facts[WheelFacts.PartFact]}"));
        Assert.Contains("Wheel A and Wheel B came of one vat: split two vats in the same way, so that each make holds one of each. Two makes tell what was done otherwise from a lucky day a little; to show it takes four.", follow.Plan.Aims!.Reasons);
    }

    [Fact]
    public void A_wheel_shown_above_all_asks_whether_the_recipe_did_it()
    {
        var follow = From(["a", "b", "c"], [.. Enumerable.Repeat("ABC", 8), .. Enumerable.Repeat("ACB", 6)]);
        Assert.Equal("Wheel A is shown ahead of every other wheel. What is open is whether the recipe did it or the day.", follow.Plan.Aims!.Reasons[0]);
    }

    [Fact]
    public void One_wheel_leaves_nothing_to_follow()
    {
        var verdict = Judge.Of(Panels.Of("A", "A", "A", "A", "A"), new Seed(1), Little);
        Assert.Equal("Fewer than two wheels were compared: begin a new trial instead.", Assert.Single(FollowUp.From(verdict, Trial, Stands).Problems).Sentence);
    }

    [Fact]
    public void What_else_differed_is_to_be_made_alike()
    {
        var record = With(Panels.Of("ABC", "ABC", "BAC", "ACB", "ABC", "BCA", "ABC"), ["a", "b", "c"]);
        record = record with { Samples = [.. record.Samples.Select(sample => sample with { Facts = sample.Facts.With(WheelFacts.RindFact, sample.Id == "WA" ? "washed" : "dry") })] };
        var reasons = FollowUp.From(Judge.Of(record, new Seed(1), Little), Trial, Stands, 200).Value.Plan.Aims!.Reasons;
        Assert.Contains("Wheel A and Wheel B also differed in rind: make all four alike there, within two weeks.", reasons);
    }

    private static FollowUp From(string[] recipes, params string[] ballots) => FollowUp.From(Judge.Of(With(Panels.Of("ABC", ballots), recipes), new Seed(1), Little), Trial, Stands, 300).Value;

    private static TastingRecord With(TastingRecord record, string[] recipes) => record with
    {
        Samples = [.. record.Samples.Zip(recipes, (sample, recipe) => sample with { Facts = WheelFacts.Of([new(WheelFacts.RecipeFact, recipe), new(WheelFacts.MadeFact, "2025-03-30")]) })],
    };
}
