using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Tastings;

namespace Trier.Publishing.BallotFiles;

/// <summary>The layout with one row a taster: <c>taster,317,582,...</c>, the cell being the place, 1 best.</summary>
internal static class RowPerTaster
{
    public static ParsedBallots Read(BallotTable table, Faults faults)
    {
        var codes = table.Header.Skip(1).ToImmutableArray();
        for (var i = 0; i < codes.Length; i++)
        {
            if (codes[i].Length == 0)
                faults.AtLine(table.HeaderLine, string.Create(CultureInfo.InvariantCulture, $"column {i + 2}"), "the header names no code; write the sample's code there or take the column out.");
            else if (codes.IndexOf(codes[i]) < i)
                faults.AtLine(table.HeaderLine, codes[i], "the code stands twice in the header; each sample has one column.");
        }

        var ballots = ImmutableArray.CreateBuilder<ParsedBallot>();
        var gaps = new List<string>();
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var row in table.Rows)
        {
            var taster = row.Cell(0);
            if (taster.Length == 0) faults.AtLine(row.Line, "taster", "no name or number; each row needs one.");
            else if (!seen.TryAdd(taster, row.Line))
                faults.AtLine(row.Line, "taster", string.Create(CultureInfo.InvariantCulture, $"{Faults.Quote(taster)} stands on line {seen[taster]} already; each taster has one row."));
            if (row.Cells.Length > table.Header.Length && row.Cells.Skip(table.Header.Length).Any(c => !string.IsNullOrWhiteSpace(c)))
                faults.AtLine(row.Line, null, string.Create(CultureInfo.InvariantCulture, $"{row.Cells.Length} cells, but the header names {table.Header.Length}; a decimal comma needs semicolons between the cells."));
            var placed = new List<(string Code, decimal Place)>();
            for (var i = 0; i < codes.Length; i++)
            {
                var cell = row.Cell(i + 1);
                if (cell.Length == 0) continue;
                if (Places.Read(cell, codes.Length, row.Line, codes[i], faults) is { } place) placed.Add((codes[i], place));
            }

            if (Places.HasGap(placed.Select(p => p.Place))) gaps.Add(taster);
            ballots.Add(new(taster, Places.Order(placed), codes, [], ImmutableSortedDictionary<string, SampleAnswer>.Empty));
        }

        return new(codes, ballots.ToImmutable(), GapCaution.Of(gaps));
    }
}
