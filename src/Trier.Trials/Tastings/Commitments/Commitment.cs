using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;

namespace Trier.Trials.Tastings.Commitments;

/// <summary>
/// What was fixed about a key before anybody tasted: five words that can be read aloud while the key stays sealed, and, once it is open,
/// everything needed to work them out again. Words = the first 55 bits of PBKDF2-HMAC-SHA256(lines, salt). Source: RFC 8018, 5.2 (PBKDF2).
/// </summary>
/// <remarks>
/// The salt stays secret as long as the key: a few hundred keys are possible, and with the salt each could be tried. To find a second key for words already read
/// aloud takes some 2^55 tries of two million rounds; to prepare two keys with the same words beforehand, by a program made for it, some 2^28.
/// </remarks>
/// <param name="Number">1 at a trial's first sealing, each later one 1 more.</param>
/// <param name="KeyVersion">The version of the key it is about.</param>
/// <param name="Salt">128 random bits, 32 hexadecimal digits in lower case.</param>
/// <param name="Words">Five words of <see cref="WordList"/>, single spaces between.</param>
/// <param name="Lines">What they were worked out from; see <see cref="Statement"/>.</param>
public sealed record Commitment(int Number, int KeyVersion, string Salt, string Words, ImmutableArray<string> Lines)
{
    /// <summary>Rounds of PBKDF2, the same for every commitment: about a second of a laptop's work.</summary>
    public const int Rounds = 2_000_000;

    /// <summary>How many words are read aloud.</summary>
    public const int WordCount = 5;

    /// <summary>Bytes of a salt.</summary>
    public const int SaltBytes = 16;

    /// <summary>Works out the five words of some lines.</summary>
    /// <param name="lines">The lines; none holds a line break. Each is hashed in UTF-8 with a line feed (10) after it.</param>
    /// <param name="salt">16 bytes.</param>
    public static string WordsOf(ImmutableArray<string> lines, ReadOnlySpan<byte> salt)
    {
        if (salt.Length != SaltBytes) throw new ArgumentException($"A salt has {SaltBytes} bytes.", nameof(salt));
        var text = Encoding.UTF8.GetBytes(string.Concat(lines.Select(line => line + "\n")));
        return WordList.Say(Derive(text, salt, Rounds, 7), WordCount);
    }

    /// <summary>Whether salt and lines give the words.</summary>
    public bool Holds() => Salt.Length == 2 * SaltBytes && Salt.All(char.IsAsciiHexDigit) && WordsOf(Lines, Convert.FromHexString(Salt)) == Words;

    internal static byte[] Derive(ReadOnlySpan<byte> text, ReadOnlySpan<byte> salt, int rounds, int bytes) =>
        Rfc2898DeriveBytes.Pbkdf2(text, salt, rounds, HashAlgorithmName.SHA256, bytes);
}
