using System.Collections.Immutable;

namespace Trier.Publishing.BallotFiles;

/// <summary>The layout of counted orders: <c>count,order</c> with rows such as <c>12,B>A=C>D</c>.</summary>
internal static class CountedOrders
{
    public static ParsedBallots Read(BallotTable table, Faults faults)
    {
        var (counts, texts) = (table.Column("count"), table.Column("order"));
        var orders = new List<CountedOrder>();
        foreach (var row in table.Rows)
        {
            var count = Orders.Count(row.Cell(counts), row.Line, faults);
            var groups = row.Cell(texts).Split('>').Select(g => g.Split('=', StringSplitOptions.TrimEntries).ToImmutableArray()).ToImmutableArray();
            if (groups.Any(g => g.Any(c => c.Length == 0)))
            {
                faults.AtLine(row.Line, "order", $"{Faults.Quote(row.Cell(texts))} has an empty place; write it as B>A=C>D, best first.");
                continue;
            }

            if (row.Cells.Skip(Math.Max(counts, texts) + 1).Any(c => !string.IsNullOrWhiteSpace(c)))
                faults.AtLine(row.Line, "order", "there is more after the order; part the samples by > and =, not by the mark between cells.");
            var order = new CountedOrder(row.Line, count ?? 1, groups);
            Orders.CheckTwice(order, faults);
            orders.Add(order);
        }

        var codes = orders.SelectMany(o => o.Groups).SelectMany(g => g).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToImmutableArray();
        return Orders.Expand(codes, orders, faults);
    }
}
