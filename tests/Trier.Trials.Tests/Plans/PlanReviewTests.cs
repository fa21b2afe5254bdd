using Trier.Trials.Plans;
using Trier.Trials.Plans.Amounts;
using Trier.Trials.Plans.Panels;
using static Trier.Trials.Tests.Plans.Outlines;

namespace Trier.Trials.Tests.Plans;

public sealed class PlanReviewTests
{
    private static readonly TrialOutline Pair = Of(Wheel("A 1", "A"), Wheel("B 1", "B"), Wheel("A 2", "A"), Wheel("B 2", "B")) with { AgeDays = 150 };

    [Fact]
    public void Two_alike_makes_each_need_fewer_tasters_than_one_wheel_each()
    {
        var ask = PanelAsk.Of(Pair);
        Assert.Equal([2, 2], ask.WheelsPerRecipe);
        var one = new PanelAsk([1, 1], 2, CountingRule.Default);
        foreach (var tasters in new[] { 20, 40 })
        {
            var (two, alone) = (PanelPlanning.Point(ask, tasters, 2_000), PanelPlanning.Point(one, tasters, 2_000));
            Assert.True(two.Shown.Share > alone.Shown.Share + (2 * alone.Shown.Error), $"{tasters}: {two.Shown.Share} and {alone.Shown.Share}");
            // Two head to head are known exactly: Trier.Statistics has the chance by the binomial.
            Assert.InRange(alone.Shown.Share - Trier.Statistics.Power.HeadToHeadPower.Shown(2, tasters), -4 * alone.Shown.Error, 4 * alone.Shown.Error);
        }
    }

    /// <summary>The table of levels simulated with NumPy (20,000 panels): five wheels, one 2 : 1, 14 tasters: levels 5 and 6 together 17.3 %, less 0.9 % with the wrong leader; right leader 78 %.</summary>
    [Fact]
    public void The_demo_s_plate_agrees_with_a_second_implementation()
    {
        var point = PanelPlanning.Point(new PanelAsk([1, 1, 1, 1, 1], 2, CountingRule.Default), 14, 4_000);
        Assert.InRange(point.Shown.Share - 0.164, -4 * point.Shown.Error, 4 * point.Shown.Error);
        Assert.InRange(point.Right.Share - 0.78, -4 * point.Right.Error - 0.005, 4 * point.Right.Error + 0.005);
    }

    [Fact]
    public void The_favourite_is_one_of_the_recipe_with_fewest_wheels()
    {
        Assert.Equal([1, 1, 3, 1, 1], new PanelAsk([2, 1, 1, 1], 3, CountingRule.Default).Model().Tastes[0].Worths);
        Assert.Equal([3, 3, 1, 1], new PanelAsk([2, 2], 3, CountingRule.Default).Model().Tastes[0].Worths);
        Assert.Equal([3, 1, 1], new PanelAsk([3], 3, CountingRule.Default).Model().Tastes[0].Worths);
    }

    [Fact]
    public void Three_plans_are_compared_the_planned_one_first_and_figures_repeat()
    {
        var found = PanelPlanning.Find(Demo, 200, null, TestContext.Current.CancellationToken);
        Assert.Equal(["As planned", "Two recipes alone", "Two recipes, two makes each"], found.Options.Select(option => option.Option.Name));
        Assert.Equal([8, 14, 24, 40, 60], found.Options[0].Points.Select(point => point.Tasters));
        Assert.Equal([1.5, 2, 3], found.Curves.Select(curve => curve.Preference));
        Assert.Equal("House and Thistle", found.Options[1].Option.What);
        Assert.Equal("House × 2 and Thistle × 2", found.Options[2].Option.What);
        // Both House wheels and one Thistle are made already.
        Assert.Equal([0, 0, 1], found.Options.Select(option => option.Option.VatDays));
        Assert.Equal(found.Options[0].Points, PanelPlanning.Find(Demo, 200, null, TestContext.Current.CancellationToken).Options[0].Points);
        Assert.True(found.SmallestPreference > 2);
        Assert.Equal(0.0354, found.LargestError, 4);
    }

