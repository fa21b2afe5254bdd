using System.Collections.Immutable;
using Trier.Publishing.Recipes;
using Trier.Storage.Makes;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;
using Trier.Trials.Makes.Shelf;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;

namespace Trier.Demo;

/// <summary>The stores a demo trial is written into.</summary>
internal sealed record DemoStores(TrialStore Trials, WheelStore Wheels, RecipeStore Recipes, MakeStore Makes, ThingStore Things, DemoClock Clock);

/// <summary>
/// The invented trial “Hot or mild?”, still ageing: alpine-type wheels of two vats, the second split before the cook, with their vat-day records, the lots and brine
/// behind them, and one deviation: the first vat was cut late.
/// </summary>
internal static class AlpineTrial
{
    private const int SplitFrom = 7;
    private static readonly DateTimeOffset July = new(2025, 7, 26, 0, 0, 0, TimeSpan.FromHours(1));
    private static readonly DateTimeOffset August = new(2025, 8, 2, 0, 0, 0, TimeSpan.FromHours(1));
    private static readonly ThingId Culture = new(Fixed(1, 5));
    private static readonly ThingId Rennet = new(Fixed(2, 5));
    private static readonly ThingId Brine = new(Fixed(3, 5));

    public static TrialId Id { get; } = new(Fixed(1, 6));

    public static MakeId JulyMake { get; } = new(Fixed(1, 3));

    public static MakeId AugustMake { get; } = new(Fixed(2, 3));

    /// <summary>Writes it.</summary>
    /// <param name="stores">Where.</param>
    public static async Task SeedAsync(DemoStores stores)
    {
        await ShelfAsync(stores);
        stores.Clock.Set(July.AddHours(7));
        var line = await stores.Recipes.SaveAsync(new RecipeId(Fixed(1, 4)), ShippedRecipes.Named("alpine")!);
        await JulyAsync(stores, line);
        await AugustAsync(stores, (await stores.Recipes.FindAsync(line.Id))!);
        await PlanAsync(stores);
    }

    private static async Task ShelfAsync(DemoStores stores)
    {
        async Task Put(Guid id, ThingKind kind, string name, DateOnly? expires, string note) =>
            await stores.Things.BeginAsync(Thing.Begin(new(id), July.AddDays(-6).AddHours(9), kind, name, expires, note).Value);
        async Task Line(Guid id, DateTimeOffset at, ThingDeed deed, string note) => Sound(await stores.Things.WriteAsync(new(id), new ThingEvent(at, deed, note, [])));
        await Put(Culture.Value, ThingKind.Culture, "Whey starter of July", new DateOnly(2025, 8, 15), "kept from the last cooked wheel, frozen in cups");
        await Put(Rennet.Value, ThingKind.Rennet, "Calf rennet, lot 7", new DateOnly(2025, 12, 31), "200 IMCU to a mL");
        await Put(Brine.Value, ThingKind.Brine, "Brine of July", null, "20 %, 12 L, boiled; whey for a tenth of the water, calcium chloride");
        await Put(Fixed(4, 5), ThingKind.PhMeter, "Blue pH meter", null, "");
        await Put(Fixed(5, 5), ThingKind.Thermometer, "Vat thermometer", null, "");
        await Line(Fixed(4, 5), July.AddHours(8), ThingDeed.Checked, "7,00 as 7,01; 4,01 as 4,02");
        await Line(Fixed(5, 5), July.AddHours(8), ThingDeed.Checked, "ice water: 0 as 0,1");
        await Line(Brine.Value, July.AddDays(5).AddHours(18), ThingDeed.Mended, "back to 20 % with 90 g of salt");
        await Line(Fixed(4, 5), August.AddHours(8), ThingDeed.Checked, "7,00 as 7,02; 4,01 as 4,05");
    }

    private static async Task<AlpineDay> BeginAsync(DemoStores stores, MakeId id, string name, RecipeLine line, DateTimeOffset midnight, double litres, int wheels)
    {
        var now = stores.Clock.Set(midnight.AddHours(8).AddMinutes(25));
        var vat = Vat.Read(new() { Litres = litres, Fat = 3.2, Protein = 3.3, CaseinNumber = 0.785, Treatment = HeatTreatment.Pasteurised, Wheels = wheels, Lever = 4 }, line.Current.Recipe.Milk).Value.Vat;
        await stores.Makes.BeginAsync(id, Make.Begin(now, name, line, vat, midnight.AddHours(8).AddMinutes(30), invented: true).Value);
        return new(stores.Makes, stores.Clock, id, midnight);
    }

    private static async Task JulyAsync(DemoStores stores, RecipeLine line)
    {
        var day = await BeginAsync(stores, JulyMake, "Alpine, 26 July", line, July, 12, 1);
        foreach (var touch in Morning(6.61, flocculation: 17)) await day.TouchAsync(touch);
        await day.TouchAsync(new(5, (0, 10, 40), [(Target.Ph, 6.53)], "the telephone rang"));
        await day.TouchAsync(new(6, (0, 11, 22), [(Target.Celsius, 32)]));
        foreach (var touch in Afternoon(null, 52, 12, 23, [6.41, 6.37, 6.33])) await day.TouchAsync(touch);
        await day.TouchAsync(new(15, (1, 5, 20), [(Target.Kilopascals, 12), (Target.Ph, 5.28)]));
        await day.BearAsync(new BornWheel(new(Fixed(11, 2)), 0, "July", 1.06, ""));
        foreach (var touch in Salted(null, (1, 15, 40))) await day.TouchAsync(touch);
    }

