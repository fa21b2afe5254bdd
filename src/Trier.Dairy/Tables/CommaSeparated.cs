using System.Text;

namespace Trier.Dairy.Tables;

/// <summary>Splits the small comma-separated tables of this library: double quotes around a cell that holds commas.</summary>
internal static class CommaSeparated
{
    public static List<string[]> Rows(string text)
    {
        var rows = new List<string[]>();
        foreach (var line in text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            rows.Add(Cells(line));
            if (rows[^1].Length != rows[0].Length)
                throw new FormatException($"Row {rows.Count} has {rows[^1].Length} cells where the header has {rows[0].Length}: {line}");
        }

        return rows;
    }

    private static string[] Cells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        foreach (var character in line)
        {
            if (character == '"')
            {
                quoted = !quoted;
            }
            else if (character == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(character);
            }
        }

        if (quoted) throw new FormatException($"A quote is not closed: {line}");
        cells.Add(cell.ToString());
        return [.. cells];
    }
}
