using Microsoft.EntityFrameworkCore;

namespace Trier.Storage.Sqlite;

/// <summary>Opens contexts on one database file, where there is no host that hands them out.</summary>
/// <param name="file">The database file; made where it is missing.</param>
public sealed class SqliteDatabases(string file) : IDbContextFactory<TrierDb>
{
    private readonly DbContextOptions<TrierDb> _options = (DbContextOptions<TrierDb>)new DbContextOptionsBuilder<TrierDb>().UseTrierSqlite(file).Options;

    /// <inheritdoc/>
    public TrierDb CreateDbContext() => new(_options);
}
