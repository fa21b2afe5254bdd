using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Storage.Verdicts;

/// <summary>Keeps what takes long to work out of a record, under the hash of all that it depends on.</summary>
/// <param name="databases">Opens the database.</param>
/// <param name="writer">The one writer of this database.</param>
public sealed class FindingsStore(IDbContextFactory<TrierDb> databases, WriterGate writer)
{
    internal static readonly JsonSerializerOptions Options = new(RecordJson.Options)
    {
        IgnoreReadOnlyProperties = true,
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
    };

    /// <summary>The findings, or null where they were never worked out.</summary>
    /// <param name="verdict">The headline they belong to.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<DeepFindings?> FindAsync(Verdict verdict, CancellationToken cancellation = default)
    {
        var hash = Hash(verdict);
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var json = await db.KeptFindings.AsNoTracking().Where(row => row.Hash == hash).Select(row => row.Json).FirstOrDefaultAsync(cancellation);
        return json is null ? null : JsonSerializer.Deserialize<DeepFindings>(json, Options);
    }

    /// <summary>Keeps findings; those that are here already stay.</summary>
    /// <param name="verdict">The headline they belong to.</param>
    /// <param name="findings">What was worked out.</param>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task KeepAsync(Verdict verdict, DeepFindings findings, CancellationToken cancellation = default)
    {
        var hash = Hash(verdict);
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(cancellation);
        if (await db.KeptFindings.AnyAsync(row => row.Hash == hash, cancellation)) return;
        db.KeptFindings.Add(new KeptFindingsRow { Hash = hash, Json = JsonSerializer.Serialize(findings, Options) });
        await db.SaveChangesAsync(cancellation);
    }

    private static string Hash(Verdict verdict) =>
        Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(new { Verdict.MethodsVersion, verdict.Seed, verdict.Record }, RecordJson.Options)));
}
