using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Verdicts;

namespace Trier.Publishing.BallotFiles;

/// <summary>
/// Reads ballots written by other hands: one row a taster, one row a sample, counted orders, or the open preference-data text
/// formats, told apart by header or content. Nothing is taken in unless everything can be. The layouts stand in
/// docs/handbook/ballot-files.md.
/// </summary>
public static class BallotFile
{
    /// <summary>Most different codes a file may hold.</summary>
    public const int MostSamples = 16;

    /// <summary>Largest file read, in bytes (32 MB).</summary>
    public const int LargestBytes = BallotText.LargestBytes;

    /// <summary>What is said of a file that is too large, for a caller who knows its length before reading it.</summary>
    public static Outcome<TastingRecord> TooLarge => BallotText.TooLarge<TastingRecord>();

    /// <summary>Reads the bytes of one file.</summary>
    /// <param name="bytes">UTF-8 or UTF-16 text, with or without byte-order mark, at most 32 MB.</param>
    /// <param name="title">What to call the tasting: the file's name without its ending.</param>
    /// <param name="options">What an empty place means and which codes repeat another.</param>
    /// <returns>The record, or every fault of the file, each naming line and field.</returns>
    public static Outcome<TastingRecord> Read(ReadOnlySpan<byte> bytes, string title, BallotFileOptions options)
    {
        var decoded = BallotText.Decode(bytes);
        if (!decoded.TryGet(out var text)) return Outcome.Fault<TastingRecord>(decoded.Problems);
        var faults = new Faults();
        var ballots = Parse(text, faults);
        if (ballots is null || faults.Any) return faults.Fail<TastingRecord>();
        Check(ballots, options, faults);
        return faults.Any ? faults.Fail<TastingRecord>() : Outcome.Of(RecordOfBallots.Make(ballots, title, options));
    }

    private static ParsedBallots? Parse(string text, Faults faults)
    {
        if (PreferenceText.Looks(text)) return PreferenceText.Read(text, faults);
        if (PreferenceText.LooksOlder(text))
        {
            faults.AtLine(1, null, "this is the older form of the preference-data formats, without header lines; bring it to the form with “# ALTERNATIVE NAME 1: ...” and rows such as “12: 2,1,{3,4}”.");
            return null;
        }

        var table = BallotTable.Split(text, faults);
        if (table is null) return null;
        var layout = LayoutOf(table);
        if (layout is null)
        {
            faults.AtLine(table.HeaderLine, null, $"the header begins with {Faults.Quote(table.Header[0])}; it must be “taster” and the codes, or “taster, code, place”, or “count, order”.");
            return null;
        }

        if (table.Rows.IsEmpty)
        {
            faults.Add("file", "The file has a header and no ballots; add at least one row.");
            return null;
        }

        return layout(table, faults);
    }

    private static Func<BallotTable, Faults, ParsedBallots>? LayoutOf(BallotTable table)
    {
        if (table.Has(BallotColumns.Taster) && table.Has(BallotColumns.Code)) return RowPerSample.Read;
        if (table.Has("count") && table.Has("order")) return CountedOrders.Read;
        return string.Equals(table.Header[0], BallotColumns.Taster, StringComparison.OrdinalIgnoreCase) ? RowPerTaster.Read : null;
    }

    private static void Check(ParsedBallots ballots, BallotFileOptions options, Faults faults)
    {
        var codes = ballots.Codes;
        if (codes.Length > MostSamples)
        {
            faults.Add("code", string.Create(CultureInfo.InvariantCulture, $"The file holds {codes.Length} different codes; it may hold {MostSamples}."));
            return;
        }

        foreach (var pair in options.Repeats)
        {
            var field = $"--repeat {Faults.Short(pair.Check)}={Faults.Short(pair.Counts)}";
            foreach (var code in new[] { pair.Check, pair.Counts }.Where(c => !codes.Contains(c)).Distinct(StringComparer.Ordinal))
                faults.Add(field, $"{field}: unknown code {Faults.Quote(code)}; the file has {string.Join(", ", codes.Take(20).Select(Faults.Short))}.");
            if (pair.Check == pair.Counts) faults.Add(field, $"{field}: a code cannot repeat itself; name the check first, then the code that counts.");
            else if (options.Repeats.Any(p => p.Check == pair.Counts)) faults.Add(field, $"{field}: {Faults.Quote(pair.Counts)} is itself a check; name the code that counts.");
            if (options.Repeats.Count(p => p.Check == pair.Check) > 1) faults.Add(field, $"{field}: {Faults.Quote(pair.Check)} is named as a check twice; name it once.");
        }

        if (faults.Any) return;
        if (codes.Length - options.Repeats.Length < 2)
            faults.Add("code", codes.Length < 2 ? "The file holds one sample; a comparison needs at least two." : "Without the repeats there is one sample; a comparison needs at least two.");
        if (ballots.Ballots.Length > Orders.MostBallots)
            faults.Add("taster", string.Create(CultureInfo.InvariantCulture, $"The file holds {ballots.Ballots.Length} ballots; it may hold {Orders.MostBallots}."));
    }
}
