using System.Buffers;

namespace Trier.Publishing.BallotFiles;

/// <summary>A cell of a written table.</summary>
internal static class CsvCell
{
    private static readonly SearchValues<char> NeedQuotes = SearchValues.Create("\",;\t\r\n");

    /// <summary>The cell, between quotation marks where it needs them.</summary>
    public static string Quoted(string cell)
    {
        if (cell.AsSpan().IndexOfAny(NeedQuotes) < 0 && cell == cell.Trim()) return cell;
        return $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
