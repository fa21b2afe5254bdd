using System.Collections.Immutable;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>What was said of single wheels besides their places: counts and words, never tested and never used to decide.</summary>
internal static class Answering
{
    public static ImmutableArray<SaltFinding> Salt(Electorate electorate, ImmutableArray<SampleRecord> wheels)
    {
        var found = wheels.Select(wheel => Salt(electorate, wheel.Id)).ToImmutableArray();
        return found.Any(line => line.Answers > 0) ? found : [];
    }

    public static ImmutableArray<SaidFinding> Said(Electorate electorate, ImmutableArray<SampleRecord> wheels) =>
        [.. wheels.Select(wheel => new SaidFinding(wheel.Id, Said(electorate, wheel.Id))).Where(said => !said.Remarks.IsEmpty)];

    private static SaltFinding Salt(Electorate electorate, string id)
    {
        var answers = electorate.Voters.Where(electorate.CountsByPlan).Select(voter => voter.Answers.GetValueOrDefault(id)).OfType<SampleAnswer>().Where(answer => answer.Salt is not null).ToList();
        double[] Likings(int salt) => [.. answers.Where(answer => answer.Salt == salt).Select(answer => answer.Liking).OfType<int>().Select(liking => (double)liking)];
        var right = Likings(0);
        SaltGroup Group(int salt)
        {
            var own = Likings(salt);
            var both = own.Length > 0 && right.Length > 0 && salt != 0;
            return new(
                answers.Count(answer => answer.Salt == salt),
                own.Length == 0 ? null : own.Average(),
                both ? right.Average() - own.Average() : null);
        }

        return new(id, Group(-1), Group(0), Group(1));
    }

    private static ImmutableArray<Said> Said(Electorate electorate, string id) =>
        [.. electorate.Voters
            .Select(voter => (Voter: voter, Answer: voter.Answers.GetValueOrDefault(id)))
            .Where(pair => pair.Answer is { } answer && (answer.Remark is not null || !answer.Words.IsEmpty))
            .Select(pair => new Said(pair.Voter.Name, PlaceOf(pair.Voter, electorate, id), pair.Answer!.Liking, pair.Answer.Remark, pair.Answer.Words))
            .OrderByDescending(said => said.Liking ?? 5)
            .ThenBy(said => said.Place ?? double.MaxValue)
            .ThenBy(said => said.Taster, StringComparer.Ordinal)];

    private static double? PlaceOf(VoterRecord voter, Electorate electorate, string id)
    {
        var before = 0;
        foreach (var group in voter.Places.Select(group => group.Where(electorate.OwnColumns.ContainsKey).ToList()))
        {
            if (group.Contains(id)) return before + ((group.Count + 1) / 2.0);
            before += group.Count;
        }

        return null;
    }
}
