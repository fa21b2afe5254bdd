using System.Collections.Immutable;
using Trier.Dairy.Milk;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;
using Trier.Trials.Tests.Makes.Recipes;

namespace Trier.Trials.Tests.Makes.Days;

public sealed class SplitVatTests
{
    private static readonly DateTimeOffset Nine = new(2026, 5, 3, 9, 0, 0, TimeSpan.FromHours(2));
    private static readonly RecipeLine Line = new(new(Guid.Empty), [new(1, Drafts.Recipe, Nine, false)]);
    private static readonly Vat Milk = Vat.Read(new() { Litres = 20, Wheels = 2, Treatment = HeatTreatment.Pasteurised }, Species.Cow).Value.Vat;

    private static readonly ImmutableArray<VatPart> Parts = [new("as ever", 60, "", []), new("hot", 40, "stirred by hand", [new(6, "celsius", 42), new(6, "minutes", 50), new(10)])];

    private static DateTimeOffset At(int hour, int minute) => new(2026, 5, 3, hour, minute, 0, TimeSpan.FromHours(2));

    private static Make Read(ImmutableArray<LoggedMake> log, Outcome<ImmutableArray<MakeEvent>> act)
    {
        Assert.True(act.Ok, string.Join(" ", act.Problems.Select(problem => problem.Sentence)));
        return Make.Read(new(Guid.Empty), [.. log, .. act.Value.Select((happened, index) => new LoggedMake(log.Length + index + 1, happened))]);
    }

    private static Make Finish(Make make, int step, DateTimeOffset when, int? part = null, params (Target Target, double Value)[] readings) =>
        Read(make.Log, make.Finish(when, step, new StepMark(when, [.. readings.Select(reading => new StepReading(reading.Target.Key, reading.Value))]), part));

    private static Make Renneted()
    {
        var make = Read([], Make.Begin(Nine, "Split, 3 May", Line, Milk, Nine));
        make = Finish(Finish(Finish(make, 1, At(9, 35)), 2, At(9, 36)), 3, At(10, 21));
        return Finish(Read(make.Log, make.Start(At(10, 22), 4, At(10, 22))), 4, At(10, 36));
    }

    /// <summary>Cut at 11:04, split before the cook.</summary>
    private static Make Split()
    {
        var make = Finish(Renneted(), 5, At(11, 4));
        return Read(make.Log, make.Divide(At(11, 10), Parts));
    }

    private static string Sentence(Outcome<ImmutableArray<MakeEvent>> act) => act.Problems[0].Sentence;

    [Fact]
    public void Each_part_has_its_own_aims_marks_and_countdown_from_the_split_on()
    {
        var make = Split();
        var (ever, hot) = (make.LaneOf(1), make.LaneOf(2));
        // The cut takes 10 min and rests 5: both cook from 11:19, the recipe's 30 min and the part's own 50.
        Assert.Equal((At(11, 49), At(12, 9)), (ever.DueOf(ever.Current!), hot.DueOf(hot.Current!)));
        Assert.Equal((37, 42), (ever.Current!.Step[Target.Celsius]!.Value, hot.Current!.Step[Target.Celsius]!.Value));
        make = Finish(make, 6, At(11, 50), 1, (Target.Celsius, 37));
        Assert.Equal((7, 6), (make.LaneOf(1).Current!.Number, make.LaneOf(2).Current!.Number));
        make = Finish(make, 6, At(12, 20), 2, (Target.Celsius, 37));
        // 37 °C is what the recipe asks and what the hot part was to leave behind; its time is 11 min long, more than 15 in 100 of 50.
        Assert.Equal(["37 °C, 5 °C below the aim of 42 °C", "11 min longer than planned"], Deviation.Of(make).Select(deviation => deviation.Short(Notation.Plain)));
        Assert.Empty(Deviation.Of(make.LaneOf(1)));
        Assert.Equal([(6, 1), (6, 2)], make.AllSteps.Where(step => step.Number == 6).Select(step => (step.Number, step.Part!.Value)));
    }

    [Fact]
    public void A_step_left_out_is_not_waited_for_and_the_day_ends_with_the_last_part()
    {
        var make = Split();
        Assert.DoesNotContain(10, make.LaneOf(2).Steps.Select(step => step.Number));
        for (var number = 6; number <= 9; number++) make = Finish(Finish(make, number, At(12 + number, 0), 1), number, At(12 + number, 1), 2);
        Assert.Null(make.LaneOf(2).Current);
        Assert.False(make.AllDone);
        Assert.True(Finish(make, 10, At(23, 0), 1).AllDone);
    }

    [Fact]
    public void Sheet_and_yield_of_a_part_go_by_its_share()
    {
        var hot = Split().LaneOf(2);
        Assert.Equal((8, 1), (hot.Share(Milk.Draft).Litres, hot.Share(Milk.Draft).Wheels));
    }