    [Fact]
    public void Progress_is_told_and_work_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        var told = new List<double>();
        Assert.Throws<OperationCanceledException>(() => PanelPlanning.Find(Demo, 20, done =>
        {
            told.Add(done);
            if (told.Count == 2) stop.Cancel();
        }, stop.Token));
        Assert.Equal(2, told.Count);
        Assert.All(told, share => Assert.InRange(share, 0, 1));
    }

    [Fact]
    public void Words_say_what_the_expected_tasters_can_do()
    {
        var outline = Demo with { Tasters = 6 };
        Assert.Equal("With 6 wheels no two can be told apart by fewer than 9 tasters, even if all agree. 6 are too few for that. Only a wheel that everybody puts first can be shown with 6.", PanelWords.Smallest(outline));
        var found = PanelPlanning.Find(outline, 400, null, TestContext.Current.CancellationToken);
        var words = PanelWords.All(outline, found);
        Assert.StartsWith("If one wheel is liked 2 to 1 over each other, 6 tasters have it alone in the lead about ", words[0], StringComparison.Ordinal);
        Assert.Contains("that it is ahead can be shown hardly ever.", words[0], StringComparison.Ordinal);
        Assert.Contains(words, sentence => sentence.StartsWith("Of the numbers tried, ", StringComparison.Ordinal) || sentence.StartsWith("Not even 60", StringComparison.Ordinal));
        Assert.EndsWith("it takes more.", PanelWords.Method(found), StringComparison.Ordinal);
        Assert.Contains("average liking", PanelWords.All(outline with { Rule = new CountingRule.MeanLiking() }, found)[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void Make_dates_are_counted_back_within_a_fortnight()
    {
        var makes = MakeDates.Of(Pair);
        Assert.Equal([new DateOnly(2025, 3, 21), new DateOnly(2025, 3, 25), new DateOnly(2025, 3, 29), new DateOnly(2025, 4, 2)], [makes[0].Make, makes[1].Make, makes[2].Make, makes[3].Make]);
        Assert.Equal([162, 158, 154, 150], makes.Select(make => make.AgeDays));
        // They stand in the table as planned, and are alike in age; without a day nothing is known of it.
        var table = PlanReview.Of(Pair).Table!;
        Assert.DoesNotContain(table.Columns, column => column.Name == "age" && table.Differs(table.Columns.IndexOf(column), 1));
        Assert.Equal("162 days, planned", table.Columns.Concat(table.Alike).Single(column => column.Name == "age").Values[0]);
        Assert.DoesNotContain(PlanReview.Of(Pair with { Day = null }).Table!.Columns, column => column.Name == "age");
        Assert.Empty(MakeDates.Of(Pair with { Day = null }));
        Assert.Empty(MakeDates.Of(Pair with { AgeDays = null }));
        Assert.Empty(MakeDates.Of(Demo with { AgeDays = 150 }));
    }

    [Fact]
    public void Grams_follow_from_the_tasters_and_the_repeat()
    {
        // 14 plates of three cubes and 15 in 100 to spare are 49 cubes of 3.375 cm3 at 1.08 g: 178.6 g.
        var amounts = PlanAmounts.Of(Pair with { Repeat = "W1" });
        Assert.Equal(49 * 3.375 * 1.08, amounts.GramsAWheel, 9);
        Assert.Equal(97 * 3.375 * 1.08, amounts.GramsTwice!.Value, 9);
        Assert.Equal(3 * 3.375 * 1.08, amounts.GramsASample, 9);
        Assert.InRange(amounts.WheelKilograms!.Value, 0.5, 3);
        Assert.True(amounts.Left >= 0);
        var words = PlanReview.Of(Pair with { Repeat = "W1" }).AmountsInWords;
        Assert.Contains("14 tasters need about 180 g of paste from each wheel (350 g of the wheel served twice)", words[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Aims_are_checked_all_at_once()
    {
        Assert.Equal(["age", "tasters", "preference"], PlanAims.Create(0, 1, 1).Problems.Select(problem => problem.Field));
        Assert.True(PlanAims.Create(null, null, null).Ok);
        var stands = PlanAims.None with { Reasons = ["Because."] };
        Assert.Equal("Because.", Assert.Single(PlanAims.Create(150, 20, 3, stands).Value.Reasons));
    }
}
