using System.Diagnostics;
using System.Globalization;
using Trier.Storage.Common;
using Trier.Storage.Crasher;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;

namespace Trier.Storage.Tastings;

/// <summary>
/// A program that takes in ballots and acts, many to a commit, is killed at a moment of chance. This shows that each is committed before it is
/// acknowledged, that none is there by half, and that the file opens again; that a commit also outlives a power cut rests on the setting held in
/// DatabaseTests.
/// </summary>
public sealed class KilledTests
{
    private const int Rounds = 3;
    private const int KilledBySignal9 = 128 + 9;

    [Fact]
    public async Task Every_acknowledged_ballot_and_act_outlives_a_kill_at_any_moment()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() || OperatingSystem.IsMacOS(), "Needs a system where a process can be killed by signal 9.");
        await using var room = await Room.OpenAsync(24);
        var acknowledged = new List<(TasterId Taster, RevisionId Send)>();
        for (var round = 0; round < Rounds; round++)
        {
            room.LetGoOfFile();
            var (during, log) = await KilledAsync(room);
            Assert.True(during.Count >= 10, $"Only {during.Count} ballots were acknowledged before the kill: this round shows nothing.");
            Assert.True(log > 0, "No act was acknowledged before the kill: this round shows nothing of acts.");
            acknowledged.AddRange(during);
            await ActsHoldAsync(room, log, round + 1);
            await HoldsAsync(room, acknowledged, round + 1);
        }
    }

    private static async Task ActsHoldAsync(Room room, int acknowledged, int kills)
    {
        var log = (await room.FoundAsync()).Book.Log;
        Assert.InRange(log.Length, acknowledged, acknowledged + 2);
        var signingIn = log.Select(logged => logged.Event).SkipWhile(happened => happened is not TasterSignedIn).ToList();
        Assert.All(signingIn.Chunk(2), both => Assert.True(both is [TasterSignedIn, AgreementGiven], "A signing in is there by half."));
        Assert.Equal(Enumerable.Range(1, log.Length), log.Select(logged => logged.Sequence));
        Assert.True(signingIn.Count >= 2 * kills);
    }

    private static async Task HoldsAsync(Room room, List<(TasterId Taster, RevisionId Send)> acknowledged, int kills)
    {
        Assert.Equal(["ok"], await Room.AskAsync(room.Database, "PRAGMA integrity_check"));
        var arrivals = await Room.AskAsync(room.Database, "SELECT CAST(Arrival AS TEXT) FROM ballot_revisions ORDER BY Arrival");
        Assert.Equal(Enumerable.Range(1, arrivals.Count).Select(arrival => $"{arrival}"), arrivals);
        var tasting = await room.FoundAsync();
        var ballots = await room.Trials.BallotsAsync(tasting);
        foreach (var taster in room.Tasters)
        {
            var history = ballots.GetValueOrDefault(taster, BallotHistory.None);
            var stored = history.All;
            var sent = acknowledged.Where(told => told.Taster == taster).Select(told => told.Send).ToList();
            Assert.Empty(sent.Except(stored.Select(revision => revision.Id)));
            // Each kill can catch one send a taster between the commit and the acknowledgement.
            Assert.InRange(stored.Length, sent.Count, sent.Count + kills);
            Assert.All(stored, revision => Assert.Equal(Said.On(tasting.Book.Served(taster), revision.Id), revision.Content));
            Assert.Equal(stored.LastOrDefault()?.Id, history.Current?.Id);
        }

        var (someone, send) = acknowledged[^1];
        var again = await room.ReceiveAsync(new BallotSend(send, someone, null, "phone", BallotSource.Phone, BallotStage.Sent, Said.On(tasting.Book.Served(someone), send)));
        Assert.True(again.AlreadyHere);
    }

    private static async Task<(List<(TasterId Taster, RevisionId Send)> Ballots, int Log)> KilledAsync(Room room)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "Trier.Storage.Crasher.dll");
        using var process = Process.Start(new ProcessStartInfo("dotnet", [program, room.Database, $"{room.Trial.Value}"]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        var acknowledged = new List<(TasterId Taster, RevisionId Send)>();
        var (killing, log) = (Task.CompletedTask, 0);
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.Split(' ') is ["signed", "in", var length, "."]) log = int.Parse(length, CultureInfo.InvariantCulture);
            // The kill can cut the last line short: only a line with its full stop was told.
            if (line.Split(' ') is not ["acknowledged", var taster, var send, "."]) continue;
            acknowledged.Add((new TasterId(Guid.Parse(taster)), new RevisionId(Guid.Parse(send))));
            if (acknowledged.Count == 10) killing = KillAsync(process);
        }

        await killing;
        await process.WaitForExitAsync();
        Assert.Equal(KilledBySignal9, process.ExitCode);
        return (acknowledged, log);
    }

    private static async Task KillAsync(Process process)
    {
        await Task.Delay(Random.Shared.Next(20, 700));
        process.Kill();
    }
}
