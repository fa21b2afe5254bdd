using System.Collections.Immutable;
using System.Globalization;

namespace Trier.Publishing.BallotFiles;

/// <summary>Places as numbers in a file, and the order they stand for.</summary>
internal static class Places
{
    /// <summary>A number with a decimal point or a decimal comma and nothing else.</summary>
    public static bool TryNumber(string text, out decimal number) =>
        decimal.TryParse(text.Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out number);

    /// <summary>Reads one place, or adds the fault.</summary>
    public static decimal? Read(string text, int samples, int line, string column, Faults faults)
    {
        if (!TryNumber(text, out var place))
        {
            faults.AtLine(line, column, $"{Faults.Quote(text)} is no number; write 1 for the best, 2 for the next, and leave the cell empty where there is no place.");
            return null;
        }

        if (place >= 1 && place <= samples) return place;
        faults.AtLine(line, column, string.Create(
            CultureInfo.InvariantCulture,
            $"place {Faults.Short(text)}, but there are {samples} samples; places run from 1 to {samples}."));
        return null;
    }

    /// <summary>Codes in the order of their places, equal places tied.</summary>
    public static ImmutableArray<ImmutableArray<string>> Order(IEnumerable<(string Code, decimal Place)> placed) =>
        [.. placed.GroupBy(p => p.Place).OrderBy(g => g.Key).Select(g => g.Select(p => p.Code).ToImmutableArray())];

    /// <summary>
    /// Whether the numbers are one of the usual ways of writing an order with ties: best or worst place of the tied group, its
    /// mid-place, or groups numbered through. Anything else has a gap.
    /// </summary>
    public static bool HasGap(IEnumerable<decimal> places)
    {
        var (best, worst, middle, through) = (true, true, true, true);
        var (before, groups) = (0, 0);
        foreach (var group in places.GroupBy(p => p).OrderBy(g => g.Key))
        {
            var size = group.Count();
            groups++;
            best &= group.Key == before + 1;
            worst &= group.Key == before + size;
            middle &= group.Key * 2 == (before * 2) + size + 1;
            through &= group.Key == groups;
            before += size;
        }

        return !(best || worst || middle || through);
    }
}