    [Fact]
    public void Wheels_know_their_part_and_their_facts_tell_its_aims_and_what_went_otherwise_in_it()
    {
        var make = Finish(Split(), 6, At(12, 9), 2, (Target.Celsius, 46));
        Assert.Equal("Say which part of the vat this wheel is from.", Sentence(make.Bear(At(18, 0), [new BornWheel(new(Guid.NewGuid()), 7, "A", 1, "")])));
        make = Read(make.Log, make.Bear(At(18, 0), [new BornWheel(new(Guid.NewGuid()), 7, "A", 1, "", 1), new BornWheel(new(Guid.NewGuid()), 8, "B", 1, "", 2)]));
        var (ever, hot) = (WheelFactsOf.Of(make, make.Wheels[0], []), WheelFactsOf.Of(make, make.Wheels[1], []));
        string[] differ = [.. ever.Values.Keys.Union(hot.Values.Keys).Where(name => ever[name] != hot[name]).Order(StringComparer.Ordinal)];
        Assert.Equal(["cook the curd: temperature aimed at", "cook the curd: time aimed at", "dry off", "vat day: cook the curd", "vat part"], differ);
        Assert.Equal(("42 °C", "50 min", "left out", "hot: stirred by hand"), (hot[differ[0]], hot[differ[1]], hot[differ[2]], hot[differ[4]]));
        Assert.Equal("46 °C, 4 °C above the aim of 42 °C", hot[differ[3]]);
        Assert.Equal("Split, 3 May", ever[WheelFacts.MakeFact]);
    }

    [Fact]
    public void A_touch_that_does_not_know_of_the_split_is_refused_with_what_to_do()
    {
        var make = Split();
        Assert.Equal("The vat was split before this step: load the page again and say which part it was.", Sentence(make.Finish(At(11, 50), 6, new StepMark(At(11, 50), []))));
        Assert.Equal("This make has no such step.", Sentence(make.Finish(At(11, 50), 6, new StepMark(At(11, 50), []), 3)));
        Assert.Equal("This make has no such step.", Sentence(make.Finish(At(11, 50), 10, new StepMark(At(11, 50), []), 2)));
        // What was done before the split belongs to the whole vat and is corrected there.
        Assert.True(make.Correct(At(11, 50), 5, new StepMark(At(11, 2), []), "").Ok);
    }

    [Fact]
    public void A_gel_cannot_be_divided_nor_a_vat_twice()
    {
        Assert.Equal("The milk is setting: a gel cannot be divided. Split the vat after the cut.", Renneted().NoSplitNow);
        Assert.Null(Finish(Renneted(), 5, At(11, 4)).NoSplitNow);
        Assert.Equal("This vat was split already.", Sentence(Split().Divide(At(11, 12), Parts)));
    }

    [Fact]
    public void Parts_are_checked_field_by_field()
    {
        var make = Finish(Renneted(), 5, At(11, 4));
        string Of(params ImmutableArray<VatPart> parts) => string.Join("|", make.Divide(At(11, 10), parts).Problems.Select(problem => $"{problem.Field}: {problem.Sentence}"));
        Assert.Equal("differs-2: Say what is done otherwise with one of the parts; else it is one vat with several wheels.", Of(new("a", 50, "", []), new("b", 50, "", [])));
        Assert.Equal("share-2: The shares add up to 90 %; they must make 100 % of the vat.", Of(new("a", 50, "x", []), new("b", 40, "", [])));
        Assert.Equal("share-2: The share of this part is 0 %; it must be above 0 and below 100 (usual: 50).", Of(new("a", 50, "x", []), new("b", 0, "", [])));
        Assert.Equal("name-2: Two parts have one name: give each its own.", Of(new("a", 50, "x", []), new("A", 50, "", [])));
        Assert.Equal("value-2-1: Temperature is 140 °C; it must be at least -1 and at most 100 °C (usual: 33 to 58 °C).", Of(new("a", 50, "", []), new("b", 50, "", [new(6, "celsius", 140)])));
        Assert.Equal("value-2-1: Say what Temperature shall be in this part.", Of(new("a", 50, "", []), new("b", 50, "", [new(6, "celsius")])));
        Assert.Equal("what-2-1: Choose a step that is still to come.", Of(new("a", 50, "", []), new("b", 50, "", [new(1, "celsius", 30)])));
        Assert.Equal("what-2-1: “Cook the curd” aims at nothing of that kind.", Of(new("a", 50, "", []), new("b", 50, "", [new(6, "kilopascals", 5)])));
        Assert.Equal("what-2-1: No wheel comes about without “Fill the moulds”.", Of(new("a", 50, "", []), new("b", 50, "", [new(7)])));
        Assert.Equal("parts: A vat is split into 2 to 4 parts.", Of(new VatPart("a", 100, "x", [])));
    }

    [Fact]
    public void A_split_is_taken_back_like_any_touch_until_something_was_done_since()
    {
        var make = Split();
        var split = make.LastDeed!.Sequence;
        var back = Read(make.Log, make.Undo(At(11, 12), split));
        Assert.Null(back.Split);
        Assert.Equal((1, 6), (back.Lanes.Length, back.Lanes[0].Current!.Number));
        Assert.False(Finish(make, 6, At(11, 50), 1).Undo(At(11, 51), split).Ok);
        var born = Read(make.Log, make.Bear(At(18, 0), [new BornWheel(new(Guid.NewGuid()), 7, "A", 1, "", 1)]));
        Assert.Equal("The wheels have their numbers and name their part: the split stands.", Sentence(born.Undo(At(18, 1), split)));
    }
}
