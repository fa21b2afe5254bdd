using System.Globalization;
using System.Text.RegularExpressions;

namespace Trier.Publishing.Writing;

/// <summary>Numbers as the pages write them: a decimal comma.</summary>
public static partial class Numbers
{
    private static readonly NumberFormatInfo Comma = new() { NumberDecimalSeparator = ",", NumberGroupSeparator = "\u202f" };

    public static string Places(double value, int decimals) => value.ToString($"F{decimals}", Comma);

    /// <summary>A sentence of the verdict with the page's decimal sign.</summary>
    public static string Sentence(string sentence) => DecimalPoint().Replace(sentence, ",");

    /// <summary>A measure in words with the page's decimal sign and the sign of degrees.</summary>
    public static string Measure(string words) => Degrees().Replace(Sentence(words), " °C");

    [GeneratedRegex(@"(?<=\d) C\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Degrees();

    [GeneratedRegex(@"(?<=\d)\.(?=\d)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex DecimalPoint();

    public static string Plain(double value) => value.ToString("0.##", Comma);

    /// <summary>A chance for the fold: as many digits as tell something.</summary>
    public static string Chance(double p) => p < 0.001 ? p.ToString("0.######", Comma) : p.ToString("0.####", Comma);
}
