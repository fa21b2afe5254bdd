using System.Collections.Immutable;
using Trier.Dairy.Milk;
using Trier.Storage.Common;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;
using Trier.Trials.Makes.Shelf;

namespace Trier.Storage.Makes;

public sealed class MakeStoreTests
{
    private static readonly RecipeDraft Draft = new()
    {
        Name = "Käse “½”",
        Style = "tomme",
        Milk = "goat",
        Cheese = [new("moisturePercent", 43, 2)],
        Steps =
        [
            new() { Kind = "heat", Aims = [new("celsius", 32)] },
            new() { Kind = "add", What = "lysozyme", Per = "g/L", Aims = [new("dose", 0.02)] },
            new() { Kind = "renneting", Aims = [new("imcuPerLitre", 40), new("flocMinutes", 14), new("multiplier", 3)] },
            new() { Kind = "cut", Note = "slowly", Aims = [new("millimetres", 10)] },
        ],
    };

    private static readonly Vat Milk = Vat.Read(new() { Litres = 12, Fat = 3.9, Treatment = HeatTreatment.Pasteurised }, Species.Goat).Value.Vat;

    private static Recipe Read(RecipeDraft draft) => Recipe.Read(draft).Value.Recipe;

    private static (RecipeStore Recipes, MakeStore Makes) Stores(Room room) => (new(room.Databases, room.Writer, room.Clock), new(room.Databases, room.Writer, room.Clock));

    private static async Task<(MakeId Id, RecipeLine Line)> BeginAsync(RecipeStore recipes, MakeStore makes)
    {
        var line = await recipes.SaveAsync(new(Guid.NewGuid()), Read(Draft));
        var id = new MakeId(Guid.NewGuid());
        await makes.BeginAsync(id, Make.Begin(makes.Now, "Goat, May", line, Milk, makes.Now).Value);
        return (id, line);
    }

    [Fact]
    public async Task A_used_version_stays_as_it_was_and_a_change_is_the_next_one()
    {
        await using var room = await Room.OpenAsync();
        var (recipes, makes) = Stores(room);
        var (_, line) = await BeginAsync(recipes, makes);
        Assert.Equal((1, false), (line.Current.Number, line.Current.Used));
        var changed = await recipes.SaveAsync(line.Id, Read(Draft with { Name = "Second" }));
        Assert.Equal([(1, "Käse “½”", true), (2, "Second", false)], changed.Versions.Select(version => (version.Number, version.Recipe.Name, version.Used)));
        var again = await recipes.SaveAsync(line.Id, Read(Draft with { Name = "Second, mended" }));
        Assert.Equal([1, 2], again.Versions.Select(version => version.Number));
        Assert.Equal("Second, mended", again.Current.Recipe.Name);
        Assert.Equal(again.Current.Recipe, Assert.Single(await recipes.AllAsync()).Current.Recipe);
        Assert.Equal(Read(Draft), again.Versions[0].Recipe);
    }

    [Fact]
    public async Task A_day_is_read_back_as_it_went_and_the_same_send_twice_is_one_touch()
    {
        await using var room = await Room.OpenAsync();
        var (recipes, makes) = Stores(room);
        var (id, _) = await BeginAsync(recipes, makes);
        var send = Guid.NewGuid();
        Task<Outcome<Make>> Touch() => makes.ActAsync(id, send, make => make.Finish(makes.Now, 1, new StepMark(makes.Now, [new("celsius", 31.5)], "wet “hands”")));
        var first = await Touch();
        var second = await Touch();
        Assert.True(second.Ok);
        Assert.Equal(2, second.Value.Log.Length);
        Assert.Equal(first.Value.AllSteps[0].Done, second.Value.AllSteps[0].Done);
        var found = (await makes.FindAsync(id))!;
        Assert.Equal(31.5, found.AllSteps[0].Done![Target.Celsius]);
        Assert.Equal("wet “hands”", found.AllSteps[0].Done!.Note);
        Assert.False((await makes.ActAsync(new MakeId(Guid.NewGuid()), null, make => make.Undo(makes.Now, 1))).Ok);
    }

    [Fact]
    public async Task Wheels_get_numbers_of_their_own_and_their_facts_flow_to_trials()
    {
        await using var room = await Room.OpenAsync();
        var (recipes, makes) = Stores(room);
        var (one, _) = await BeginAsync(recipes, makes);
        var (two, _) = await BeginAsync(recipes, makes);
        BornWheel New(string name) => new(new(Guid.NewGuid()), 0, name, 1.2, "");
        await makes.BearAsync(one, Guid.NewGuid(), [New("A"), New("B")]);
        var send = Guid.NewGuid();
        ImmutableArray<BornWheel> third = [New("C")];
        await makes.BearAsync(two, send, third);
        Assert.Equal([3], (await makes.BearAsync(two, send, third)).Value.Wheels.Select(wheel => wheel.Number));
        Assert.Contains("another make", Assert.Single((await makes.BearAsync(one, send, [New("D")])).Problems).Sentence, StringComparison.Ordinal);
        var wheels = await room.Wheels.AllAsync();
        Assert.Equal(["A", "B", "C"], wheels.Select(wheel => wheel.Name));
        Assert.All(wheels, wheel => Assert.Equal(["egg"], wheel.Facts.Allergens));
        Assert.Equal("Käse “½”", wheels[0].Facts.Recipe);
        Assert.Equal(two, (await makes.OfWheelAsync(3))!.Id);
        Assert.Null(await makes.OfWheelAsync(4));
        Assert.False((await makes.BearAsync(two, null, [New(" ")])).Ok);
        Assert.Equal(3, (await room.Wheels.AllAsync()).Length);
    }

