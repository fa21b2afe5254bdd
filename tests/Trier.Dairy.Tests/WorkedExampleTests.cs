namespace Trier.Dairy.Tests;

public sealed class WorkedExampleTests
{
    public static TheoryData<string, string> Ids()
    {
        var data = new TheoryData<string, string>();
        foreach (var row in WorkedExamples.Rows)
        {
            if (WorkedExamples.All.TryGetValue(row.Id, out var example))
                data.Add(row.Id, $"{row.Quantity} ({example.Source}; {example.Status})");
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_worked_value_is_met(string id, string what)
    {
        var row = WorkedExamples.Rows.Single(entry => entry.Id == id);
        var found = WorkedExamples.All[id].Compute();
        Assert.True(
            Math.Abs(found - row.Expected) <= Math.Max(row.Tolerance, 1e-12),
            $"{id}, {what}: found {found}, expected {row.Expected} within {row.Tolerance} {row.Unit}.");
    }

    [Fact]
    public void Every_row_is_checked_or_listed_with_a_reason_and_none_twice()
    {
        var rows = WorkedExamples.Rows.Select(row => row.Id).ToArray();
        Assert.Equal(rows.Length, rows.Distinct(StringComparer.Ordinal).Count());
        var silent = rows.Where(id => !WorkedExamples.All.ContainsKey(id) && NotCovered.ReasonFor(id) is null);
        Assert.Empty(silent);
        var twice = rows.Where(id => WorkedExamples.All.ContainsKey(id) && NotCovered.ReasonFor(id) is not null);
        Assert.Empty(twice);
        var unknown = WorkedExamples.All.Keys.Concat(NotCovered.Reasons.Keys).Except(rows, StringComparer.Ordinal);
        Assert.Empty(unknown);
    }
}
