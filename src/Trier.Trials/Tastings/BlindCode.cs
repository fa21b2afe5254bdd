using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Trier.Trials.Tastings;

/// <summary>
/// The three-digit code a sample is served under, 100 to 999. Codes that spell something (the same digit three times, or three
/// digits in a row, up or down) are not codes.
/// </summary>
/// <remarks>Three-digit codes that say nothing of the sample: ISO 4120:2021, 5.5 (preview read). The further limits are ours.</remarks>
public readonly record struct BlindCode : IComparable<BlindCode>
{
    private readonly short _number;

    private BlindCode(int number) => _number = (short)number;

    /// <summary>The code as a number, 100 to 999.</summary>
    public int Number => _number;

    /// <summary>Reads a code.</summary>
    /// <param name="text">Three digits; spaces at the ends are ignored.</param>
    /// <param name="code">The code.</param>
    /// <returns>Whether the text is a code.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, out BlindCode code)
    {
        code = default;
        var trimmed = text.AsSpan().Trim();
        if (trimmed.Length != 3 || !int.TryParse(trimmed, NumberStyles.None, CultureInfo.InvariantCulture, out var number)) return false;
        if (!Allowed(number)) return false;
        code = new BlindCode(number);
        return true;
    }

    /// <summary>The code of a number.</summary>
    /// <param name="number">100 to 999, not spelling anything.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is no code.</exception>
    public static BlindCode Of(int number) =>
        Allowed(number) ? new BlindCode(number) : throw new ArgumentOutOfRangeException(nameof(number), number, "A blind code has three digits, does not begin with 0 and spells nothing.");

    /// <summary>Whether a number can be a code at all.</summary>
    /// <param name="number">Any number.</param>
    public static bool Allowed(int number)
    {
        if (number is < 100 or > 999) return false;
        int a = number / 100, b = number / 10 % 10, c = number % 10;
        var step = b - a;
        return !(step == c - b && step is >= -1 and <= 1);
    }

    /// <summary>
    /// Whether two codes can stand on one table: they differ in at least two digits, and neither reads as the other upside down
    /// (0, 1 and 8 stay, 6 and 9 change places).
    /// </summary>
    /// <param name="other">The other code.</param>
    public bool CanStandBeside(BlindCode other)
    {
        var differing = (Number / 100 == other.Number / 100 ? 0 : 1) + (Number / 10 % 10 == other.Number / 10 % 10 ? 0 : 1) + (Number % 10 == other.Number % 10 ? 0 : 1);
        return differing >= 2 && UpsideDown() != other.Number;
    }

    /// <summary>What the code reads as upside down, or null where it then reads as nothing.</summary>
    public int? UpsideDown()
    {
        var turned = 0;
        for (var rest = Number; rest > 0; rest /= 10)
        {
            var digit = (rest % 10) switch { 0 => 0, 1 => 1, 6 => 9, 8 => 8, 9 => 6, _ => -1 };
            if (digit < 0) return null;
            turned = (turned * 10) + digit;
        }

        return turned;
    }

    /// <inheritdoc/>
    public int CompareTo(BlindCode other) => _number.CompareTo(other._number);

    /// <inheritdoc/>
    public override string ToString() => Number.ToString("000", CultureInfo.InvariantCulture);

    /// <summary>Orders by number.</summary>
    public static bool operator <(BlindCode left, BlindCode right) => left._number < right._number;

    /// <summary>Orders by number.</summary>
    public static bool operator >(BlindCode left, BlindCode right) => left._number > right._number;

    /// <summary>Orders by number.</summary>
    public static bool operator <=(BlindCode left, BlindCode right) => left._number <= right._number;

    /// <summary>Orders by number.</summary>
    public static bool operator >=(BlindCode left, BlindCode right) => left._number >= right._number;
}