    [Fact]
    public async Task Every_kind_of_event_comes_back_as_it_was_written()
    {
        await using var room = await Room.OpenAsync();
        var (recipes, makes) = Stores(room);
        var (id, _) = await BeginAsync(recipes, makes);
        var begins = (await makes.FindAsync(id))!.Begun.Begins;
        ImmutableArray<MakeEvent> all =
        [
            new StepStarted(makes.Now, 3, begins),
            new StepDone(makes.Now, 3, new StepMark(begins, [new("pH", 6.5)], "n")),
            new StepCorrected(makes.Now, 3, new StepMark(begins, [], ""), "why", Started: begins.AddMinutes(-2)),
            new DeedUndone(makes.Now, 99),
            new VatSplit(makes.Now, 4, [new VatPart("as ever", 50, "", []), new VatPart("fine “½”", 50, "by hand", [new PartChange(4, "millimetres", 6), new PartChange(4)])]),
            new StepDone(makes.Now, 4, new StepMark(begins, [], "", new(Guid.NewGuid())), 2),
            new WheelsBorn(makes.Now, [new BornWheel(new(Guid.NewGuid()), 9, "W", 1.5, "d")]),
            new WheelWeighed(makes.Now, 9, 1.4, "why"),
            new MeterRead(makes.Now, new MeterCurve("f.csv", "pH", [new(begins, 6.6), new(begins.AddMinutes(1), 6.59)], 2, 1)),
        ];
        var written = (await makes.ActAsync(id, null, _ => Outcome.Of(all))).Value;
        var found = (await makes.FindAsync(id))!;
        Assert.Equal(typeof(MakeEvent).GetCustomAttributes(typeof(System.Text.Json.Serialization.JsonDerivedTypeAttribute), false).Length, all.Select(happened => happened.GetType()).Distinct().Count() + 1);
        for (var i = 1; i < written.Log.Length; i++) Assert.Equal(RecordJson.Write(written.Log[i].Event), RecordJson.Write(found.Log[i].Event));
        Assert.Equal(written.AllSteps[2].Was.Length, found.AllSteps[2].Was.Length);
        Assert.Equal(2, Assert.Single(found.Curves).Points.Length);
    }

    [Fact]
    public async Task What_is_done_after_the_wheels_have_their_numbers_still_reaches_their_facts_and_what_was_written_by_hand_stays()
    {
        await using var room = await Room.OpenAsync();
        var (recipes, makes) = Stores(room);
        var things = new ThingStore(room.Databases, room.Writer);
        var rennet = Thing.Begin(new(Guid.NewGuid()), makes.Now.AddDays(-90), ThingKind.Rennet, "Lot 12", DateOnly.FromDateTime(makes.Now.DateTime).AddDays(-1), "").Value;
        await things.BeginAsync(rennet);
        var (id, _) = await BeginAsync(recipes, makes);
        var begins = (await makes.FindAsync(id))!.Begun.Begins;
        await makes.BearAsync(id, null, [new BornWheel(new(Guid.NewGuid()), 0, "Wheel", null, "")]);
        var born = Assert.Single(await room.Wheels.AllAsync());
        await room.Wheels.SaveAsync(born with { Name = "Mine", Facts = WheelFacts.Of([.. born.Facts.Values.Select(pair => KeyValuePair.Create(pair.Key, (string?)pair.Value)), new(WheelFacts.NotesFact, "a chip"), new(WheelFacts.MilkFact, "goat, from the hill")]) });
        await makes.ActAsync(id, null, make => make.Start(makes.Now, 3, begins.AddMinutes(-20), used: rennet.Id));
        await makes.ActAsync(id, null, make => make.Finish(makes.Now, 3, new StepMark(begins.AddMinutes(-20), [])));
        var after = Assert.Single(await room.Wheels.AllAsync());
        Assert.Equal(("Mine", "a chip", "goat, from the hill"), (after.Name, after.Facts[WheelFacts.NotesFact], after.Facts[WheelFacts.MilkFact]));
        Assert.Equal(("Lot 12", "Lot 12"), (after.Facts["lot of rennet"], after.Facts["lot of rennet, past its date"]));
        Assert.Equal("flocculation after 0 min, 14 min earlier than planned", after.Facts["vat day: add the rennet"]);
        await makes.ActAsync(id, null, make => make.Correct(makes.Now, 3, new StepMark(begins.AddMinutes(-5), [], "", rennet.Id), "slip"));
        Assert.Null(Assert.Single(await room.Wheels.AllAsync()).Facts["vat day: add the rennet"]);
        await makes.ActAsync(id, null, make => make.Weigh(makes.Now, make.Wheels[0].Number, 1.4, ""));
        Assert.Equal("1,4 kg", Assert.Single(await room.Wheels.AllAsync()).Facts[WheelFacts.SizeFact]);
    }
}
