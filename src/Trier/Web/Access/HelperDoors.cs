using System.Buffers.Text;
using System.Collections.Immutable;
using System.Security.Cryptography;
using Trier.Storage.Tastings;
using Trier.Trials.Common;

namespace Trier.Web.Access;

/// <summary>What a helper does at a tasting, and so what their link shows.</summary>
public enum Helper
{
    /// <summary>Fills the plates: may read which code is which wheel, each opening written down.</summary>
    Plater,

    /// <summary>Carries the plates: sees names and codes, never the key.</summary>
    Server,

    /// <summary>Writes ballots down for the tasters they are named for; sees no key and no other ballot.</summary>
    Scribe,
}

/// <summary>
/// Knows which link belongs to which helper of which trial. Links are derived from the trial's secret (HMAC-SHA256), as tasters' are, so that they can be
/// shown again.
/// </summary>
/// <param name="trials">The trials.</param>
public sealed class HelperDoors(TrialStore trials)
{
    private volatile ImmutableDictionary<string, (TrialId Trial, Helper Helper)> _byToken = ImmutableDictionary<string, (TrialId, Helper)>.Empty;

    /// <summary>The path of a helper's page.</summary>
    /// <param name="trial">Which trial.</param>
    /// <param name="helper">Which helper.</param>
    public async Task<string> PathAsync(TrialId trial, Helper helper)
    {
        var secret = await trials.LinkSecretAsync(trial) ?? throw new InvalidOperationException("A trial without a link secret.");
        return $"/{Letter(helper)}/{Token(secret, helper)}";
    }

    /// <summary>Whose trial a link opens, or null where it is no link of this kind of helper.</summary>
    /// <param name="token">The link's secret: 22 letters.</param>
    /// <param name="helper">Whose page is asked for.</param>
    public async Task<TrialId?> FindAsync(string token, Helper helper)
    {
        if (token.Length != 22) return null;
        if (!_byToken.ContainsKey(token))
        {
            var known = ImmutableDictionary.CreateBuilder<string, (TrialId, Helper)>();
            foreach (var tasting in await trials.AllAsync())
            {
                var secret = (await trials.LinkSecretAsync(tasting.Book.Trial))!;
                foreach (var each in Enum.GetValues<Helper>()) known[Token(secret, each)] = (tasting.Book.Trial, each);
            }

            _byToken = known.ToImmutable();
        }

        return _byToken.TryGetValue(token, out var found) && found.Helper == helper ? found.Trial : null;
    }

    private static char Letter(Helper helper) => helper switch { Helper.Plater => 'p', Helper.Server => 's', _ => 'w' };

    private static string Token(byte[] secret, Helper helper) =>
        Base64Url.EncodeToString(HMACSHA256.HashData(secret, helper switch { Helper.Plater => "helper who plates"u8, Helper.Server => "helper who serves"u8, _ => "helper who writes"u8 }).AsSpan(0, 16));
}
