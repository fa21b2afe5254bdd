using System.Globalization;
using Trier.Dairy.Workings;
using Trier.TestKit;

namespace Trier.Dairy.Tests;

/// <summary>Every published or independently computed value that belongs to these topics.</summary>
public static partial class WorkedExamples
{
    public sealed record Row(string Id, string Quantity, double Expected, string Unit, double Tolerance);

    public static readonly IReadOnlyList<Row> Rows = [.. ReadRows()];

    public static readonly IReadOnlyDictionary<string, WorkedExample> All =
        new[] { Milk(), Vat(), Salt(), Air(), Gas() }.SelectMany(list => list).ToDictionary(example => example.Id, StringComparer.Ordinal);

    private static WorkedExample Check(string id, string source, Status status, Func<double> compute) => new(id, source, status, compute);

    private static T Value<T>(Outcome<T> outcome) => outcome.OrThrow().Value;

    private static IEnumerable<Row> ReadRows()
    {
        var path = Path.Combine(Checkout.Root, "tests", "Trier.Dairy.Tests", "Checks", "worked_examples.csv");
        foreach (var cells in Tables.CommaSeparated.Rows(File.ReadAllText(path)).Skip(1))
        {
            yield return new Row(cells[0], cells[1], Number(cells[2]), cells[3], Number(cells[4]));
        }
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
