using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Commitments;

/// <summary>
/// The canonical lines of a key: what a commitment is about, in text that anyone can read and hash.
/// <code>
/// trier key 1
/// tasting 0198fb52-6c00-7000-8000-000000000417
/// key 2
/// previous zebra abandon ...        (the words of the commitment before, or: none)
/// 238 W3 counts Hot                 (code, the wheel's label, what the code is for, the wheel's name at sealing)
/// 304 W4 withdrawn Short brine
/// 862 W1 check House
/// </code>
/// One line a code, sorted by code. Line breaks and runs of spaces in a name become one space.
/// </summary>
public static class Statement
{
    /// <summary>The first line: which form the lines have.</summary>
    public const string Form = "trier key 1";

    /// <summary>Stands for the commitment before the first.</summary>
    public const string Nothing = "none";

    /// <summary>The lines of the key that stands in a day book.</summary>
    /// <param name="book">A day book with a key.</param>
    /// <param name="previous">The words of the commitment before, or null for the first.</param>
    public static ImmutableArray<string> Of(DayBook book, string? previous)
    {
        var key = book.Key ?? throw new ArgumentException("There is no key to write down.", nameof(book));
        return
        [
            Form,
            $"tasting {book.Trial.Value:D}",
            string.Create(CultureInfo.InvariantCulture, $"key {key.Version}"),
            Previous(previous),
            .. key.Lines.OrderBy(line => line.Code).Select(line => Line(book, line)),
        ];
    }

    /// <summary>The line that chains a commitment to the one before.</summary>
    /// <param name="words">The words of the one before, or null for the first.</param>
    public static string Previous(string? words) => $"previous {words ?? Nothing}";

    /// <summary>Code and label of each code's line, such as “417 W1”: the part no later correction of a name can touch.</summary>
    /// <param name="lines">Lines of a statement.</param>
    public static ImmutableArray<string> Codes(ImmutableArray<string> lines) =>
        [.. lines.Skip(4).Select(line => string.Join(' ', line.Split(' ').Take(2)))];

    private static string Line(DayBook book, KeyLine line)
    {
        var entry = book.Entry(line.Wheel)!;
        var purpose = book.IsWithdrawn(line.Wheel) ? "withdrawn" : line.Counts ? "counts" : "check";
        return $"{line.Code} {entry.Label} {purpose} {string.Join(' ', entry.Name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))}";
    }
}
