using System.Collections.Immutable;
using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Trier.Publishing.BallotFiles;

/// <summary>One line of a table and where it stands.</summary>
internal readonly record struct BallotRow(int Line, string[] Cells)
{
    public string Cell(int column) => column >= 0 && column < Cells.Length ? Cells[column].Trim() : "";
}

/// <summary>A file split into header and rows by comma, semicolon or tab.</summary>
internal sealed record BallotTable(int HeaderLine, ImmutableArray<string> Header, ImmutableArray<BallotRow> Rows)
{
    public int Column(string name) =>
        Header.IndexOf(name, 0, Header.Length, StringComparer.OrdinalIgnoreCase);

    public bool Has(string name) => Column(name) >= 0;

    /// <summary>Splits the text; null with faults where quotation marks do not close.</summary>
    public static BallotTable? Split(string text, Faults faults)
    {
        var configuration = new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = DelimiterOf(text),
            HasHeaderRecord = false,
            BadDataFound = null,
            IgnoreBlankLines = true,
            TrimOptions = TrimOptions.Trim,
        };
        using var reader = new StringReader(text);
        using var parser = new CsvParser(reader, configuration);
        var rows = ImmutableArray.CreateBuilder<BallotRow>();
        while (parser.Read())
        {
            var inside = parser.RawRecord.AsSpan().TrimEnd('\n').Count('\n');
            var line = parser.RawRow - inside;
            if (inside > 0 && parser.RawRecord.AsSpan().Count('"') % 2 != 0)
            {
                // Such a record runs to the end of the text, so its first line is counted from there.
                var opened = text.AsSpan().Count('\n') + 1 - parser.RawRecord.AsSpan().Count('\n');
                faults.AtLine(opened, null, "a quotation mark opens and never closes; close it or take it out.");
                return null;
            }

            var cells = parser.Record ?? [];
            if (cells.All(string.IsNullOrWhiteSpace)) continue;
            rows.Add(new BallotRow(line, cells));
        }

        if (rows.Count == 0)
        {
            faults.Add("file", "The file is empty; it needs a header line and at least one ballot.");
            return null;
        }

        return new(rows[0].Line, [.. rows[0].Cells.Select(c => c.Trim())], [.. rows.Skip(1)]);
    }

    /// <summary>The mark that cuts the header into most fields; a tab or semicolon wins a tie, for a comma may be a decimal comma.</summary>
    private static string DelimiterOf(string text)
    {
        var header = text.AsSpan().TrimStart('\n');
        var end = header.IndexOf('\n');
        if (end >= 0) header = header[..end];
        var (tabs, semicolons, commas) = (0, 0, 0);
        var quoted = false;
        foreach (var c in header)
        {
            if (c == '"') quoted = !quoted;
            if (quoted) continue;
            if (c == '\t') tabs++;
            else if (c == ';') semicolons++;
            else if (c == ',') commas++;
        }

        if (tabs > 0 && tabs >= semicolons && tabs >= commas) return "\t";
        return semicolons > 0 && semicolons >= commas ? ";" : ",";
    }
}
