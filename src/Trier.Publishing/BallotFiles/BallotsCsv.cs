using System.Globalization;
using System.Text;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts;

namespace Trier.Publishing.BallotFiles;

/// <summary>
/// Writes the ballots of a record with one row a sample, the columns that <see cref="BallotFile"/> reads: taster, position, code,
/// liking_1to9, salt_jar, place, words, remark. Tasters stand by id, never by name; a place is the mid-place among the samples
/// the taster placed.
/// </summary>
public static class BallotsCsv
{
    /// <summary>The whole text, header first, lines ended by LF.</summary>
    /// <param name="record">What was judged. Samples stand by their code, where they have one, else by their id.</param>
    /// <param name="withRemarks">Whether free remarks are written: yes for the maker's own copy; what is published leaves them out.</param>
    public static string Write(TastingRecord record, bool withRemarks = true)
    {
        ArgumentNullException.ThrowIfNull(record);
        var codes = record.Samples.ToDictionary(s => s.Id, s => s.Code ?? s.Id, StringComparer.Ordinal);
        var text = new StringBuilder(string.Join(',', BallotColumns.All)).Append('\n');
        foreach (var voter in record.Voters.OrderBy(v => v.Id, StringComparer.Ordinal))
        {
            var places = MidPlaces.Of(voter.Places.Add(voter.Below));
            foreach (var id in OrderOf(voter, places, codes))
            {
                var answer = voter.Answers.GetValueOrDefault(id) ?? SampleAnswer.Nothing;
                var position = voter.ServingOrder.IndexOf(id) + 1;
                string[] cells =
                [
                    SafeText.Guard(voter.Id),
                    position == 0 ? "" : Whole(position),
                    codes[id],
                    Whole(answer.Liking),
                    Whole(answer.Salt),
                    places.TryGetValue(id, out var place) ? place.ToString("0.#", CultureInfo.InvariantCulture) : "",
                    string.Join('+', answer.Words.Select(SafeText.Guard)),
                    withRemarks && answer.Remark is { } remark ? SafeText.Guard(remark) : "",
                ];
                text.AppendJoin(',', cells.Select(CsvCell.Quoted)).Append('\n');
            }
        }

        return text.ToString();
    }

    private static IEnumerable<string> OrderOf(VoterRecord voter, Dictionary<string, double> places, Dictionary<string, string> codes)
    {
        var known = voter.ServingOrder.Where(codes.ContainsKey).ToList();
        var others = places.Keys.Concat(voter.Answers.Keys).Where(codes.ContainsKey).Except(known, StringComparer.Ordinal);
        return [.. known, .. others.Order(StringComparer.Ordinal)];
    }

    private static string Whole(int? number) => number?.ToString(CultureInfo.InvariantCulture) ?? "";
}
