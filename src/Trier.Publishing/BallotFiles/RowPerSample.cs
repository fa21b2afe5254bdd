using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Tastings;

namespace Trier.Publishing.BallotFiles;

/// <summary>
/// The layout with one row a sample: <c>taster,code,place</c>, and where they stand in the header
/// <c>position, liking_1to9, salt_jar, words, remark</c>.
/// </summary>
internal static class RowPerSample
{
    private sealed record Line(BallotRow Row, string Taster, string Code, decimal? Place, int? Position, SampleAnswer Answer);

    public static ParsedBallots Read(BallotTable table, Faults faults)
    {
        foreach (var column in BallotColumns.All)
        {
            if (table.Header.Count(h => string.Equals(h, column, StringComparison.OrdinalIgnoreCase)) > 1)
                faults.AtLine(table.HeaderLine, column, "the column stands twice in the header; take one out.");
        }

        if (!table.Has(BallotColumns.Place)) faults.AtLine(table.HeaderLine, BallotColumns.Place, "the header has no such column; it needs taster, code and place.");
        var codes = table.Rows.Select(r => r.Cell(table.Column(BallotColumns.Code))).Where(c => c.Length > 0).Distinct(StringComparer.Ordinal).ToImmutableArray();
        var lines = table.Rows.Select(r => ReadLine(r, table, codes.Length, faults)).ToList();
        var gaps = new List<string>();
        var ballots = ImmutableArray.CreateBuilder<ParsedBallot>();
        foreach (var taster in lines.Where(l => l.Taster.Length > 0).GroupBy(l => l.Taster, StringComparer.Ordinal))
        {
            foreach (var twice in taster.Where(l => l.Code.Length > 0).GroupBy(l => l.Code, StringComparer.Ordinal).Where(g => g.Count() > 1))
            {
                var first = twice.First().Row.Line;
                foreach (var again in twice.Skip(1))
                    faults.AtLine(again.Row.Line, BallotColumns.Code, string.Create(CultureInfo.InvariantCulture, $"{Faults.Quote(taster.Key)} has {Faults.Quote(twice.Key)} on line {first} already; a taster has one row for each code."));
            }

            foreach (var twice in taster.Where(l => l.Position is not null).GroupBy(l => l.Position).Where(g => g.Count() > 1))
            {
                foreach (var again in twice.Skip(1))
                    faults.AtLine(again.Row.Line, BallotColumns.Position, string.Create(CultureInfo.InvariantCulture, $"{Faults.Quote(taster.Key)} has position {twice.Key} twice; each sample has its own."));
            }

            var placed = taster.Where(l => l.Place is not null).Select(l => (l.Code, Place: l.Place ?? 0)).ToList();
            if (Places.HasGap(placed.Select(p => p.Place))) gaps.Add(taster.Key);
            if (faults.Any) continue;
            ballots.Add(new(
                taster.Key,
                Places.Order(placed),
                [.. taster.Select(l => l.Code)],
                taster.All(l => l.Position is not null) ? [.. taster.OrderBy(l => l.Position).Select(l => l.Code)] : [],
                taster.Where(l => l.Answer != SampleAnswer.Nothing).ToImmutableSortedDictionary(l => l.Code, l => l.Answer, StringComparer.Ordinal)));
        }

        return new(codes, ballots.ToImmutable(), [.. GapCaution.Of(gaps), .. LoneCodes(lines)]);
    }

    private static Line ReadLine(BallotRow row, BallotTable table, int samples, Faults faults)
    {
        string Cell(string column) => row.Cell(table.Column(column));
        var taster = Cell(BallotColumns.Taster);
        if (taster.Length == 0) faults.AtLine(row.Line, BallotColumns.Taster, "no name or number; each row needs one.");
        var code = Cell(BallotColumns.Code);
        if (code.Length == 0) faults.AtLine(row.Line, BallotColumns.Code, "no code; each row needs the code of one sample.");
        if (row.Cells.Length > table.Header.Length && row.Cells.Skip(table.Header.Length).Any(c => !string.IsNullOrWhiteSpace(c)))
            faults.AtLine(row.Line, null, string.Create(CultureInfo.InvariantCulture, $"{row.Cells.Length} cells, but the header names {table.Header.Length}; put a remark with commas, or a decimal comma, between quotation marks."));
        var place = Cell(BallotColumns.Place) is { Length: > 0 } text ? Places.Read(text, samples, row.Line, BallotColumns.Place, faults) : null;
        var answer = new SampleAnswer
        {
            Liking = Whole(row, Cell(BallotColumns.Liking), BallotColumns.Liking, 1, 9, faults),
            Salt = Whole(row, Cell(BallotColumns.Salt), BallotColumns.Salt, -1, 1, faults),
            Words = [.. Cell(BallotColumns.Words).Split('+', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(SafeText.Unguard)],
            Remark = Cell(BallotColumns.Remark) is { Length: > 0 } remark ? SafeText.Unguard(remark) : null,
        };
        return new(row, SafeText.Unguard(taster), code, place, Whole(row, Cell(BallotColumns.Position), BallotColumns.Position, 1, 1000, faults), answer);
    }

    private static int? Whole(BallotRow row, string text, string column, int low, int high, Faults faults)
    {
        if (text.Length == 0) return null;
        if (Places.TryNumber(text, out var number) && number == decimal.Truncate(number) && number >= low && number <= high) return (int)number;
        faults.AtLine(row.Line, column, string.Create(CultureInfo.InvariantCulture, $"{Faults.Quote(text)} is no whole number from {low} to {high}; correct it or leave the cell empty."));
        return null;
    }

    /// <summary>A code that one taster alone had is most likely a slip of the pen.</summary>
    private static IEnumerable<string> LoneCodes(IReadOnlyCollection<Line> lines)
    {
        if (lines.Select(l => l.Taster).Distinct(StringComparer.Ordinal).Count() < 4) yield break;
        foreach (var lone in lines.Where(l => l.Code.Length > 0).GroupBy(l => l.Code, StringComparer.Ordinal).Where(g => g.Count() == 1))
        {
            var line = lone.First();
            yield return string.Create(CultureInfo.InvariantCulture, $"Only {Faults.Short(line.Taster)} has the code {Faults.Short(lone.Key)} (line {line.Row.Line}); look whether it is a slip.");
        }
    }
}
