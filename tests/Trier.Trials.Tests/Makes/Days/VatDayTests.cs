using System.Collections.Immutable;
using CsCheck;
using Trier.Dairy.Milk;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;
using Trier.Trials.Tests.Makes.Recipes;

namespace Trier.Trials.Tests.Makes.Days;

public sealed class VatDayTests
{
    private static readonly DateTimeOffset Nine = new(2026, 5, 3, 9, 0, 0, TimeSpan.FromHours(2));
    private static readonly RecipeLine Line = new(new(Guid.Empty), [new(1, Drafts.Recipe, Nine, false)]);
    private static readonly Vat Milk = Vat.Read(new() { Litres = 20, Fat = 3.6, Treatment = HeatTreatment.Raw }, Species.Cow).Value.Vat;

    private static DateTimeOffset At(int hour, int minute) => new(2026, 5, 3, hour, minute, 0, TimeSpan.FromHours(2));

    private static DateTimeOffset Due(Make make, int number) => make.Lanes[0].DueOf(make.AllSteps[number - 1]);

    private static Make Begun() => Read([], Make.Begin(Nine, "House, 3 May", Line, Milk, Nine));

    private static Make Read(ImmutableArray<LoggedMake> log, Outcome<ImmutableArray<MakeEvent>> act)
    {
        Assert.True(act.Ok, string.Join(" ", act.Problems.Select(problem => problem.Sentence)));
        return Make.Read(new(Guid.Empty), [.. log, .. act.Value.Select((happened, index) => new LoggedMake(log.Length + index + 1, happened))]);
    }

    private static Make Finish(Make make, int step, DateTimeOffset when, params (Target Target, double Value)[] readings) =>
        Read(make.Log, make.Finish(when, step, new StepMark(when, [.. readings.Select(reading => new StepReading(reading.Target.Key, reading.Value))])));

    /// <summary>Warm 9:35, culture 9:36, ripe 10:21, rennet 10:22, flocculation after 14 min unless told otherwise.</summary>
    private static Make Renneted(int floc = 14)
    {
        var make = Finish(Finish(Finish(Begun(), 1, At(9, 35), (Target.Celsius, 32)), 2, At(9, 36)), 3, At(10, 21), (Target.Ph, 6.55));
        make = Read(make.Log, make.Start(At(10, 22), 4, At(10, 22)));
        return Finish(make, 4, At(10, 22).AddMinutes(floc));
    }

    [Fact]
    public void A_day_as_planned_has_no_deviation_and_every_due_time_follows_what_was_done()
    {
        var make = Begun();
        Assert.Equal((1, At(9, 35)), (make.Lanes[0].Current!.Number, Due(make, 1)));
        make = Renneted();
        Assert.Equal(5, make.Lanes[0].Current!.Number);
        Assert.Equal(6, make.Lanes[0].Next!.Number);
        // Flocculation after 14 min, times 3 from rennet at 10:22.
        Assert.Equal(At(11, 4), Due(make, 5));
        make = Finish(make, 5, At(11, 5));
        // The cut is stamped as it begins: 10 min of cutting and 5 of rest come before the cook of 30 min.
        Assert.Equal((At(11, 20), At(11, 50)), (make.Lanes[0].StartOf(6), Due(make, 6)));
        Assert.Empty(Deviation.Of(make));
    }

