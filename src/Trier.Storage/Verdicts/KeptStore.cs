using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;

namespace Trier.Storage.Verdicts;

/// <summary>Keeps what takes long to work out, under the hash of all that it depends on. Can be thrown away at any time.</summary>
/// <param name="databases">Opens the database.</param>
/// <param name="writer">The one writer of this database.</param>
public sealed class KeptStore(IDbContextFactory<TrierDb> databases, WriterGate writer)
{
    /// <summary>The name of what was asked: the same question has the same name everywhere.</summary>
    /// <param name="asked">All that the answer depends on, methods' version and seed included.</param>
    public static string Key(object asked) => Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(asked, RecordJson.Options)));

    /// <summary>What was found, or null where it was never worked out.</summary>
    /// <typeparam name="T">What was found.</typeparam>
    /// <param name="key">From <see cref="Key"/>.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<T?> FindAsync<T>(string key, CancellationToken cancellation = default)
        where T : class
    {
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var json = await db.KeptFindings.AsNoTracking().Where(row => row.Hash == key).Select(row => row.Json).FirstOrDefaultAsync(cancellation);
        return json is null ? null : JsonSerializer.Deserialize<T>(json, FindingsStore.Options);
    }

    /// <summary>Keeps what was found; what is here already stays.</summary>
    /// <typeparam name="T">What was found.</typeparam>
    /// <param name="key">From <see cref="Key"/>.</param>
    /// <param name="found">What was worked out.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task KeepAsync<T>(string key, T found, CancellationToken cancellation = default)
        where T : class
    {
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(cancellation);
        if (await db.KeptFindings.AnyAsync(row => row.Hash == key, cancellation)) return;
        db.KeptFindings.Add(new KeptFindingsRow { Hash = key, Json = JsonSerializer.Serialize(found, FindingsStore.Options) });
        await db.SaveChangesAsync(cancellation);
    }
}
