using Trier.Storage.Common;
using Trier.Storage.Sqlite;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;

namespace Trier.Storage.Tastings;

public sealed class ParallelTests
{
    private const int Senders = 40;
    private const int SendsEach = 3;

    [Fact]
    public async Task Forty_senders_at_once_lose_nothing()
    {
        await using var room = await Room.OpenAsync(Senders);
        var receipts = await Task.WhenAll(room.Tasters.Select(taster => Task.Run(async () =>
        {
            var sent = new List<BallotReceipt>();
            for (var send = 0; send < SendsEach; send++) sent.Add(await room.ReceiveAsync(await room.SendOfAsync(taster, sent.LastOrDefault()?.Revision.Id)));
            return sent;
        })));

        Assert.All(receipts.SelectMany(sent => sent), receipt => Assert.True(receipt is { AlreadyHere: false, MadeCurrent: true }));
        var ballots = await room.Trials.BallotsAsync(await room.FoundAsync());
        foreach (var (at, taster) in room.Tasters.Index())
        {
            Assert.Null(Difference.Between(receipts[at].Select(receipt => receipt.Revision).ToList(), ballots[taster].All.ToList()));
            Assert.Empty(ballots[taster].Aside);
        }

        var arrivals = await Room.AskAsync(room.Database, "SELECT CAST(Arrival AS TEXT) FROM ballot_revisions ORDER BY Arrival");
        Assert.Equal(Enumerable.Range(1, Senders * SendsEach).Select(arrival => $"{arrival}"), arrivals);
    }

    [Fact]
    public async Task The_same_send_from_many_tries_at_once_is_stored_once()
    {
        await using var room = await Room.OpenAsync();
        var send = await room.SendOfAsync(room.Tasters[0]);
        var receipts = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => Task.Run(() => room.ReceiveAsync(send))));
        Assert.Single(receipts, receipt => !receipt.AlreadyHere);
        Assert.Single((await room.HistoryAsync(room.Tasters[0])).All);
    }

    [Fact]
    public async Task A_send_and_the_close_cannot_cross()
    {
        await using var room = await Room.OpenAsync(Senders);
        var sending = room.Tasters.Select(taster => Task.Run(async () => await room.ReceiveAsync(await room.SendOfAsync(taster)))).ToList();
        await Task.WhenAny(sending);
        var closing = Task.Run(() => room.ActAsync<OpenTasting>(tasting => tasting.Close(room.Trials.Now)));
        var closed = (await closing).Book.ClosedAt;
        var receipts = (await Task.WhenAll(sending)).ToList();
        receipts.Add(await room.ReceiveAsync(await room.SendOfAsync(room.Tasters[0], receipts[0].Revision.Id)));

        Assert.All(receipts, receipt => Assert.Equal(receipt.Revision.ReceivedAt < closed ? BallotStanding.InTime : BallotStanding.AfterClose, receipt.Revision.Standing));
        Assert.Contains(receipts, receipt => receipt.Revision.Standing == BallotStanding.InTime);
        Assert.Equal(BallotStanding.AfterClose, receipts[^1].Revision.Standing);
        Assert.Equal(Senders + 1, (await room.Trials.BallotsAsync(await room.FoundAsync())).Values.Sum(history => history.All.Length));
    }

    [Fact]
    public async Task A_copy_of_a_quiet_database_equals_it_row_by_row()
    {
        await using var room = await Room.OpenAsync();
        foreach (var taster in room.Tasters) await room.ReceiveAsync(await room.SendOfAsync(taster));
        await SqliteBackup.CopyAsync(room.Database, room.Beside("copy.db"));
        var rows = await Room.RowsAsync(room.Database);
        Assert.Contains(rows, row => row.StartsWith("ballot_revisions", StringComparison.Ordinal));
        Assert.Equal(rows, await Room.RowsAsync(room.Beside("copy.db")));
    }

    [Fact]
    public async Task A_copy_made_under_load_opens_and_holds_every_ballot_acknowledged_before_it()
    {
        await using var room = await Room.OpenAsync(Senders);
        var before = new List<BallotReceipt>();
        foreach (var taster in room.Tasters.Take(5)) before.Add(await room.ReceiveAsync(await room.SendOfAsync(taster)));
        var sending = Task.WhenAll(room.Tasters.Skip(5).Select(taster => Task.Run(async () => await room.ReceiveAsync(await room.SendOfAsync(taster)))));
        var copying = SqliteBackup.CopyAsync(room.Database, room.Beside("copy.db"));
        await Task.WhenAll(sending, copying);

        using var writer = new WriterGate();
        var copy = new TrialStore(new SqliteDatabases(room.Beside("copy.db")), writer, room.Clock);
        var tasting = await copy.FindAsync(room.Trial);
        Assert.IsType<OpenTasting>(tasting);
        var ballots = await copy.BallotsAsync(tasting);
        Assert.All(before, receipt => Assert.Null(Difference.Between(receipt.Revision, ballots[receipt.Revision.Taster].Current)));
    }

    [Fact]
    public async Task A_copy_cannot_take_the_place_of_its_database()
    {
        await using var room = await Room.OpenAsync();
        await Assert.ThrowsAsync<ArgumentException>(() => SqliteBackup.CopyAsync(room.Database, room.Database));
        Assert.IsType<OpenTasting>(await room.FoundAsync());
    }
}
