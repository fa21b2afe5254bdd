using System.Collections.Immutable;
using Trier.Statistics.Ratings;
using Trier.Trials.Plans;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>What was said of single wheels besides their places: counts and words, never tested and never used to decide.</summary>
internal static class Answering
{
    public static ImmutableArray<SaltFinding> Salt(Electorate electorate, ImmutableArray<SampleRecord> wheels)
    {
        var found = wheels.Select(wheel => Amounts(electorate, wheel.Id, BallotPlan.Salt)).ToImmutableArray();
        return found.Any(line => line.Answers > 0) ? found : [];
    }

    public static ImmutableArray<SaidFinding> Said(Electorate electorate, ImmutableArray<SampleRecord> wheels) =>
        [.. wheels.Select(wheel => new SaidFinding(wheel.Id, Said(electorate, wheel.Id))).Where(said => !said.Remarks.IsEmpty)];

    /// <summary>Counts of one property of one wheel.</summary>
    public static SaltFinding Amounts(Electorate electorate, string id, string property)
    {
        var answers = AskedAfter.Of(electorate, id).Where(answer => answer.Amount(property) is not null).ToList();
        var summed = JustAboutRight.Of(answers.Select(answer => ((Amount?)answer.Amount(property), (double?)answer.Liking)));
        int Count(Amount amount) => answers.Count(answer => answer.Amount(property) == (int)amount);
        SaltGroup Group(Amount amount) =>
            new(Count(amount), summed.Stands && summed.Value.Drops.FirstOrDefault(drop => drop.Amount == amount) is { } found ? found : null);
        return new(id, Group(Amount.TooLittle), Count(Amount.JustRight), summed.Stands ? summed.Value.MeanWhereRight : null, Group(Amount.TooMuch));
    }

    private static ImmutableArray<Said> Said(Electorate electorate, string id) =>
        [.. electorate.Voters
            .Select(voter => (Voter: voter, Answer: voter.Answers.GetValueOrDefault(id)))
            .Where(pair => pair.Answer is { } answer && (answer.Remark is not null || !answer.Words.IsEmpty))
            .Select(pair => new Said(pair.Voter.Name, MidPlaces.Of(pair.Voter.Places, electorate.OwnColumns.ContainsKey).TryGetValue(id, out var place) ? place : null, pair.Answer!.Liking, pair.Answer.Remark, pair.Answer.Words))
            .OrderByDescending(said => said.Liking ?? 5)
            .ThenBy(said => said.Place ?? double.MaxValue)
            .ThenBy(said => said.Taster, StringComparer.Ordinal)];
}
