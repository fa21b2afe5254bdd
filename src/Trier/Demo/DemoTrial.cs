using System.Collections.Immutable;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Trier.Publishing.BallotFiles;
using Trier.Storage;
using Trier.Storage.Makes;
using Trier.Storage.Sqlite;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Commitments;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Verdicts;
using Trier.Web.Hosting;

namespace Trier.Demo;

/// <summary>Writes the invented trial “Thistle or calf?” into a fresh database, as if the afternoon had been, and beside it <see cref="AlpineTrial"/>, still ageing.</summary>
internal static class DemoTrial
{
    public static TrialId Id { get; } = new(new Guid("0198fb52-6c00-7000-8000-000000000417"));

    /// <summary>Seeds a fresh data folder.</summary>
    /// <param name="settings">Where; must not hold a database yet.</param>
    /// <returns>The trial.</returns>
    public static async Task<TrialId> SeedAsync(HostSettings settings)
    {
        Directory.CreateDirectory(settings.DataFolder);
        var clock = new DemoClock();
        using var writer = new WriterGate();
        var databases = new SqliteDatabases(settings.Database);
        await using (var db = databases.CreateDbContext()) await db.Database.MigrateAsync();
        var trials = new TrialStore(databases, writer, clock);
        var wheels = new WheelStore(databases, writer, clock);
        await AlpineTrial.SeedAsync(new(trials, wheels, new RecipeStore(databases, writer, clock), new MakeStore(databases, writer, clock), new ThingStore(databases, writer), clock));
        foreach (var wheel in DemoPeople.Wheels) await wheels.SaveAsync(new Wheel(wheel.Wheel, wheel.Name, wheel.Facts));

        var ballots = Ballots();
        await trials.BeginAsync(Id, Morning(clock));
        foreach (var sealing in Sealing(clock, ballots)) await ActAsync(trials, sealing);
        await AfternoonAsync(trials, clock, ballots);
        return Id;
    }

    private static ImmutableArray<VoterRecord> Ballots()
    {
        using var stream = typeof(DemoTrial).Assembly.GetManifestResourceStream("demo-trial.ballots.csv") ?? throw new InvalidOperationException("The demo's ballots are not in the program.");
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return BallotFile.Read(copy.ToArray(), "demo", BallotFileOptions.Default).Value.Voters;
    }

    private static ImmutableArray<DayEvent> Morning(DemoClock clock)
    {
        var at = clock.At(10, 0);
        var events = ImmutableArray.CreateBuilder<DayEvent>();
        events.Add(new TrialPlanned(at, new TrialPlan(
            "Thistle or calf?",
            "Which of our four ways do members like best at about five months?",
            "The Giesta Round",
            new DateOnly(2025, 8, 30),
            new CountingRule.AveragePlace(),
            JuniorsCount: true,
            Invented: true)
        {
            Ballot = BallotPlan.Of(liking: true, remark: true, [BallotPlan.Salt], ["smooth", "nutty", "sour", "buttery", "grassy", "firm", "sweet", "sharp", "milky", "grainy", "salty", "crumbly"], again: false).Value,
        }));
        events.AddRange(DemoPeople.Wheels.Select(entry => new EntryAdded(at, entry)));
        events.AddRange(DemoPeople.Tasters.Select(taster => new TasterAdded(at, taster.Id, taster.Number, taster.Name, taster.Maker, taster.Junior, 1)));
        events.Add(new SampleLeftOff(at, DemoPeople.Tasters[9].Id, [DemoPeople.Wheels[5].Wheel]));
        return events.ToImmutable();
    }

    private static ImmutableArray<DayEvent>[] Sealing(DemoClock clock, ImmutableArray<VoterRecord> ballots)
    {
        var wheel = DemoPeople.Wheels;
        KeyLine Line(int code, int number, bool counts = true) => new(BlindCode.Of(code), wheel[number - 1].Wheel, counts);
        KeyLine[] morning = [Line(238, 3), Line(304, 4), Line(417, 1), Line(593, 2), Line(751, 5), Line(946, 6)];
        KeyLine[] afternoon = [Line(238, 3), Line(417, 1), Line(593, 2), Line(751, 5), Line(862, 1, counts: false), Line(946, 6), Line(304, 4)];
        var orders = ballots.Take(6).Select(ballot => ballot.ServingOrder.Select(text => BlindCode.Of(int.Parse(text, System.Globalization.CultureInfo.InvariantCulture))).ToImmutableArray()).ToImmutableArray();
        var plates = DemoPeople.Tasters.Select((taster, index) => new Plate(taster.Id, [.. orders[Row(index)].Where(code => taster.Number != 10 || code != BlindCode.Of(946))])).ToImmutableArray();
        ImmutableArray<BlindCode> Before(ImmutableArray<BlindCode> order) => [.. order.Select(code => code == BlindCode.Of(862) ? BlindCode.Of(304) : code)];
        var first = clock.At(14, 20);
        var second = clock.At(14, 52);
        return
        [
            [new KeySealed(first, new Key(1, [.. morning], []), [.. orders.Select(Before)], [.. plates.Select(plate => new Plate(plate.Taster, Before(plate.Codes)))])],
            [new KeyOpened(clock.At(14, 25), "Baltasar", Early: false)],
            [
                new WheelWithdrawn(second, wheel[3].Wheel, "rind crack, blue mould 35 mm into the paste, musty", "Benedita"),
                new RepeatChosen(second, wheel[0].Wheel),
                new KeySealed(second, new Key(2, [.. afternoon], [BlindCode.Of(304)]), orders, plates),
            ],
            [new TastingOpened(clock.At(16, 10))],
        ];
    }

