using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Trier.Web.Tastings.Cards;

/// <summary>
/// A place as it stands on paper. A digit that cannot be read for certain is never guessed: it is typed with a question mark ("1?"), with every
/// reading ("1/7"), or as "?" alone, with any words after it; it is kept as typed, and counts as a tie.
/// </summary>
/// <param name="Text">As typed.</param>
/// <param name="Readings">What it may be; one where it is certain; empty where nothing can be made out.</param>
/// <param name="Unclear">Whether it cannot be read for certain.</param>
internal sealed partial record WrittenPlace(string Text, ImmutableArray<int> Readings, bool Unclear)
{
    /// <summary>Reads what was typed; null where it is neither a place nor marked as unclear.</summary>
    /// <param name="text">As typed, not empty.</param>
    public static WrittenPlace? Read(string text)
    {
        if (text.All(char.IsAsciiDigit) && text.Length is > 0 and < 4) return new(text, [int.Parse(text, CultureInfo.InvariantCulture)], Unclear: false);
        var found = Doubtful().Match(text);
        if (!found.Success || text.Length > 80) return null;
        return new(text, [.. Digits().Matches(found.Groups["readings"].Value).Select(digits => int.Parse(digits.Value, CultureInfo.InvariantCulture)).Distinct()], Unclear: true);
    }

    /// <summary>The place it counts as: the one it would share with a sample that is certain; else the best it may be; null where no reading fits.</summary>
    /// <param name="certain">Places that other samples have for certain.</param>
    /// <param name="last">The last place there is.</param>
    public int? Counts(IReadOnlySet<int> certain, int last)
    {
        var fits = Readings.Where(reading => reading >= 1 && reading <= last).Order().ToList();
        if (fits.Count == 0) return null;
        return Unclear && fits.Exists(certain.Contains) ? fits.First(certain.Contains) : fits[0];
    }

    [GeneratedRegex(@"^(?<readings>\d{0,3}\s*\?|\d{1,3}(\s*(/|or)\s*\d{1,3})+)\s*\??.*$", RegexOptions.ExplicitCapture | RegexOptions.Singleline | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Doubtful();

    [GeneratedRegex(@"\d+", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Digits();
}
