using System.Globalization;
using System.Text;
using Trier.Trials.Common;

namespace Trier.Publishing.BallotFiles;

/// <summary>Gathers everything that is wrong with a file, so that it is told at once and mended in one go.</summary>
internal sealed class Faults
{
    /// <summary>Sentences listed one by one; beyond them only the number is told, or a wrong file would answer with a book.</summary>
    public const int Listed = 50;

    private readonly List<Problem> _problems = [];
    private int _more;

    public bool Any => _problems.Count > 0;

    public void Add(string field, string sentence)
    {
        if (_problems.Count < Listed) _problems.Add(new Problem(field, sentence));
        else _more++;
    }

    /// <summary>A fault of one cell: "Line 14, place: ...".</summary>
    public void AtLine(int line, string? column, string what)
    {
        var field = column is null
            ? string.Create(CultureInfo.InvariantCulture, $"line {line}")
            : string.Create(CultureInfo.InvariantCulture, $"line {line}, {Short(column)}");
        Add(field, "L" + field[1..] + ": " + what);
    }

    public Outcome<T> Fail<T>()
    {
        if (_more == 0) return Outcome.Fault<T>(_problems);
        var rest = string.Create(CultureInfo.InvariantCulture, $"And {_more} more faults of these kinds; mend the ones above and try again.");
        return Outcome.Fault<T>([.. _problems, new Problem("file", rest)]);
    }

    /// <summary>What stood in the file, cut and cleaned so that it can stand in a sentence.</summary>
    public static string Short(string text)
    {
        var clean = new StringBuilder();
        foreach (var rune in text.Trim().EnumerateRunes())
        {
            if (clean.Length >= 30) return clean.Append('…').ToString();
            clean.Append(Rune.IsControl(rune) ? Rune.ReplacementChar : rune);
        }

        return clean.ToString();
    }

    /// <summary>The same between quotation marks.</summary>
    public static string Quote(string text) => $"“{Short(text)}”";
}
