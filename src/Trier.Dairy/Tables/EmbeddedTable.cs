using System.Globalization;
using Trier.Dairy.Workings;

namespace Trier.Dairy.Tables;

/// <summary>A published table compiled into this library; its card lies beside the file.</summary>
internal static class EmbeddedTable
{
    public static Listed<T> Read<T>(string name, Func<Row, T> make)
    {
        using var stream = typeof(EmbeddedTable).Assembly.GetManifestResourceStream("Trier.Dairy.Tables." + name)
            ?? throw new InvalidOperationException($"There is no table {name}.");
        using var reader = new StreamReader(stream);
        var rows = CommaSeparated.Rows(reader.ReadToEnd());
        return [.. rows.Skip(1).Select(cells => make(new Row(name, rows[0], cells)))];
    }

    /// <summary>One row, its cells found by their heading.</summary>
    internal sealed class Row(string table, string[] heading, string[] cells)
    {
        public string Text(string column)
        {
            var index = Array.IndexOf(heading, column);
            return index >= 0 ? cells[index] : throw new InvalidOperationException($"Table {table} has no column {column}.");
        }

        public double Number(string column) => double.Parse(Text(column), NumberStyles.Float, CultureInfo.InvariantCulture);

        public double? NumberOrNone(string column) => Text(column).Length == 0 ? null : Number(column);

        public T Word<T>(string column)
            where T : struct, Enum => Enum.Parse<T>(Text(column), ignoreCase: true);
    }
}
