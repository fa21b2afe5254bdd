using System.Collections.Immutable;
using Trier.Statistics.Agreement;
using Trier.Statistics.Counting;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>The order of serving, the sittings, and what a panel of this size can show.</summary>
internal static class Ordering
{
    private const double Alike = 1e-9;
    private const int MostWheels = 7;
    private const int MostVoices = 200;

    public static OrderFinding? Order(Electorate electorate, Seed seed, Effort effort)
    {
        ImmutableArray<SampleRecord> samples = [.. electorate.Wheels, .. electorate.Repeats];
        var ids = samples.Select((sample, i) => (sample.Id, i)).ToDictionary(pair => pair.Id, pair => pair.i, StringComparer.Ordinal);
        var voters = electorate.Voters.Where(voter => electorate.CountsByPlan(voter) && voter.ServingOrder.Length > 1).ToList();
        var byLiking = voters.Count(voter => voter.Answers.Any(answer => answer.Value.Liking is not null)) * 2 >= voters.Count;
        ImmutableArray<ServedPlate> plates = [.. voters.Select(voter => new ServedPlate(
            [.. voter.ServingOrder.Where(ids.ContainsKey).Select(id => ids[id])],
            byLiking ? [.. samples.Select(sample => (double?)voter.Answers.GetValueOrDefault(sample.Id)?.Liking)] : Places(voter, ids)))];
        var tested = ServingOrder.Test(samples.Length, plates, seed.Child("order"), effort);
        if (!tested.Stands) return null;
        var found = tested.Value;
        var without = ServingOrder.WithoutPosition(samples.Length, plates, found);
        var sign = byLiking ? 1 : -1;
        return new(
            byLiking,
            [.. found.Positions.Select(position => new PositionLine(position.Count, sign * position.Mean))],
            found.P,
            sign * found.First,
            found.FirstInterval is { } interval ? byLiking ? interval : new(-interval.High, -interval.Low, interval.Level) : null,
            found.FirstP,
            found.Mentioned,
            Best(electorate, [.. plates.Select(plate => plate.Values)], sign),
            Best(electorate, without, sign));
    }

    public static SittingsFinding? Sittings(Electorate electorate, Seed seed, Effort effort)
    {
        var voters = electorate.Voters.Where(voter => electorate.StandingOf(voter) == StripStanding.Counted && voter.Sitting is not null).ToList();
        if (voters.Select(voter => voter.Sitting).Distinct().Count() < 2) return null;
        var ids = electorate.OwnColumns.ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);
        var tested = Trier.Statistics.Agreement.Sittings.Test([.. voters.Select(voter => Places(voter, ids))], [.. voters.Select(voter => voter.Sitting!.Value)], seed.Child("sittings"), effort, [.. voters.Select(voter => voter.Voice)]);
        if (!tested.Stands) return null;
        var lines = voters.GroupBy(voter => voter.Sitting!.Value).OrderBy(group => group.Key).Select(group =>
        {
            var count = electorate.Headline with { Who = voter => electorate.CountsByPlan(voter) && voter.Sitting == group.Key };
            var leaders = Standing.Of(Rules.Score(electorate, count, electorate.Record.Plan.Rule)).Leaders;
            return new SittingLine(group.Key, group.Count(), [.. leaders.Select(column => electorate.Wheels[column].Id)]);
        });
        return new(tested.Value.P, tested.Value.Apart, [.. lines]);
    }

    public static ReachFinding? Reach(Electorate electorate, Judged judged, Seed seed, int panels)
    {
        var voices = electorate.Ballots(electorate.Headline).Voices;
        // Panels are simulated with complete ballots: where some wheels went round, or the crowd is larger than can be simulated, nothing is said.
        if (voices > MostVoices || (electorate.Main == MainCount.AllBallots && electorate.Complete != electorate.Placing)) return null;
        if (panels < 1 || judged.Level == 0 || electorate.Wheels.Length is < 2 or > MostWheels || electorate.Record.Plan.Rule is not Plans.CountingRule.AveragePlace) return null;
        var found = PanelPower.SmallestPreference(electorate.Wheels.Length, (int)voices, seed.Child("reach"), panels: panels);
        return new(found.Stands ? found.Value : null, panels);
    }

    private static ImmutableArray<double?> Places(VoterRecord voter, Dictionary<string, int> ids)
    {
        var places = new double?[ids.Count];
        foreach (var (id, place) in MidPlaces.Of(voter.Places.Add(voter.Below), ids.ContainsKey)) places[ids[id]] = place;
        return [.. places];
    }

    private static ImmutableArray<string> Best(Electorate electorate, ImmutableArray<ImmutableArray<double?>> values, int sign)
    {
        var means = electorate.Wheels.Select((wheel, i) => (wheel.Id, Mean: values.Select(row => row[i]).OfType<double>().DefaultIfEmpty(double.NaN).Average() * sign)).Where(pair => !double.IsNaN(pair.Mean)).ToList();
        return means.Count == 0 ? [] : [.. means.Where(pair => pair.Mean >= means.Max(other => other.Mean) - Alike).Select(pair => pair.Id)];
    }
}
