using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Trier.Storage.Sqlite;

/// <summary>How the database file is opened, each setting with its reason.</summary>
public static class SqliteSettings
{
    /// <summary>Sets a context up for a database file.</summary>
    /// <param name="options">The context's options.</param>
    /// <param name="file">The database file; made where it is missing.</param>
    public static DbContextOptionsBuilder UseTrierSqlite(this DbContextOptionsBuilder options, string file)
    {
        var connection = new SqliteConnectionStringBuilder { DataSource = file, Mode = SqliteOpenMode.ReadWriteCreate, ForeignKeys = true, DefaultTimeout = 15 };
        return options
            .UseSqlite(connection.ConnectionString, sqlite => sqlite.MigrationsAssembly(typeof(SqliteSettings).Assembly.GetName().Name))
            .AddInterceptors(Durable.Instance);
    }

    private sealed class Durable : DbConnectionInterceptor
    {
        public static Durable Instance { get; } = new();

        // A write-ahead log lets pages be read while a ballot is written. synchronous=FULL because NORMAL gives durability up on a power cut in
        // this mode (SQLite documentation, PRAGMA synchronous), and a ballot that was acknowledged must be there afterwards.
        private const string Pragmas = "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA busy_timeout=15000;";

        public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
        {
            using var command = connection.CreateCommand();
            command.CommandText = Pragmas;
            command.ExecuteNonQuery();
        }

        public override async Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            await using var command = connection.CreateCommand();
            command.CommandText = Pragmas;
            await command.ExecuteNonQueryAsync(cancellationToken);
        }
    }
}