    // The square is used twice, then rows 1 and 4; the maker, who tastes last, takes row 2.
    private static int Row(int index) => index switch { < 12 => index % 6, 12 => 0, 13 => 3, _ => 1 };

    private static async Task AfternoonAsync(TrialStore trials, DemoClock clock, ImmutableArray<VoterRecord> ballots)
    {
        var minute = 12;
        foreach (var taster in DemoPeople.Tasters.Where(taster => taster.Taste is not null))
            await ActAsync(trials, [new TasteDeclared(clock.At(16, taster.Number == 13 ? 31 : minute), taster.Id, taster.Taste!.Value)]);
        foreach (var (number, agreed) in new[] { (2, new Agreed(Named: false, Quoted: true)), (3, new Agreed(Named: true, Quoted: true)), (11, new Agreed(Named: true, Quoted: false)) })
            await ActAsync(trials, [new AgreementGiven(clock.At(16, minute), DemoPeople.Tasters[number - 1].Id, agreed)]);
        await ActAsync(trials, [new TasterCameLate(clock.At(16, 31), DemoPeople.Tasters[12].Id)]);
        await ActAsync(trials, [new TasterLeft(clock.At(16, 38), DemoPeople.Tasters[8].Id)]);
        minute = 40;
        foreach (var taster in DemoPeople.Tasters.Where(taster => !taster.Maker))
        {
            var said = ballots.Single(ballot => ballot.Id == $"T{taster.Number:00}");
            var left = taster.Number == 9;
            _ = left ? clock.At(16, 37) : clock.At(16 + (minute / 60), minute++ % 60);
            await SendAsync(trials, taster, said.Places, said.Answers, left ? BallotStage.Tasting : BallotStage.Sent);
            if (taster.Number == 7) await ActAsync(trials, [new NotesCompared(clock.At(16, 50), [DemoPeople.Tasters[5].Id, DemoPeople.Tasters[6].Id])]);
        }

        _ = clock.At(17, 3);
        ImmutableArray<ImmutableArray<string>> makers = [["946"], ["238"], ["593"], ["417"], ["862"], ["751"]];
        await SendAsync(trials, DemoPeople.Tasters[^1], makers, ImmutableSortedDictionary<string, SampleAnswer>.Empty, BallotStage.Sent);
        await ActAsync(trials, [new TastingClosed(clock.At(17, 5))]);
        await ActAsync(trials, [new KeyRevealed(clock.At(17, 10))]);
    }

    private static async Task SendAsync(TrialStore trials, DemoPerson taster, ImmutableArray<ImmutableArray<string>> places, ImmutableSortedDictionary<string, SampleAnswer> answers, BallotStage stage)
    {
        static BlindCode Code(string text) => BlindCode.TryParse(text, out var code) ? code : throw new InvalidOperationException($"“{text}” is no code of the demo.");
        var plate = (await trials.FindAsync(Id))!.Book.Served(taster.Id);
        var ballot = Ballot.Of(plate, places.Select(group => group.Select(Code).ToList()), answers.Select(pair => KeyValuePair.Create(Code(pair.Key), pair.Value))).Value;
        var source = taster.OnPaper ? BallotSource.Paper : BallotSource.Phone;
        var outcome = await trials.ReceiveAsync(Id, new BallotSend(new RevisionId(new Guid(taster.Number, 8, 30, [0, 0, 0, 0, 0, 0, 4, 17])), taster.Id, null, "demo", source, stage, ballot));
        if (!outcome.Ok) throw new InvalidOperationException(outcome.Problems[0].Sentence);
    }

    private static async Task ActAsync(TrialStore trials, ImmutableArray<DayEvent> events)
    {
        // The same demo every time: its salts are no secret.
        var outcome = await trials.ActAsync(Id, tasting => Outcome.Of(Committing.With(tasting.Book, events, SHA256.HashData([(byte)tasting.Book.Commitments.Length]).AsSpan(0, Commitment.SaltBytes))));
        if (!outcome.Ok) throw new InvalidOperationException(outcome.Problems[0].Sentence);
    }
}
