using System.Collections.Immutable;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Verdicts;

namespace Trier.Publishing.BallotFiles;

/// <summary>Makes a record of ballots that are known to be sound.</summary>
internal static class RecordOfBallots
{
    public static TastingRecord Make(ParsedBallots ballots, string title, BallotFileOptions options)
    {
        var repeats = options.Repeats.ToDictionary(p => p.Check, p => p.Counts, StringComparer.Ordinal);
        var samples = ballots.Codes
            .Order(StringComparer.Ordinal)
            .Select(c => new SampleRecord(c, c, c, repeats.GetValueOrDefault(c), Mark: null, WheelFacts.None));
        return new(
            new RecordHead(title, Question: null, Host: null, Day: null, Invented: false, FromFile: true),
            new JudgingPlan(CountingRule.Default, JuniorsCount: true),
            [.. samples],
            [.. ballots.Ballots.Select(b => VoterOf(b, ballots.Codes.Length, options.Unplaced))],
            [],
            [])
        {
            InputCautions = ballots.Cautions,
        };
    }

    private static VoterRecord VoterOf(ParsedBallot ballot, int samples, Unplaced unplaced)
    {
        var placed = ballot.Groups.SelectMany(g => g).ToHashSet(StringComparer.Ordinal);
        var below = unplaced == Unplaced.Last && placed.Count > 0 ? ballot.Served.Where(c => !placed.Contains(c)).ToImmutableArray() : [];
        return new(
            ballot.Taster,
            ballot.Taster,
            VoterRole.Guest,
            placed.Count + below.Length < samples ? VoterMarks.FewerSamples : VoterMarks.None,
            Remarks: [],
            Taste: null,
            Voice: null,
            ballot.ServingOrder,
            ballot.Groups,
            below,
            ballot.Answers);
    }
}
