using System.Buffers.Binary;
using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Trier.Statistics.Randomness;
using Trier.Storage.Access;
using Trier.Storage.Crasher;
using Trier.Storage.Makes;
using Trier.Storage.Sqlite;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;

namespace Trier.Storage.Common;

/// <summary>A database file in a folder of its own, with one trial of four wheels in it; both gone at the end.</summary>
internal sealed class Room : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("trier-storage-");
    private readonly WriterGate _writer = new();

    private Room()
    {
        Databases = new SqliteDatabases(Database);
        Trials = new TrialStore(Databases, _writer, Clock);
        Wheels = new WheelStore(Databases, _writer, Clock);
        Links = new SignInLinks(Databases, _writer, Clock);
        WalkIns = new WalkIns(Databases, _writer, Clock);
    }

    public SteppingClock Clock { get; } = new();

    public SqliteDatabases Databases { get; }

    public WriterGate Writer => _writer;

    public TrialStore Trials { get; private set; }

    public WheelStore Wheels { get; }

    public SignInLinks Links { get; }

    public WalkIns WalkIns { get; }

    public TrialId Trial { get; } = new(Guid.NewGuid());

    public ImmutableArray<TasterId> Tasters { get; private set; } = [];

    public string Database => Path.Combine(_folder.FullName, "trier.db");

    public string Beside(string name) => Path.Combine(_folder.FullName, name);

    /// <summary>A room whose tasting is open.</summary>
    public static async Task<Room> OpenAsync(int tasters = 4)
    {
        var room = await SealedAsync(tasters);
        await room.ActAsync<SealedTasting>(tasting => tasting.Open(room.Trials.Now));
        return room;
    }

    /// <summary>A room whose plates are dealt and not yet out.</summary>
    public static async Task<Room> SealedAsync(int tasters = 4)
    {
        var room = new Room();
        await using (var db = room.Databases.CreateDbContext()) await db.Database.MigrateAsync();
        var plan = new TrialPlan("Four ways", "Which way do you like best?", "A kitchen", new DateOnly(2026, 5, 16), CountingRule.Default, JuniorsCount: true, Invented: true);
        await room.Trials.BeginAsync(room.Trial, DraftTasting.Begin(room.Trials.Now, plan).Value);
        foreach (var name in new[] { "Thistle", "Calf", "Nettle", "Ash" })
            await room.ActAsync<DraftTasting>(draft => draft.Enter(room.Trials.Now, new Wheel(new WheelId(Guid.NewGuid()), name, WheelFacts.None)));
        room.Tasters = [.. Enumerable.Range(0, tasters).Select(_ => new TasterId(Guid.NewGuid()))];
        foreach (var (number, taster) in room.Tasters.Index())
            await room.ActAsync<DraftTasting>(draft => draft.AddTaster(room.Trials.Now, taster, $"Taster {number}", false, false, 1));
        await room.ActAsync<DraftTasting>(draft => draft.Seal(room.Trials.Now, new Seed(417)));
        return room;
    }

    public async Task<Tasting> ActAsync<TStep>(Func<TStep, Outcome<ImmutableArray<DayEvent>>> act)
        where TStep : Tasting => (await Trials.ActAsync(Trial, tasting => act((TStep)tasting))).Value;

    public async Task<Tasting> FoundAsync() => await Trials.FindAsync(Trial) ?? throw new InvalidOperationException("The trial is gone.");

    /// <summary>A send whose content follows from its id.</summary>
    public async Task<BallotSend> SendOfAsync(TasterId taster, RevisionId? begunFrom = null, BallotStage stage = BallotStage.Sent)
    {
        var id = new RevisionId(Guid.NewGuid());
        return new BallotSend(id, taster, begunFrom, "phone", BallotSource.Phone, stage, Said.On((await FoundAsync()).Book.Served(taster), id));
    }

    public async Task<BallotReceipt> ReceiveAsync(BallotSend send) => (await Trials.ReceiveAsync(Trial, send)).Value;

    public async Task<BallotHistory> HistoryAsync(TasterId taster) => await Trials.BallotAsync(await FoundAsync(), taster);

    /// <summary>Every row of every table of a database file, as text in a fixed order.</summary>
    public static async Task<List<string>> RowsAsync(string file)
    {
        var rows = new List<string>();
        foreach (var table in await AskAsync(file, "SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name"))
        {
            var columns = await AskAsync(file, $"SELECT group_concat('quote(\"' || name || '\")', ' || '','' || ') FROM pragma_table_info('{table}')");
            rows.AddRange((await AskAsync(file, $"SELECT {columns[0]} FROM \"{table}\" ORDER BY 1")).Select(row => $"{table}: {row}"));
        }

        return rows;
    }

    /// <summary>The first column of a query's answer.</summary>
    public static async Task<List<string>> AskAsync(string file, string query)
    {
        var answers = new List<string>();
        await using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false }.ConnectionString);
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
#pragma warning disable CA2100 // The queries stand in these tests.
        command.CommandText = query;
#pragma warning restore CA2100
        await using var reader = await command.ExecuteReaderAsync();
        while (await reader.ReadAsync()) answers.Add(reader.GetString(0));
        return answers;
    }

    /// <summary>How often something was committed since the write-ahead log was last begun anew.</summary>
    public int Commits()
    {
        // The format is SQLite's (“WAL-mode file format”): a header of 32 bytes, then frames of 24 bytes and a page. A frame that ends a commit tells the
        // database's size in its bytes 4 to 7, others 0; frames left over from before bear another salt than the header.
        using var file = new FileStream($"{Database}-wal", FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using var copy = new MemoryStream();
        file.CopyTo(copy);
        var log = copy.ToArray().AsSpan();
        var (page, commits) = (BinaryPrimitives.ReadInt32BigEndian(log[8..]), 0);
        for (var at = 32; at + 24 + page <= log.Length && log[(at + 8)..(at + 16)].SequenceEqual(log[16..24]); at += 24 + page)
        {
            if (BinaryPrimitives.ReadInt32BigEndian(log[(at + 4)..]) != 0) commits++;
        }

        return commits;
    }

    /// <summary>Lets go of the file and of what is known of it, as a program does that ends: another one may write, and what is asked next is read anew.</summary>
    public void LetGoOfFile()
    {
        Trials = new TrialStore(Databases, _writer, Clock);
        using var db = Databases.CreateDbContext();
        SqliteConnection.ClearPool((SqliteConnection)db.Database.GetDbConnection());
    }

    public ValueTask DisposeAsync()
    {
        LetGoOfFile();
        _writer.Dispose();
        _folder.Delete(recursive: true);
        return ValueTask.CompletedTask;
    }
}
