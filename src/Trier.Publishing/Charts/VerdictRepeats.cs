using Trier.Publishing.Writing;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Charts;

/// <summary>Makes a chart for each cheese that was served twice.</summary>
public static class VerdictRepeats
{
    private const int MostRows = 60;

    /// <summary>The charts, in the order of the verdict's repeats; none where too many tasted to give each a row.</summary>
    /// <param name="verdict">The verdict.</param>
    public static IEnumerable<RepeatData> Of(Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        var looks = VerdictLooks.Of(verdict.Record);
        var samples = verdict.Record.Samples.ToDictionary(sample => sample.Id, StringComparer.Ordinal);
        foreach (var repeat in verdict.Repeats)
        {
            var rows = verdict.Record.Voters
                .Where(voter => voter.Role == VoterRole.Guest)
                .Select(voter => (voter.Name, voter.Id, Places: MidPlaces.Of(voter.Places.Add(voter.Below), samples.ContainsKey)))
                .Where(voter => voter.Places.ContainsKey(repeat.Counts) && voter.Places.ContainsKey(repeat.Check))
                .Select(voter => (voter.Id, Row: new RepeatRow(voter.Name, voter.Places[repeat.Counts], voter.Places[repeat.Check])))
                .OrderBy(row => Math.Abs(row.Row.Counts - row.Row.Check)).ThenBy(row => row.Row.Counts).ThenBy(row => row.Id, StringComparer.Ordinal)
                .Select(row => row.Row)
                .ToList();
            if (rows.Count is 0 or > MostRows) continue;
            yield return Chart(verdict, repeat, rows, looks[repeat.Counts]);
        }
    }

    private static RepeatData Chart(Verdict verdict, RepeatFinding repeat, List<RepeatRow> rows, WheelLook look)
    {
        var (counts, check) = (verdict.Sample(repeat.Counts), verdict.Sample(repeat.Check));
        return new(
            rows,
            verdict.Record.Samples.Length,
            look,
            $"{counts.Name}{Code(counts)}, the serving that counts",
            $"the same cheese{Code(check)}, only a check",
            $"{counts.Name} served twice",
            $"Each taster’s two places for {counts.Name} among {Numbers.Plain(verdict.Record.Samples.Length)} samples, joined by a line. On average {Numbers.Plain(Math.Round(repeat.MeanDistance, 2))} places apart; by luck {Numbers.Plain(Math.Round(repeat.MeanByLuck, 2))}. Next to each other on {Numbers.Plain(repeat.NextToEachOther)} of {Numbers.Plain(repeat.Ballots)} ballots.");
    }

    private static string Code(SampleRecord sample) => sample.Code is { } code && code != sample.Name ? $" as {code}" : "";
}
