using Microsoft.Data.Sqlite;

namespace Trier.Storage.Sqlite;

/// <summary>Copies of a database that may be in use.</summary>
public static class SqliteBackup
{
    /// <summary>
    /// Writes a copy, then opens it and checks it. The copy is whole at every moment: it is written beside its place and moved there at the end.
    /// </summary>
    /// <param name="database">The database file; may be in use.</param>
    /// <param name="copy">Where the copy goes; replaced where it exists.</param>
    /// <param name="cancellation">Stops the wait.</param>
    /// <exception cref="ArgumentException">The copy would take the place of the database itself.</exception>
    /// <exception cref="InvalidDataException">The copy did not pass SQLite's own check.</exception>
    public static async Task CopyAsync(string database, string copy, CancellationToken cancellation = default)
    {
        if (Path.GetFullPath(copy) == Path.GetFullPath(database)) throw new ArgumentException("A copy cannot take the place of the database it is made from.", nameof(copy));
        var unfinished = copy + ".unfinished";
        File.Delete(unfinished);
        var source = new SqliteConnectionStringBuilder { DataSource = database, Mode = SqliteOpenMode.ReadOnly, Pooling = false };
        await using (var connection = new SqliteConnection(source.ConnectionString))
        {
            await connection.OpenAsync(cancellation);
            await using var command = connection.CreateCommand();
            command.CommandText = "VACUUM INTO $copy";
            command.Parameters.AddWithValue("$copy", unfinished);
            await command.ExecuteNonQueryAsync(cancellation);
        }

        await CheckAsync(unfinished, cancellation);
        // Logs left by an earlier copy in this place would be read into the new one.
        File.Delete(copy + "-wal");
        File.Delete(copy + "-shm");
        File.Move(unfinished, copy, overwrite: true);
    }

    private static async Task CheckAsync(string file, CancellationToken cancellation)
    {
        var written = new SqliteConnectionStringBuilder { DataSource = file, Mode = SqliteOpenMode.ReadOnly, Pooling = false };
        await using var connection = new SqliteConnection(written.ConnectionString);
        await connection.OpenAsync(cancellation);
        await using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA integrity_check";
        if (await command.ExecuteScalarAsync(cancellation) is not "ok") throw new InvalidDataException($"The copy {file} is damaged.");
    }
}
