using System.Collections.Immutable;
using Trier.Statistics.Agreement;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>Who disagrees: camps by the taste declared beforehand, and wheels that are loved and hated.</summary>
internal static class Parting
{
    // A thousand draws tell 1 in 20 from 1 in 10; a large crowd is not worth more.
    private const long MostShuffledBallots = 50_000_000;
    private const int FewestDraws = 999;

    public static CampsFinding? Camps(Electorate electorate, ImmutableArray<SampleRecord> wheels, Seed seed, Effort effort)
    {
        if (wheels.Length < 2) return null;
        var (set, voters) = electorate.OneByOne(electorate.Headline);
        if (set.Rows.IsEmpty) return null;
        ImmutableArray<int?> labels = [.. voters.Select(voter => voter.Taste switch { DeclaredTaste.Milder => 0, DeclaredTaste.Stronger => 1, _ => (int?)null })];
        var tested = Trier.Statistics.Agreement.Camps.Test(set, labels, seed.Child("camps"), effort);
        if (!tested.Stands) return null;
        var found = tested.Value;
        return new(found.FirstVoices, found.SecondVoices, found.Statistic, found.P, found.Ways, found.Parted, [.. wheels.Select(wheel =>
        {
            var item = found.Items[electorate.OwnColumns[wheel.Id]];
            return new CampPlace(wheel.Id, item.FirstCamp, item.SecondCamp, item.P, item.Shown, Liking(voters, DeclaredTaste.Milder, wheel.Id), Liking(voters, DeclaredTaste.Stronger, wheel.Id));
        })]);
    }

    private static double? Liking(ImmutableArray<VoterRecord> voters, DeclaredTaste taste, string wheel)
    {
        var likings = voters.Where(voter => voter.Taste == taste).Select(voter => voter.Answers.GetValueOrDefault(wheel)?.Liking).OfType<int>().ToList();
        return likings.Count == 0 ? null : likings.Average();
    }

    public static LovedFinding? Loved(Electorate electorate, ImmutableArray<SampleRecord> wheels, Seed seed, Effort effort)
    {
        if (wheels.Length < 3) return null;
        var ballots = electorate.Ballots(electorate.Headline);
        if (ballots.Rows.IsEmpty) return null;
        var draws = (int)Math.Clamp(MostShuffledBallots / ballots.Ballots, FewestDraws, Math.Max(FewestDraws, effort.Draws));
        var tested = LovedAndHated.Test(ballots, seed.Child("loved"), effort with { Draws = Math.Min(effort.Draws, draws) });
        if (!tested.Stands) return null;
        var ids = tested.Value.Items.Select(i => electorate.Wheels[i].Id).ToHashSet(StringComparer.Ordinal);
        return new(tested.Value.Measure, [.. wheels.Select(wheel => wheel.Id).Where(ids.Contains)], tested.Value.P, tested.Value.Marked);
    }
}
