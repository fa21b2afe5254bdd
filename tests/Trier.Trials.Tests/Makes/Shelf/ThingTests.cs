using System.Collections.Immutable;
using Trier.Dairy.Milk;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;
using Trier.Trials.Makes.Shelf;
using Trier.Trials.Tests.Makes.Recipes;

namespace Trier.Trials.Tests.Makes.Shelf;

public sealed class ThingTests
{
    private static readonly DateTimeOffset Nine = new(2026, 5, 3, 9, 0, 0, TimeSpan.FromHours(2));

    private static Thing New(ThingKind kind, DateOnly? expires = null, DateTimeOffset? at = null) => Thing.Begin(new(Guid.NewGuid()), at ?? Nine, kind, "It", expires, "").Value;

    private static Thing Do(Thing thing, ThingDeed deed, DateTimeOffset at, bool raw = false, params ImmutableArray<int> wheels) =>
        thing with { Log = thing.Log.Add(thing.Do(new ThingEvent(at, deed, "", wheels, raw)).Value) };

    [Fact]
    public void A_brine_remembers_raw_milk_until_it_is_boiled()
    {
        var brine = Do(New(ThingKind.Brine), ThingDeed.Used, Nine.AddDays(1), raw: true, 3, 4);
        Assert.Contains(brine.Minds(Nine.AddDays(2)), said => said.StartsWith("Raw-milk wheels went through it", StringComparison.Ordinal));
        var cleaned = Do(brine, ThingDeed.Cleaned, Nine.AddDays(2));
        Assert.NotEmpty(cleaned.Minds(Nine.AddDays(2)));
        Assert.Empty(Do(cleaned, ThingDeed.Boiled, Nine.AddDays(3)).Minds(Nine.AddDays(4)));
        Assert.Single(Do(cleaned, ThingDeed.Boiled, Nine.AddDays(3)).Minds(Nine.AddDays(300)));
    }

    [Fact]
    public void A_lot_past_its_date_and_a_meter_without_a_check_say_so()
    {
        Assert.Empty(New(ThingKind.Rennet, new DateOnly(2026, 5, 3)).Minds(Nine));
        Assert.Single(New(ThingKind.Rennet, new DateOnly(2026, 5, 2)).Minds(Nine));
        var meter = New(ThingKind.PhMeter);
        Assert.Single(meter.Minds(Nine));
        var known = Do(meter, ThingDeed.Checked, Nine);
        Assert.Empty(known.Minds(Nine.AddHours(20)));
        Assert.Single(known.Minds(Nine.AddHours(25)));
    }

    [Fact]
    public void Only_what_is_done_to_such_a_thing_is_written_and_in_order()
    {
        Assert.False(New(ThingKind.Scale).Do(new ThingEvent(Nine, ThingDeed.Boiled, "", [])).Ok);
        Assert.False(New(ThingKind.Brine).Do(new ThingEvent(Nine.AddDays(-1), ThingDeed.Used, "", [])).Ok);
        Assert.False(Do(New(ThingKind.Brine), ThingDeed.Emptied, Nine).Do(new ThingEvent(Nine, ThingDeed.Used, "", [])).Ok);
        Assert.False(New(ThingKind.Brine).Do(new ThingEvent(Nine, ThingDeed.Used, "", [0])).Ok);
        Assert.Equal("name", Assert.Single(Thing.Begin(new(Guid.NewGuid()), Nine, ThingKind.Brine, " ", null, "").Problems).Field);
    }

    [Fact]
    public void A_reading_made_with_an_unchecked_meter_says_so()
    {
        var line = new RecipeLine(new(Guid.Empty), [new(1, Drafts.Recipe, Nine, false)]);
        var vat = Vat.Read(new() { Litres = 20 }, Species.Cow).Value.Vat;
        ImmutableArray<MakeEvent> events = [.. Make.Begin(Nine, "M", line, vat, Nine).Value, new StepDone(Nine, 3, new StepMark(Nine.AddHours(1), [new("pH", 6.5)]))];
        var make = Make.Read(new(Guid.Empty), [.. events.Select((happened, index) => new LoggedMake(index + 1, happened))]);
        Assert.Equal("pH of step 3: no check of a pH meter is written within a day before. Take it as a hint.", Assert.Single(CheckRemarks.InWords(make, [])));
        Assert.Empty(CheckRemarks.InWords(make, [Do(New(ThingKind.PhMeter), ThingDeed.Checked, Nine)]));
        Assert.Single(CheckRemarks.InWords(make, [Do(New(ThingKind.PhMeter, at: Nine.AddDays(-3)), ThingDeed.Checked, Nine.AddDays(-2))]));
        Assert.Equal(["pH meter not checked within a day"], CheckRemarks.Beside(make.AllSteps[2], []));
    }
}