    private static async Task AugustAsync(DemoStores stores, RecipeLine line)
    {
        var day = await BeginAsync(stores, AugustMake, "Split vat, 2 August", line, August, 24, 2);
        foreach (var touch in Morning(6.59, flocculation: 16)) await day.TouchAsync(touch);
        await day.TouchAsync(new(5, (0, 10, 23), [(Target.Ph, 6.54)]));
        await day.TouchAsync(new(6, (0, 11, 5), [(Target.Celsius, 32)], "two pots of 12 L from here"));
        var split = stores.Clock.Set(August.AddHours(11).AddMinutes(6));
        await day.ActAsync(make => make.Divide(split, [new VatPart("hot", 50, "", []), new VatPart("mild", 50, "", [new PartChange(SplitFrom, Target.Celsius.Key, 48), new PartChange(8, Target.Celsius.Key, 48), new PartChange(10, Target.Celsius.Key, 45)])]));
        foreach (var touch in Afternoon(1, 52, 12, 6, [6.42, 6.38, 6.34]).Concat(Afternoon(2, 48, 12, 9, [6.40, 6.36, 6.31])).OrderBy(touch => touch.At)) await day.TouchAsync(touch);
        await day.TouchAsync(new(15, (1, 5, 5), [(Target.Kilopascals, 12), (Target.Ph, 5.31)], "", 1));
        await day.TouchAsync(new(15, (1, 5, 10), [(Target.Kilopascals, 12), (Target.Ph, 5.24)], "", 2));
        await day.BearAsync(new BornWheel(new(Fixed(12, 2)), 0, "August hot", 1.04, "", 1), new BornWheel(new(Fixed(13, 2)), 0, "August mild", 1.09, "", 2));
        foreach (var touch in Salted(1, (1, 15, 20)).Concat(Salted(2, (1, 15, 25))).OrderBy(touch => touch.At)) await day.TouchAsync(touch);
    }

    /// <summary>From the milk to flocculation; the rennet is in at 9:44.</summary>
    private static ImmutableArray<DemoTouch> Morning(double ripe, int flocculation) =>
    [
        new(1, (0, 9, 11), [(Target.Celsius, 32)]),
        new(2, (0, 9, 12), [], Used: Culture),
        new(3, (0, 9, 42), [(Target.Ph, ripe), (Target.Celsius, 32)]),
        new(4, (0, 9, 43), [], Used: Rennet, Starts: true),
        new(4, (0, 9, 43 + flocculation), [(Target.Celsius, 32)]),
    ];

    /// <summary>From the cook to the long press; the cook ends at the time given.</summary>
    private static ImmutableArray<DemoTouch> Afternoon(int? part, double top, int hour, int minute, double[] ph)
    {
        (int, int, int) After(int minutes) => (0, hour + ((minute + minutes) / 60), (minute + minutes) % 60);
        return
        [
            new(7, After(0), [(Target.Celsius, top)], Part: part),
            new(8, After(30), [(Target.Celsius, top), (Target.Ph, ph[0])], Part: part),
            new(9, After(36), [(Target.Ph, ph[1])], Part: part),
            new(10, After(46), [(Target.Celsius, top == 52 ? 48 : 45), (Target.Ph, ph[2])], Part: part),
            new(11, After(77), [(Target.Kilopascals, 2)], Part: part),
            new(12, After(80), [(Target.Times, 1)], Part: part),
            new(13, After(170), [(Target.Kilopascals, 6)], Part: part),
            new(14, After(173), [(Target.Times, 1)], Part: part),
        ];
    }

    private static ImmutableArray<DemoTouch> Salted(int? part, (int Day, int Hour, int Minute) lifted) =>
    [
        new(16, lifted, [(Target.BrinePercent, 20), (Target.Celsius, 12)], Part: part, Used: Brine),
        new(17, (lifted.Day + 2, lifted.Hour, lifted.Minute + 10), [(Target.Celsius, 12), (Target.HumidityPercent, 82)], Part: part),
    ];

    private static async Task PlanAsync(DemoStores stores)
    {
        var at = stores.Clock.Set(August.AddDays(4).AddHours(20));
        await stores.Trials.BeginAsync(Id, DraftTasting.Begin(at, new TrialPlan(
            "Hot or mild?",
            "Does cooking the curd to 52 °C or to 48 °C make the wheel our members like better at five months?",
            "The Giesta Round",
            new DateOnly(2026, 1, 10),
            new CountingRule.AveragePlace(),
            JuniorsCount: true,
            Invented: true)).Value);
        foreach (var wheel in (await stores.Wheels.AllAsync()).Where(wheel => wheel.Facts[WheelFacts.MakeFact] is not null))
        {
            var outcome = await stores.Trials.ActAsync(Id, tasting => ((DraftTasting)tasting).Enter(at, wheel));
            if (!outcome.Ok) throw new InvalidOperationException(outcome.Problems[0].Sentence);
        }
    }

    private static Guid Fixed(int number, byte kind) => new(number, 2025, 726, [0, 0, 0, 0, 0, 0, 0, kind]);

    private static void Sound(Outcome<Thing> outcome)
    {
        if (!outcome.Ok) throw new InvalidOperationException(outcome.Problems[0].Sentence);
    }
}
