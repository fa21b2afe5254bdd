using System.Collections.Immutable;
using Trier.Dairy.Milk;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;
using Trier.Trials.Tests.Makes.Recipes;

namespace Trier.Trials.Tests.Makes.Days;

public sealed class SlowAcidTests
{
    private static readonly DateTimeOffset Nine = new(2026, 5, 3, 9, 0, 0, TimeSpan.FromHours(2));
    private static readonly Vat Milk = Vat.Read(new() { Litres = 20, Fat = 3.6, Treatment = HeatTreatment.Raw }, Species.Cow).Value.Vat;

    private static Make Begun() => Read([], Make.Begin(Nine, "House", new RecipeLine(new(Guid.Empty), [new(1, Drafts.Recipe, Nine, false)]), Milk, Nine));

    private static Make Read(ImmutableArray<LoggedMake> log, Outcome<ImmutableArray<MakeEvent>> act) =>
        Make.Read(new(Guid.Empty), [.. log, .. act.Value.Select((happened, index) => new LoggedMake(log.Length + index + 1, happened))]);

    private static Make Pressed(double hours, double ph)
    {
        var make = Begun();
        var pressed = make.AllSteps.First(step => step.Step.Kind == StepKind.Press).Number;
        return Read(make.Log, make.Finish(Nine.AddHours(hours), pressed, new StepMark(Nine.AddHours(hours), [new("pH", ph)])));
    }

    [Theory]
    [InlineData(25, 6.2, "25 hours after the start the pH is 6,20, above 5,5: hold these wheels back, do not serve them (common practice, no source).")]
    [InlineData(24, 5.51, "24 hours after the start the pH is 5,51, above 5,5: hold these wheels back, do not serve them (common practice, no source).")]
    [InlineData(9.9, 5.9, "9 hours after the start the pH is 5,90, above 5,8: hold these wheels back, do not serve them (common practice, no source).")]
    public void A_reading_above_the_limit_of_its_hour_holds_the_wheels_back(double hours, double ph, string words)
    {
        var slow = Assert.Single(SlowAcid.Of(Pressed(hours, ph).Lanes[0]));
        Assert.StartsWith(words, slow.InWords(new(UnitSystem.Metric, ',')), StringComparison.Ordinal);
        Assert.DoesNotContain("safe", slow.InWords(Notation.Plain), StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData(7.9, 6.4)]
    [InlineData(8, 5.8)]
    [InlineData(23.9, 5.8)]
    [InlineData(24, 5.5)]
    public void A_reading_at_the_limit_or_before_its_hour_says_nothing(double hours, double ph) => Assert.Empty(SlowAcid.Of(Pressed(hours, ph).Lanes[0]));

    [Fact]
    public void It_goes_into_the_facts_of_every_wheel_and_out_again_with_a_corrected_slip()
    {
        var make = Pressed(25, 6.2);
        var wheel = new BornWheel(new(Guid.NewGuid()), 7, "House 7", 1.85, "");
        make = Read(make.Log, make.Bear(Nine.AddHours(26), [wheel]));
        Assert.Equal("pH 6,20 25 hours after the start, above 5,5", WheelFactsOf.Of(make, wheel, [])[WheelFacts.HoldBackFact]);
        var step = make.AllSteps.First(step => step.Done is not null);
        make = Read(make.Log, make.Correct(Nine.AddHours(27), step.Number, step.Done! with { Readings = [new("pH", 5.2)] }, "wrong buffer"));
        Assert.Null(WheelFactsOf.Of(make, wheel, [])[WheelFacts.HoldBackFact]);
    }
}
