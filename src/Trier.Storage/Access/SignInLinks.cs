using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;

namespace Trier.Storage.Access;

/// <summary>The maker's one-time sign-in links: ten minutes, spent by a press of a button.</summary>
/// <param name="databases">Opens the database.</param>
/// <param name="writer">The one writer of this database.</param>
/// <param name="clock">The host's clock.</param>
public sealed class SignInLinks(IDbContextFactory<TrierDb> databases, WriterGate writer, TimeProvider clock)
{
    /// <summary>How long a link can be used.</summary>
    public static TimeSpan Lifetime { get; } = TimeSpan.FromMinutes(10);

    /// <summary>Makes a link's secret: 128 random bits in hexadecimal. Only its hash is kept.</summary>
    /// <param name="cancellation">Stops the wait.</param>
    public async Task<string> MakeAsync(CancellationToken cancellation = default)
    {
        var secret = RandomNumberGenerator.GetHexString(32, lowercase: true);
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(cancellation);
        db.SignInLinks.Add(new SignInLinkRow { SecretHash = Hash(secret), ExpiresAt = (clock.GetUtcNow() + Lifetime).UtcTicks });
        await db.SaveChangesAsync(cancellation);
        return secret;
    }

    /// <summary>Spends a link.</summary>
    /// <param name="secret">As in the link.</param>
    /// <param name="cancellation">Stops the wait.</param>
    /// <returns>Whether it was known, in time and not spent before.</returns>
    public async Task<bool> SpendAsync(string secret, CancellationToken cancellation = default)
    {
        var hash = Hash(secret);
        var now = clock.GetUtcNow().UtcTicks;
        using var turn = await writer.EnterAsync(cancellation);
        await using var db = await databases.CreateDbContextAsync(cancellation);
        var spent = await db.SignInLinks
            .Where(row => row.SecretHash == hash && row.SpentAt == null && row.ExpiresAt > now)
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.SpentAt, now), cancellation);
        return spent == 1;
    }

    private static byte[] Hash(string secret) => SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(secret));
}