    [Fact]
    public void Late_flocculation_moves_the_cut_and_is_said_at_once()
    {
        var make = Renneted(floc: 19);
        Assert.Equal(At(11, 19), Due(make, 5));
        var said = Assert.Single(Deviation.Of(make));
        Assert.Equal("Add the rennet: flocculation after 19 min, 5 min later than planned. Cold milk, weak rennet or milk not acid enough can do that; more rennet next time brings it back. The cut moves with it, to 11:19.", said.InWords(Notation.Plain));
        // A cut by the old clock is then early.
        var early = Assert.Single(Deviation.Of(Finish(make, 5, At(11, 4))), deviation => deviation.Step.Number == 5);
        Assert.Equal("15 min earlier than planned", early.Short(Notation.Plain));
        Assert.StartsWith("An early cut is a softer gel", early.MayLeadTo, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(6, "celsius", 41, "41 °C, 4 °C above the aim of 37 °C", "dry and corky")]
    [InlineData(6, "celsius", 33, "33 °C, 4 °C below the aim of 37 °C", "moist, soft and sour")]
    public void What_was_read_off_target_is_said_with_what_it_may_lead_to(int step, string key, double value, string words, string leads)
    {
        var make = Finish(Finish(Renneted(), 5, At(11, 4)), step, At(11, 50), (Target.Named(key)!, value));
        var said = Assert.Single(Deviation.Of(make));
        Assert.Equal(words, said.Short(Notation.Plain));
        Assert.Contains(leads, said.MayLeadTo, StringComparison.Ordinal);
    }

    [Fact]
    public void A_high_ph_in_the_press_speaks_of_holding_the_wheel_back_and_never_of_safety()
    {
        var make = Finish(Finish(Finish(Renneted(), 5, At(11, 4)), 6, At(11, 49)), 7, At(11, 50));
        make = Finish(make, 8, At(17, 50), (Target.Ph, 5.9));
        var said = Assert.Single(Deviation.Of(make)).InWords(Notation.Plain);
        Assert.Contains("pH 5.90, 0.50 above the aim of 5.40", said, StringComparison.Ordinal);
        Assert.Contains("hold the wheel back", said, StringComparison.Ordinal);
        Assert.DoesNotContain("safe", said, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_slip_is_corrected_and_the_old_value_is_kept()
    {
        var make = Finish(Finish(Renneted(), 5, At(11, 4)), 6, At(11, 50), (Target.Celsius, 73));
        var right = new StepMark(At(11, 50), [new("celsius", 37)]);
        make = Read(make.Log, make.Correct(At(12, 30), 6, right, "read the wrong line"));
        Assert.Equal(37, make.AllSteps[5].Done![Target.Celsius]);
        var was = Assert.Single(make.AllSteps[5].Was);
        Assert.Equal((73, "read the wrong line", At(12, 30)), (was.Mark[Target.Celsius]!.Value, was.Why, was.CorrectedAt));
        Assert.Empty(Deviation.Of(make));
        Assert.False(make.Correct(At(12, 31), 6, right, "").Ok);
    }

    [Fact]
    public void The_last_touch_can_be_taken_back_and_only_the_last()
    {
        var make = Renneted();
        var last = make.LastDeed!.Sequence;
        var back = Read(make.Log, make.Undo(At(10, 37), last));
        Assert.Equal(4, back.Lanes[0].Current!.Number);
        Assert.NotNull(back.Lanes[0].Current!.Started);
        Assert.False(back.Undo(At(10, 38), last).Ok);
        Assert.Equal(3, Read(back.Log, back.Undo(At(10, 38), back.LastDeed!.Sequence)).LastDeed!.Event is StepDone { Step: var step } ? step : 0);
    }

    [Fact]
    public void Wrong_touches_are_refused_with_a_sentence()
    {
        var make = Begun();
        string Sentence(Outcome<ImmutableArray<MakeEvent>> act) => Assert.Single(act.Problems).Sentence;
        Assert.Equal("Say first when the rennet went in: flocculation is counted from there.", Sentence(make.Finish(At(9, 30), 4, new StepMark(At(9, 30), []))));
        Assert.Equal("This time lies ahead: write the time at which it was done.", Sentence(make.Finish(At(9, 30), 1, new StepMark(At(9, 45), []))));
        Assert.Equal("pH is 15; it must be at least 0 and at most 14 (usual: 6.3 to 6.8).", Sentence(make.Finish(At(9, 30), 3, new StepMark(At(9, 30), [new("pH", 15)]))));
        Assert.Equal("“pH” is not read at this step.", Sentence(make.Finish(At(9, 30), 1, new StepMark(At(9, 30), [new("pH", 6.6)]))));
        Assert.Equal("“Warm the milk” is done already; a slip is corrected in the record.", Sentence(Finish(make, 1, At(9, 35)).Finish(At(9, 36), 1, new StepMark(At(9, 36), []))));
        Assert.Equal("Flocculation is written before the rennet went in: look at the times.", Sentence(Read(make.Log, make.Start(At(10, 0), 4, At(10, 0))).Finish(At(10, 10), 4, new StepMark(At(9, 50), []))));
        Assert.False(make.Finish(At(9, 30), 99, new StepMark(At(9, 30), [])).Ok);
        Assert.False(Make.Begin(Nine, " ", Line, Milk, Nine).Ok);
    }

    [Fact]
    public void A_step_cannot_end_before_the_one_before_it_or_be_moved_past_the_next()
    {
        string Sentence(Outcome<ImmutableArray<MakeEvent>> act) => Assert.Single(act.Problems).Sentence;
        var make = Finish(Finish(Renneted(), 5, At(11, 4)), 6, At(12, 20));
        Assert.Equal("This time lies before the end of “Cook the curd” at 12:20: look at the times.", Sentence(make.Finish(At(12, 30), 7, new StepMark(At(12, 15), []))));
        // Typed minutes and stamped seconds of one moment are no disorder.
        Assert.True(make.Finish(At(12, 30), 7, new StepMark(At(12, 20).AddSeconds(-40), [])).Ok);
        make = Finish(make, 7, At(12, 30));
        Assert.Equal("This time lies after “Fill the moulds” at 12:30: look at the times.", Sentence(make.Correct(At(13, 0), 6, new StepMark(At(12, 45), []), "")));
        Assert.True(make.Correct(At(13, 0), 6, new StepMark(At(12, 20), [], "only a word"), "").Ok);
        var early = Finish(Begun(), 1, At(9, 35));
        Assert.Equal("This time lies before the end of “Warm the milk” at 09:35: look at the times.", Sentence(early.Start(At(9, 40), 4, At(9, 20))));
    }

    [Fact]
    public void When_the_rennet_went_in_can_be_corrected_and_moves_flocculation_and_cut()
    {
        var make = Renneted();
        var stood = make.AllSteps[3];
        make = Read(make.Log, make.Correct(At(11, 0), 4, stood.Done!, "looked at the wrong clock", started: At(10, 26)));
        Assert.Equal((TimeSpan.FromMinutes(10), At(10, 56)), (make.AllSteps[3].Flocculation!.Value, Due(make, 5)));
        Assert.Equal((At(10, 22), "looked at the wrong clock"), (Assert.Single(make.AllSteps[3].Was).Started!.Value, make.AllSteps[3].Was[0].Why));
        Assert.Equal("started", Assert.Single(make.Correct(At(11, 1), 4, make.AllSteps[3].Done!, "", started: At(10, 0)).Problems).Field);
        Assert.False(make.Correct(At(11, 1), 4, make.AllSteps[3].Done!, "", started: At(10, 26)).Ok);
        Assert.Contains("before the rennet went in", Assert.Single(make.Correct(At(11, 1), 4, make.AllSteps[3].Done!, "", started: At(10, 50)).Problems).Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(33.5, "Warmer milk makes acid sooner")]
    [InlineData(40, "From about 38 °C on a mesophilic culture slows")]
    public void Warm_milk_is_said_to_harm_a_culture_only_where_it_does(double celsius, string words)
    {
        var said = Assert.Single(Deviation.Of(Finish(Begun(), 1, At(9, 35), (Target.Celsius, celsius)))).InWords(Notation.Plain);
        Assert.Contains(words, said, StringComparison.Ordinal);
        Assert.DoesNotContain("kills", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Milk_far_too_sour_is_not_told_to_go_on_sooner()
    {
        var said = Assert.Single(Deviation.Of(Finish(Begun(), 3, At(10, 20), (Target.Ph, 5.0))), one => one.Target == Target.Ph).InWords(Notation.Plain);
        Assert.Contains("add no rennet before it is checked", said, StringComparison.Ordinal);
        Assert.DoesNotContain("go on sooner", said, StringComparison.Ordinal);
        Assert.Contains("go on sooner", Assert.Single(Deviation.Of(Finish(Begun(), 3, At(10, 20), (Target.Ph, 6.3))), one => one.Target == Target.Ph).InWords(Notation.Plain), StringComparison.Ordinal);
    }

    [Fact]
    public void Wheels_heavier_than_their_milk_could_yield_are_asked_about()
    {
        var make = Renneted();
        BornWheel Of(double? mass) => new(new(Guid.NewGuid()), 0, "House", mass, "");
        Assert.Equal(("2", "These wheels weigh 71.8 kg together, more than a third of the 20.6 kg of milk they came from: is the weight right? Send it again to keep it."), (make.WeightDoubt([Of(1.8), Of(70)])!.Field, make.WeightDoubt([Of(1.8), Of(70)])!.Sentence));
        Assert.Null(make.WeightDoubt([Of(1.8), Of(null)]));
        make = Read(make.Log, make.Bear(At(18, 0), [Of(4) with { Number = 7 }]));
        Assert.NotNull(make.WeightDoubt([Of(4)]));
        Assert.Null(make.WeightDoubt([make.Wheels[0] with { Kilograms = 4.1 }]));
    }

    [Fact]
    public void The_weight_of_a_wheel_is_corrected_and_the_old_one_kept()
    {
        var make = Read(Renneted().Log, Renneted().Bear(At(18, 0), [new BornWheel(new(Guid.NewGuid()), 7, "House 7", 70, "")]));
        make = Read(make.Log, make.Weigh(At(19, 0), 7, 1.4, "grams too many"));
        Assert.Equal("1,4 kg", WheelFactsOf.Of(make, make.Wheels[0], [])[WheelFacts.SizeFact]);
        Assert.Equal(new FormerWeight(7, 70, At(19, 0), "grams too many"), Assert.Single(make.FormerWeights));
        Assert.False(make.Weigh(At(19, 1), 7, 1.4, "").Ok);
        Assert.False(make.Weigh(At(19, 1), 8, 1.4, "").Ok);
        Assert.False(make.Weigh(At(19, 1), 7, -1, "").Ok);
    }

    [Fact]
    public void Facts_of_a_wheel_tell_recipe_milk_and_a_late_cut()
    {
        var make = Finish(Renneted(), 5, At(11, 24));
        make = Read(make.Log, make.Bear(At(18, 0), [new BornWheel(new(Guid.NewGuid()), 7, "House 7", 1.85, ""), new BornWheel(new(Guid.NewGuid()), 8, "House 8", null, "washed with 20 % water")]));
        var facts = WheelFactsOf.Of(make, make.Wheels[0], []);
        Assert.Equal(("House tomme", "2026-05-03", "cow's, 20 litres, 3,6 % fat", "raw", "1,85 kg"), (facts.Recipe, facts[WheelFacts.MadeFact], facts[WheelFacts.MilkFact], facts[WheelFacts.HeatTreatmentFact], facts[WheelFacts.SizeFact]));
        Assert.Equal("20 min later than planned", facts["vat day: cut the curd"]);
        Assert.Equal("washed with 20 % water", WheelFactsOf.Of(make, make.Wheels[1], [])["done otherwise"]);
    }

    [Fact]
    public void However_late_the_steps_are_done_time_never_runs_backwards()
    {
        Gen.Int[0, 90].Array[10].Sample(delays =>
        {
            var make = Begun();
            for (var number = 1; number <= 10; number++)
            {
                if (make.AllSteps[number - 1].Step.Kind == StepKind.Renneting) make = Read(make.Log, make.Start(make.Lanes[0].StartOf(number), number, make.Lanes[0].StartOf(number)));
                var when = Due(make, number).AddMinutes(delays[number - 1]);
                Assert.True(Due(make, number) >= make.Lanes[0].StartOf(number));
                make = Finish(make, number, when);
                if (number < 10) Assert.True(make.Lanes[0].StartOf(number + 1) >= when || make.AllSteps[number - 1].Step.Kind == StepKind.Renneting);
            }

            Assert.True(make.AllDone);
        });
    }
}
