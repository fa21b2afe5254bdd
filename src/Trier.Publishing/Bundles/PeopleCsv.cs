using System.Globalization;
using System.Text;
using System.Text.Json;
using Trier.Publishing.BallotFiles;
using Trier.Trials.Makes;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Bundles;

/// <summary>Tasters and wheels as tables.</summary>
internal static class PeopleCsv
{
    private static readonly string[] WheelColumns = ["wheel", "name", "code", "repeat_of"];

    /// <summary>One row a taster: taster, shown_as, said_beforehand, counts, marks, voice, sitting.</summary>
    public static string Tasters(Verdict verdict)
    {
        var standing = verdict.Ballots.ToDictionary(ballot => ballot.Id, StringComparer.Ordinal);
        var text = new StringBuilder("taster,shown_as,said_beforehand,counts,marks,voice,sitting\n");
        foreach (var voter in verdict.Record.Voters.OrderBy(voter => voter.Id, StringComparer.Ordinal))
        {
            string[] cells =
            [
                voter.Id,
                SafeText.Guard(voter.Name),
                voter.Taste is { } taste ? Name(taste) : "",
                standing.TryGetValue(voter.Id, out var ballot) ? Name(ballot.Standing) : "",
                string.Join('+', voter.Remarks.Select(SafeText.Guard)),
                voter.Voice?.ToString(CultureInfo.InvariantCulture) ?? "",
                voter.Sitting?.ToString(CultureInfo.InvariantCulture) ?? "",
            ];
            text.AppendJoin(',', cells.Select(CsvCell.Quoted)).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>One row a sample: wheel, name, code, repeat_of, and a column for each fact.</summary>
    public static string Wheels(Verdict verdict)
    {
        var samples = verdict.Record.Samples.OrderBy(sample => sample.Id, StringComparer.Ordinal).ToList();
        var facts = WheelFacts.Asked.Concat(samples.SelectMany(sample => sample.Facts.Values.Keys).Order(StringComparer.Ordinal)).Distinct(StringComparer.Ordinal).Where(fact => samples.Exists(sample => sample.Facts[fact] is not null)).ToList();
        var text = new StringBuilder();
        text.AppendJoin(',', WheelColumns.Concat(facts).Select(CsvCell.Quoted)).Append('\n');
        foreach (var sample in samples)
        {
            var cells = new[] { sample.Id, sample.Name, sample.Code ?? "", sample.RepeatOf ?? "" }.Concat(facts.Select(fact => sample.Facts[fact] ?? ""));
            text.AppendJoin(',', cells.Select(cell => CsvCell.Quoted(SafeText.Guard(cell)))).Append('\n');
        }

        return text.ToString();
    }

    private static string Name<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString()).Replace('_', ' ');
}
