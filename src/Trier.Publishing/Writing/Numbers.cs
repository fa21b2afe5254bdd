using System.Globalization;
using System.Text.RegularExpressions;

namespace Trier.Publishing.Writing;

/// <summary>Numbers as the pages write them: a decimal comma.</summary>
public static partial class Numbers
{
    private static readonly NumberFormatInfo Comma = new() { NumberDecimalSeparator = ",", NumberGroupSeparator = "\u202f" };

    /// <summary>A number to so many decimals, a half away from zero: 2,125 is 2,13 whatever the last bit of its sum.</summary>
    public static string Places(double value, int decimals) =>
        (Math.Abs(value) < 1e12 ? (double)decimal.Round((decimal)value, decimals, MidpointRounding.AwayFromZero) : value).ToString($"F{decimals}", Comma);

    /// <summary>A chance for a table people read: "1 in 210".</summary>
    public static string OneIn(double p) => p < 1e-6 ? "less than 1 in a million" : $"1 in {(1 / p < 10 ? Plain(Math.Round(1 / p, 1)) : Places(1 / p, 0))}";

    /// <summary>A sentence of the verdict with the page's decimal sign.</summary>
    public static string Sentence(string sentence) => DecimalPoint().Replace(sentence, ",");

    /// <summary>A measure in words with the page's decimal sign and the sign of degrees.</summary>
    public static string Measure(string words) => Degrees().Replace(Sentence(words), " °C");

    [GeneratedRegex(@"(?<=\d) C\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Degrees();

    [GeneratedRegex(@"(?<=\d)\.(?=\d)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex DecimalPoint();

    /// <summary>Place points one after another, first place first: "4,5-3-0".</summary>
    public static string Points(IEnumerable<decimal> weights, char between = '-') => string.Join(between, weights.Select(weight => weight.ToString("0.###", Comma)));

    public static string Plain(double value) => value.ToString("0.##", Comma);

    /// <summary>A chance for the fold: as many digits as tell something.</summary>
    public static string Chance(double p) => p < 0.001 ? p.ToString("0.######", Comma) : p.ToString("0.####", Comma);
}
