using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Trier.Storage.Sqlite;

/// <summary>Lets the migrations tool make a context; the running program never uses it.</summary>
public sealed class DesignTimeContext : IDesignTimeDbContextFactory<TrierDb>
{
    /// <inheritdoc/>
    public TrierDb CreateDbContext(string[] args)
    {
        var options = new DbContextOptionsBuilder<TrierDb>();
        options.UseTrierSqlite("design-time.db");
        return new TrierDb(options.Options);
    }
}
