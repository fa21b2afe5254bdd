using System.Globalization;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Verdicts.Publishing;

/// <summary>What a new version changed, dated, in two or three sentences that name no taster, and whether the leader did.</summary>
public static class VersionNote
{
    /// <summary>The note.</summary>
    /// <param name="day">The day of the new version.</param>
    /// <param name="before">The version before, judged from a published record.</param>
    /// <param name="after">The new version, judged from a published record.</param>
    public static string Of(DateOnly day, Verdict before, Verdict after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var changes = Changes(before.Record, after.Record).ToList();
        var what = changes.Count == 0 ? "what strangers may read is the same" : string.Join("; ", changes);
        return $"Corrected on {day.ToString("dd/MM/yyyy", CultureInfo.InvariantCulture)}: {what}. {Leader(before, after)}{Level(before, after)}";
    }

    private static IEnumerable<string> Changes(TastingRecord before, TastingRecord after)
    {
        var old = before.Voters.ToDictionary(voter => voter.Id, StringComparer.Ordinal);
        var pairs = after.Voters.Where(voter => old.ContainsKey(voter.Id)).Select(voter => (Before: old[voter.Id], After: voter)).ToList();
        if (Count(pairs.Count(pair => Ballot(pair.Before) != Ballot(pair.After)), "ballot was", "ballots were") is { } ballots) yield return $"{ballots} put right";
        if (Count(pairs.Count(pair => Marks(pair.Before) != Marks(pair.After)), "ballot has", "ballots have") is { } marks) yield return $"{marks} another mark of the day";
        if (Count(pairs.Count(pair => TakenOutNote.LostName(pair.Before, pair.After)), "name was", "names were") is { } names) yield return $"{names} taken out";
        if (Count(pairs.Count(pair => TakenOutNote.LostWords(pair.Before, pair.After)), "taster’s words were", "tasters’ words were") is { } words) yield return $"{words} taken out";
        if (Count(pairs.Count(pair => (!pair.Before.Agreed.Named && pair.After.Agreed.Named) || (!pair.Before.Agreed.Quoted && pair.After.Agreed.Quoted)), "taster has", "tasters have") is { } agreed) yield return $"{agreed} agreed to be named or quoted";
        var wheels = after.Samples.Where(sample => sample.RepeatOf is null && before.Samples.FirstOrDefault(other => other.Id == sample.Id) is { } same && (same.Name != sample.Name || !same.Facts.Equals(sample.Facts))).Select(sample => sample.Name).ToList();
        if (wheels.Count > 0) yield return $"what is known of {Phrase.List(wheels)} was put right";
        if (!before.Samples.Select(sample => sample.Id).SequenceEqual(after.Samples.Select(sample => sample.Id), StringComparer.Ordinal)) yield return "other samples count";
    }

    private static string? Count(int count, string one, string many) => count == 0 ? null : $"{Phrase.Number(count)} {(count == 1 ? one : many)}";

    private static string Ballot(VoterRecord voter) =>
        string.Join('|', voter.Places.Append(voter.Below).Select(group => string.Join(',', group)))
        + string.Join('|', voter.Answers.Select(answer => string.Create(CultureInfo.InvariantCulture, $"{answer.Key} {answer.Value.Liking} {answer.Value.Salt}")));

    // What follows from the ballot itself is told with the ballot.
    private static string Marks(VoterRecord voter) => string.Create(CultureInfo.InvariantCulture, $"{voter.Role} {voter.Marks & ~(VoterMarks.Corrected | VoterMarks.FewerSamples)} {voter.Voice} {voter.Sitting} {voter.Taste}");

    private static string Leader(Verdict before, Verdict after) =>
        before.Leaders.SequenceEqual(after.Leaders, StringComparer.Ordinal)
            ? "The leader is the same."
            : $"The leader changes: before, {Naming.Leading(before, before.Leaders)}; now {Naming.Leading(after, after.Leaders)}.";

    private static string Level(Verdict before, Verdict after) =>
        before.Level.Level == after.Level.Level ? "" : $" How sure we may be changes too: it was level {before.Level.Level} of the ladder and is level {after.Level.Level}.";
}
