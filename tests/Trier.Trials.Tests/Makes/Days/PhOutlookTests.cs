using System.Collections.Immutable;
using Trier.Dairy.Milk;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;
using Trier.Trials.Tests.Makes.Recipes;

namespace Trier.Trials.Tests.Makes.Days;

public sealed class PhOutlookTests
{
    private static readonly DateTimeOffset Nine = new(2026, 5, 3, 9, 0, 0, TimeSpan.FromHours(2));
    private static readonly RecipeLine Line = new(new(Guid.Empty), [new(1, Drafts.Recipe, Nine, false)]);
    private static readonly Vat Milk = Vat.Read(new() { Litres = 20, Fat = 3.6, Treatment = HeatTreatment.Raw }, Species.Cow).Value.Vat;

    private static Make Act(ImmutableArray<LoggedMake> log, Outcome<ImmutableArray<MakeEvent>> act)
    {
        Assert.True(act.Ok, string.Join(" ", act.Problems.Select(problem => problem.Sentence)));
        return Make.Read(new(Guid.Empty), [.. log, .. act.Value.Select((happened, index) => new LoggedMake(log.Length + index + 1, happened))]);
    }

    private static Make Finish(Make make, int step, int minute, double? ph = null) =>
        Act(make.Log, make.Finish(Nine.AddMinutes(minute), step, new StepMark(Nine.AddMinutes(minute), ph is { } read ? [new(Target.Ph.Key, read)] : [])));

    /// <summary>pH 6.60 an hour after the start, typed at the ripening, then at the cut and the hooping as told.</summary>
    private static Make Day(double? cut, double? hoop)
    {
        var make = Finish(Finish(Finish(Act([], Make.Begin(Nine, "House, 3 May", Line, Milk, Nine)), 1, 35), 2, 36), 3, 60, 6.60);
        make = Act(make.Log, make.Start(Nine.AddMinutes(61), 4, Nine.AddMinutes(61)));
        return Finish(Finish(Finish(Finish(make, 4, 75), 5, 120, cut), 6, 150), 7, 180, hoop);
    }

    private static Make Metered(Make make, int? part, params (double Minute, double Ph)[] points) => Act(make.Log, make.Keep(
        Nine.AddHours(6),
        new MeterCurve("curve.csv", Target.Ph.Key, [.. points.Select(point => new MeterPoint(Nine.AddMinutes(point.Minute), point.Ph))], points.Length, part)));

    private static PhOutlook Of(Make make) => PhOutlook.Of(make, make.Lanes[0])!;

    [Fact]
    public void Three_typed_readings_foretell_the_next_ph_the_recipe_aims_at()
    {
        var outlook = Of(Day(6.50, 6.40));
        Assert.Equal((8, 5.4, 3), (outlook.Step.Number, outlook.Aim.Value, outlook.Readings.Length));
        // By hand: 0.10 an hour from 6.40 at 12:00, so 5.40 at 22:00.
        Assert.True(outlook.Forecast.TryAnswer(out var answer, out _));
        Assert.Equal(0, (outlook.At(answer.Value.After.Likely) - Nine.AddHours(13)).TotalSeconds, 1.0);
        Assert.Contains(answer.Questions, question => question.Sentence.Contains("further ahead", StringComparison.Ordinal));
        Assert.False(outlook.Met);
    }

    [Fact]
    public void Two_readings_are_told_to_be_too_few_and_none_at_all_say_nothing()
    {
        Assert.False(Of(Day(6.50, null)).Forecast.TryAnswer(out _, out var problems));
        Assert.Contains("a forecast needs at least 3", Assert.Single(problems).Sentence, StringComparison.Ordinal);
        var begun = Act([], Make.Begin(Nine, "House, 3 May", Line, Milk, Nine));
        Assert.Null(PhOutlook.Of(begun, begun.Lanes[0]));
        var pressed = Finish(Day(6.50, 6.40), 8, 540, 5.4);
        Assert.Null(PhOutlook.Of(pressed, pressed.Lanes[0]));
    }

    [Fact]
    public void A_meter_that_reads_every_minute_is_thinned_back_from_its_last_reading()
    {
        var outlook = Of(Metered(Day(6.50, 6.40), null, [.. Enumerable.Range(0, 61).Select(minute => (180.0 + minute, 6.40 - (0.005 * minute)))]));
        Assert.Equal([180, 190, 200, 210, 220, 230, 240], outlook.Readings.Select(point => (point.When - Nine).TotalMinutes));
        Assert.Equal(6.10, outlook.Last.Value, 1e-9);
    }

    [Fact]
    public void Two_meters_are_never_mixed_and_the_one_that_reaches_further_counts()
    {
        var early = Of(Metered(Day(6.50, 6.40), null, (20, 6.7), (60, 6.66), (100, 6.62)));
        Assert.Equal([6.60, 6.50, 6.40], early.Readings.Select(point => point.Value));
        // A meter with two readings foretells nothing, however late they are.
        var few = Of(Metered(Day(6.50, 6.40), null, (190, 6.7), (210, 6.66)));
        Assert.Equal([6.60, 6.50, 6.40], few.Readings.Select(point => point.Value));
    }

    [Fact]
    public void An_aim_the_last_reading_has_reached_is_met() => Assert.True(Of(Day(6.0, 5.38)).Met);
}
