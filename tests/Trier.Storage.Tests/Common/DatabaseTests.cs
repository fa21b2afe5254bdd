using Microsoft.EntityFrameworkCore;

namespace Trier.Storage.Common;

public sealed class DatabaseTests
{
    [Fact]
    public async Task The_migrations_say_what_the_model_says()
    {
        await using var room = await Room.OpenAsync();
        await using var db = room.Databases.CreateDbContext();
        Assert.False(db.Database.HasPendingModelChanges(), "The model has changed: add a migration with eng/add-migration.sh.");
        Assert.Empty(await db.Database.GetPendingMigrationsAsync());
    }

    [Fact]
    public async Task Every_connection_writes_through_to_the_disk()
    {
        await using var room = await Room.OpenAsync();
        await using var db = room.Databases.CreateDbContext();
        // 2 is FULL (SQLite documentation, PRAGMA synchronous): the log is synced at every commit, so that it outlives a power cut.
        Assert.Equal(2, await db.Database.SqlQueryRaw<int>("SELECT synchronous AS Value FROM pragma_synchronous").SingleAsync());
        Assert.Equal("wal", await db.Database.SqlQueryRaw<string>("SELECT journal_mode AS Value FROM pragma_journal_mode").SingleAsync());
        Assert.Equal(1, await db.Database.SqlQueryRaw<int>("SELECT foreign_keys AS Value FROM pragma_foreign_keys").SingleAsync());
    }

    [Fact]
    public async Task A_turn_given_up_while_waiting_lets_the_next_one_through()
    {
        using var gate = new WriterGate();
        using var impatient = new CancellationTokenSource();
        var first = await gate.EnterAsync(CancellationToken.None);
        var given = gate.EnterAsync(impatient.Token);
        var third = gate.EnterAsync(CancellationToken.None);
        await impatient.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => given);
        Assert.False(third.IsCompleted);
        first.Dispose();
        first.Dispose();
        using var turn = await third.WaitAsync(TimeSpan.FromSeconds(10));
        Assert.False(gate.EnterAsync(CancellationToken.None).IsCompleted);
    }
}
