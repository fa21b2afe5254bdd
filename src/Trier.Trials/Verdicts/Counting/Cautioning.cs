using System.Collections.Immutable;
using Trier.Trials.Plans;
using Trier.Trials.Verdicts.Findings;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>What a reader must be warned of.</summary>
internal static class Cautioning
{
    private const int Named = 8;

    public static ImmutableArray<string> Of(Electorate electorate)
    {
        var cautions = ImmutableArray.CreateBuilder<string>();
        cautions.AddRange(electorate.Record.InputCautions);
        if (electorate.Record.Head.Invented) cautions.Add("This trial is invented: its people and its numbers are made up.");
        var silent = electorate.Voters.Where(v => v.Role == VoterRole.Guest && electorate.Placed(v) < 2).ToList();
        if (silent.Count > 0) cautions.Add($"{Names(silent)} placed fewer than two {Phrase.Wheels(electorate.Record)} and {(silent.Count == 1 ? "is" : "are")} left out of every order{(electorate.ByLiking && silent.Exists(electorate.Counted) ? "; likings they gave count" : "")}.");
        var partial = electorate.Voters.Where(v => electorate.StandingOf(v) == StripStanding.Partial).ToList();
        if (partial.Count > 0)
            cautions.Add($"{Names(partial)} {(electorate.ByLiking ? "gave a liking to" : "placed")} only some of the {Phrase.Wheels(electorate.Record)}: counted where all ballots are, not in the headline.");
        var upside = electorate.Voters.Where(v => electorate.CountsByPlan(v) && Upside.Down(electorate, v)).ToList();
        if (upside.Count > 0) cautions.Add($"{Names(upside)} liked best what {(upside.Count == 1 ? "the ballot places" : "their ballots place")} last; the places may be upside down.");
        cautions.AddRange(electorate.Record.Notes.Where(n => n.Kind != DayNoteKind.Correction).OrderBy(n => n.At).ThenBy(n => n.Sentence, StringComparer.Ordinal).Select(n => n.Sentence));
        if (electorate.Record.Plan.Rule is CountingRule.PlacePoints points && points.Weights.Length > electorate.Wheels.Length && !electorate.Wheels.IsEmpty)
            cautions.Add($"The place points were planned for {Phrase.Number(points.Weights.Length)} wheels: with {Phrase.Number(electorate.Wheels.Length)} left the first {Phrase.Number(electorate.Wheels.Length)} weights are used.");
        if (electorate.Repeats.Any(r => !electorate.OwnColumns.ContainsKey(r.RepeatOf!)))
            cautions.Add("The wheel of a hidden repeat was withdrawn, so that repeat is no yardstick.");
        return cautions.ToImmutable();
    }

    private static string Names(List<VoterRecord> voters) =>
        voters.Count <= Named ? Phrase.List(voters.Select(v => v.Name)) : $"{Phrase.Number(voters.Count)} tasters";
}
