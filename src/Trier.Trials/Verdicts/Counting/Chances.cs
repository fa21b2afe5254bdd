using System.Collections.Immutable;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>Each wheel's chance of being the crowd's favourite.</summary>
internal static class Chances
{
    public static ChanceFinding? Of(Electorate electorate, ImmutableArray<SampleRecord> wheels, CampsFinding? camps, Seed seed, JudgingEffort effort)
    {
        if (wheels.Length < 2) return null;
        if (Posterior(electorate, electorate.Headline, seed.Child("chances"), effort) is not { } joint) return null;
        ImmutableArray<CampChances> inCamps = camps is { Parted: true }
            ? [.. new[] { DeclaredTaste.Milder, DeclaredTaste.Stronger }.Select(taste => InCamp(electorate, wheels, taste, seed, effort)).OfType<CampChances>()]
            : [];
        // One camp alone would leave the other without its bet.
        if (inCamps.Length < 2) inCamps = [];
        return new(BayesianPlackettLuce.UsualScale, Lines(electorate, wheels, joint), joint.EffectiveSize, joint.RHat, inCamps);
    }

    private static CampChances? InCamp(Electorate electorate, ImmutableArray<SampleRecord> wheels, DeclaredTaste taste, Seed seed, JudgingEffort effort)
    {
        // As in the test of the camps: friends who compared notes and said different things are in neither.
        var divided = electorate.OneByOne(electorate.Headline).Voters.Where(voter => voter.Voice is not null).GroupBy(voter => voter.Voice!.Value).Where(voice => voice.Select(voter => voter.Taste).Distinct().Count() > 1).Select(voice => voice.Key).ToHashSet();
        var count = electorate.Headline with { Who = voter => electorate.CountsByPlan(voter) && voter.Taste == taste && !(voter.Voice is { } joined && divided.Contains(joined)) };
        return Posterior(electorate, count, seed.Child("chances").Child(taste.ToString()), effort) is { Mixed: true } posterior
            ? new(taste, electorate.Ballots(count).Voices, Lines(electorate, wheels, posterior))
            : null;
    }

    private static WorthPosterior? Posterior(Electorate electorate, Count count, Seed seed, JudgingEffort effort)
    {
        var ballots = electorate.Ballots(count);
        if (ballots.Rows.IsEmpty || Work(ballots, effort.Chances) > effort.MostChanceWork) return null;
        var sampled = BayesianPlackettLuce.Sample(ballots, seed, effort: effort.Chances);
        return sampled.Stands ? sampled.Value : null;
    }

    // A tied group is summed over its subsets; a step of a chain asks for the likelihood about six times.
    private static double Work(RankingSet ballots, SamplingEffort effort)
    {
        var once = ballots.Rows.Sum(row => row.Ranking.Groups.SkipLast(row.Ranking.Below.IsEmpty ? 1 : 0).Sum(group => group.Length == 1 ? 4.0 : 2.0 * group.Length * Math.Pow(2, group.Length)));
        return once * 6 * effort.Chains * (effort.Discarded + effort.Kept);
    }

    private static ImmutableArray<WheelChance> Lines(Electorate electorate, ImmutableArray<SampleRecord> wheels, WorthPosterior posterior) =>
        [.. wheels.Select(wheel =>
        {
            var i = electorate.OwnColumns[wheel.Id];
            var chance = posterior.ChanceFavourite[i];
            return new WheelChance(wheel.Id, chance, Math.Sqrt(chance * (1 - chance) / posterior.EffectiveSize), posterior.FavouriteShare[i], posterior.LogWorthIntervals[i]);
        })];
}
