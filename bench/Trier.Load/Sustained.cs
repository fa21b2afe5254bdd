using System.Diagnostics;
using System.Globalization;
using Microsoft.Data.Sqlite;
using Trier.Storage;
using Trier.Storage.Sqlite;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Web.Hosting;

namespace Trier.Load;

/// <summary>How many ballots a second get onto the disk for as long as wanted, beside the least that any program on this disk could do: one row, one commit.</summary>
internal static class Sustained
{
    private const int Phones = 16;

    /// <summary>Rows a second that a bare loop commits one by one, with the settings the site's own database has.</summary>
    public static double BareRows(string folder, TimeSpan time)
    {
        using var connection = new SqliteConnection($"Data Source={Path.Combine(folder, "bare.db")}");
        connection.Open();
        Run(connection, "PRAGMA journal_mode=WAL");
        Run(connection, "PRAGMA synchronous=FULL");
        Run(connection, "CREATE TABLE rows (id BLOB PRIMARY KEY, json TEXT NOT NULL) WITHOUT ROWID");
        using var insert = connection.CreateCommand();
        insert.CommandText = "INSERT INTO rows VALUES ($id, $json)";
        var id = insert.Parameters.Add("$id", SqliteType.Blob);
        insert.Parameters.AddWithValue("$json", new string('x', 400));
        var watch = Stopwatch.StartNew();
        var rows = 0;
        for (; watch.Elapsed < time; rows++)
        {
            id.Value = Guid.NewGuid().ToByteArray();
            insert.ExecuteNonQuery();
        }

        return rows / watch.Elapsed.TotalSeconds;
    }

    /// <summary>Ballots a second that the store takes in from as many callers as there are phones, without HTTP.</summary>
    public static async Task<double> StoredAsync(string folder, TrialId trial, TimeSpan time)
    {
        using var writer = new WriterGate();
        var trials = new TrialStore(new SqliteDatabases(new HostSettings(folder, 0, null).Database), writer, TimeProvider.System);
        var book = (await trials.FindAsync(trial))!.Book;
        var tasters = book.Tasters.Select(taster => (taster.Id, Ballot.Of(book.Served(taster.Id), book.Served(taster.Id).Select(code => new[] { code }), []).Value)).ToList();
        return await CountAsync(time, async (phone, round) =>
        {
            var (taster, ballot) = tasters[((round * Phones) + phone) % tasters.Count];
            var received = await trials.ReceiveAsync(trial, new BallotSend(new RevisionId(Guid.NewGuid()), taster, null, "load", BallotSource.Phone, BallotStage.Tasting, ballot));
            return received.Ok;
        });
    }

    /// <summary>Ballots a second that the site acknowledges over HTTP to as many phones at once.</summary>
    public static async Task<double> AcknowledgedAsync(Uri site, IReadOnlyList<Guest> guests, TimeSpan time)
    {
        var clients = Enumerable.Range(0, Phones).Select(_ => new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = site }).ToList();
        try
        {
            return await CountAsync(time, async (phone, round) =>
            {
                var guest = guests[((round * Phones) + phone) % guests.Count];
                using var form = new FormUrlEncodedContent(guest.Served.Select(code => KeyValuePair.Create("order", $"{code}")).Append(new("sendId", $"{Guid.NewGuid()}")));
                using var answer = await clients[phone].PostAsync(new Uri($"{guest.Path}/places", UriKind.Relative), form);
                return (int)answer.StatusCode is 302 or 303;
            });
        }
        finally
        {
            clients.ForEach(client => client.Dispose());
        }
    }

    private static async Task<double> CountAsync(TimeSpan time, Func<int, int, Task<bool>> send)
    {
        var watch = Stopwatch.StartNew();
        var done = await Task.WhenAll(Enumerable.Range(0, Phones).Select(phone => Task.Run(async () =>
        {
            var taken = 0;
            for (var round = 0; watch.Elapsed < time; round++)
            {
                if (!await send(phone, round)) throw new InvalidOperationException("A ballot was refused.");
                taken++;
            }

            return taken;
        })));
        return done.Sum() / watch.Elapsed.TotalSeconds;
    }

    private static void Run(SqliteConnection connection, string text)
    {
        using var command = connection.CreateCommand();
        command.CommandText = text;
        command.ExecuteNonQuery();
    }

    /// <summary>The three side by side.</summary>
    public static string Said(double bare, double stored, double acknowledged) => string.Create(
        CultureInfo.InvariantCulture,
        $"sustained, a second: {bare:0} bare rows committed one by one; {stored:0} ballots by the store ({stored / bare:0.00} of it); {acknowledged:0} over HTTP with the client on the same cores ({acknowledged / bare:0.00} of it)");
}
