using Trier.Publishing.BallotFiles;
using Trier.Trials.Verdicts;

namespace Trier.Publishing.Bundles;

/// <summary>Whether a record that was read can be judged: every list is there, ids are unique, and nothing speaks of a sample that is not listed.</summary>
internal static class RecordCheck
{
    /// <summary>What is wrong, in one sentence; null where all is well.</summary>
    public static string? Sentence(TastingRecord record)
    {
        if (record is not { Head.Title: not null, Plan.Rule: not null }) return "record.json lacks its title or its rule.";
        if (record.Samples.IsDefault || record.Voters.IsDefault || record.Withdrawals.IsDefault || record.Notes.IsDefault || record.InputCautions.IsDefault) return "record.json lacks one of its lists: samples, voters, withdrawals, notes.";
        if (record.Samples.Any(sample => sample is not { Id: not null, Name: not null, Facts: not null })) return "A sample in record.json lacks its id, name or facts.";
        if (record.Voters.Any(voter => voter is not { Id: not null, Name: not null, Answers: not null })) return "A voter in record.json lacks id, name or answers.";
        if (record.Withdrawals.Any(gone => gone is not { Id: not null, Name: not null, Reason: not null, HadIt.IsDefault: false })) return "A withdrawn wheel in record.json lacks id, name or reason.";
        if (record.Notes.Any(note => note is not { Sentence: not null, Published: not null })) return "A note in record.json lacks its sentence.";
        if (record.Samples.Length is 0 or > BallotFile.MostSamples) return $"record.json holds {record.Samples.Length} samples; it may hold 1 to {BallotFile.MostSamples}.";
        var samples = record.Samples.Select(sample => sample.Id).ToHashSet(StringComparer.Ordinal);
        if (samples.Count != record.Samples.Length) return "Two samples in record.json have the same id.";
        if (record.Samples.FirstOrDefault(sample => sample.RepeatOf is { } of && (of == sample.Id || record.Samples.FirstOrDefault(other => other.Id == of) is not { RepeatOf: null })) is { } repeat) return $"Sample {repeat.Id} in record.json repeats a sample that does not count.";
        if (record.Samples.Any(sample => sample.Mark is { } mark && (mark.Shape is < 1 or > 8 || mark.Tone is < 1 or > 8))) return "A wheel's mark in record.json has a shape or tone that does not exist.";
        if (record.Asked is { } asked && (asked.Properties.IsDefault || asked.Properties.Any(property => property is not { Property: not null, Wheels.IsDefault: false } || property.Wheels.Any(line => !Counts(line?.Id, line?.TooLittle, line?.JustRight, line?.TooMuch))) || asked.Again.IsDefault || asked.Again.Any(line => !Counts(line?.Id, line?.Yes, line?.Answers - line?.Yes)) || !Fit(asked.Unclear))) return "The counts in record.json speak of a sample that is not listed, or of more answers than there are voters.";
        if (record.Voters.Select(voter => voter.Id).Distinct(StringComparer.Ordinal).Count() != record.Voters.Length) return "Two voters in record.json have the same id.";
        foreach (var voter in record.Voters)
        {
            if (voter.Places.IsDefault || voter.Places.Any(group => group.IsDefaultOrEmpty) || voter.Below.IsDefault || voter.ServingOrder.IsDefault || voter.Remarks.IsDefault || voter.Named.IsDefault || voter.Answers.Values.Any(answer => answer is null || answer.Words.IsDefault)) return $"The ballot of {voter.Id} in record.json lacks one of its lists.";
            var placed = voter.Places.SelectMany(group => group).Concat(voter.Below).ToList();
            if (placed.Distinct(StringComparer.Ordinal).Count() != placed.Count) return $"The ballot of {voter.Id} in record.json places a sample twice.";
            if (placed.Concat(voter.ServingOrder).Concat(voter.Answers.Keys).FirstOrDefault(id => !samples.Contains(id)) is { } unknown) return $"The ballot of {voter.Id} in record.json speaks of {unknown}, which is not among its samples.";
        }

        return null;

        bool Counts(string? id, params int?[] counts) => id is not null && samples.Contains(id) && Array.TrueForAll(counts, count => count >= 0) && Fit(counts.Sum());

        bool Fit(int? answers) => answers >= 0 && answers <= record.Voters.Length;
    }
}
