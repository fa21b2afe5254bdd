using System.Buffers.Text;
using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Trier.Storage.Tastings;
using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;

namespace Trier.Web.Access;

/// <summary>A taster's two ways in: the link behind the QR code, and the code typed by hand.</summary>
/// <param name="Trial">Which trial.</param>
/// <param name="Taster">Which taster.</param>
/// <param name="Token">The link's secret: 128 bits in base64url, 22 letters.</param>
/// <param name="TypedCode">Six consonants; valid only while the tasting is open.</param>
public sealed record TasterDoor(TrialId Trial, TasterId Taster, string Token, string TypedCode)
{
    /// <summary>The path of the taster's page.</summary>
    public string Path => $"/t/{Token}";
}

/// <summary>
/// Knows which link and which typed code belongs to which taster. Both are derived from a secret of the trial (HMAC-SHA256), so that a card can
/// be printed again and nothing that opens a ballot lies in the database in plain.
/// </summary>
/// <param name="trials">The trials.</param>
public sealed class TasterDoors(TrialStore trials)
{
    private const string Consonants = "BCDFGHJKLMNPQRSTVWXZ";

    private volatile ImmutableDictionary<string, TasterDoor> _byToken = ImmutableDictionary<string, TasterDoor>.Empty;

    /// <summary>The doors of everyone in a trial.</summary>
    /// <param name="tasting">The trial.</param>
    public async Task<IReadOnlyDictionary<TasterId, TasterDoor>> OfAsync(Tasting tasting)
    {
        var secret = await trials.LinkSecretAsync(tasting.Book.Trial) ?? throw new InvalidOperationException("A trial without a link secret.");
        return Doors(tasting.Book, secret);
    }

    /// <summary>Whose link this is, or null.</summary>
    /// <param name="token">The link's secret.</param>
    public async Task<TasterDoor?> FindAsync(string token)
    {
        if (token.Length != 22) return null;
        if (_byToken.TryGetValue(token, out var known)) return known;
        var doors = ImmutableDictionary.CreateBuilder<string, TasterDoor>();
        foreach (var tasting in await trials.AllAsync())
        {
            foreach (var door in (await OfAsync(tasting)).Values) doors[door.Token] = door;
        }

        _byToken = doors.ToImmutable();
        return _byToken.GetValueOrDefault(token);
    }

    /// <summary>Whose typed code this is, among tastings that are open now, then among those whose key is open; or null.</summary>
    /// <param name="typed">As typed: case, spaces and hyphens do not matter.</param>
    public async Task<TasterDoor?> FindTypedAsync(string typed)
    {
        var code = new string([.. typed.Where(char.IsAsciiLetter).Select(char.ToUpperInvariant)]);
        if (code.Length != 6) return null;
        foreach (var tasting in (await trials.AllAsync()).Where(tasting => tasting is OpenTasting or RevealedTasting).OrderByDescending(tasting => tasting is OpenTasting))
        {
            var door = (await OfAsync(tasting)).Values.FirstOrDefault(candidate => CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(candidate.TypedCode), Encoding.ASCII.GetBytes(code)));
            if (door is not null && tasting.Book.Taster(door.Taster) is { LetGo: false }) return door;
        }

        return null;
    }

    private static Dictionary<TasterId, TasterDoor> Doors(DayBook book, byte[] secret)
    {
        var doors = new Dictionary<TasterId, TasterDoor>();
        var given = new HashSet<string>(StringComparer.Ordinal);
        foreach (var taster in book.Tasters)
        {
            var typed = Typed(secret, taster.Id, 0);
            for (var attempt = 1; !given.Add(typed); attempt++) typed = Typed(secret, taster.Id, attempt);
            doors[taster.Id] = new TasterDoor(book.Trial, taster.Id, Base64Url.EncodeToString(Derive(secret, $"link {taster.Id.Value:N}").AsSpan(0, 16)), typed);
        }

        return doors;
    }

    private static string Typed(byte[] secret, TasterId taster, int attempt)
    {
        var bits = BitConverter.ToUInt64(Derive(secret, $"code {taster.Value:N} {attempt}"), 0);
        return string.Create(6, bits, static (letters, rest) =>
        {
            for (var place = 0; place < letters.Length; place++)
            {
                letters[place] = Consonants[(int)(rest % (ulong)Consonants.Length)];
                rest /= (ulong)Consonants.Length;
            }
        });
    }

    private static byte[] Derive(byte[] secret, string purpose) => HMACSHA256.HashData(secret, Encoding.UTF8.GetBytes(purpose));
}
