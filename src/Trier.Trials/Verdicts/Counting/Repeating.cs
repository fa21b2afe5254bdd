using System.Collections.Immutable;
using Trier.Statistics.Agreement;
using Trier.Statistics.Counting;
using Trier.Statistics.RankTests;
using Trier.Trials.Verdicts.Findings;
using Planned = Trier.Trials.Plans.CountingRule;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>The yardsticks: one cheese served twice, two wheels of one recipe.</summary>
internal static class Repeating
{
    /// <summary>Above this many ballots the exact count of distances costs more than it says.</summary>
    private const int MostBallots = 1_000;

    public static ImmutableArray<RepeatFinding> Of(Electorate electorate) =>
        [.. electorate.Repeats.Where(r => electorate.OwnColumns.ContainsKey(r.RepeatOf!)).Select(r => One(electorate, r)).OfType<RepeatFinding>()];

    public static ImmutableArray<SameRecipeFinding> SameRecipe(Electorate electorate, Judged judged)
    {
        var wheels = electorate.Wheels.Where(w => w.Facts.Recipe is not null).ToList();
        if (judged.Gate is null || wheels.Count == 0) return [];
        var scores = Rules.Score(electorate, electorate.Headline, Planned.Default);
        var places = Standing.Of(scores).Averages;
        return
        [
            .. Pairs.Compare(scores, 1)
                .Where(p => electorate.Wheels[p.Better].Facts.Recipe is { } recipe && string.Equals(recipe, electorate.Wheels[p.Worse].Facts.Recipe, StringComparison.OrdinalIgnoreCase))
                .Select(p => (Pair: p, Gap: (places[p.Worse] ?? 0) - (places[p.Better] ?? 0)))
                .Select(x => new SameRecipeFinding(
                    electorate.Wheels[x.Pair.Better].Facts.Recipe!,
                    electorate.Wheels[x.Gap >= 0 ? x.Pair.Better : x.Pair.Worse].Id,
                    electorate.Wheels[x.Gap >= 0 ? x.Pair.Worse : x.Pair.Better].Id,
                    Math.Abs(x.Gap),
                    x.Gap < 0 && x.Pair.GapInterval is { } interval ? new(-interval.High, -interval.Low, interval.Level) : x.Pair.GapInterval,
                    electorate.Wheels[x.Pair.Better].Facts.SameMake(electorate.Wheels[x.Pair.Worse].Facts)))
                .OrderBy(f => f.Recipe, StringComparer.Ordinal)
                .ThenBy(f => f.Better, StringComparer.Ordinal)
                .ThenBy(f => f.Worse, StringComparer.Ordinal),
        ];
    }

    private static RepeatFinding? One(Electorate electorate, SampleRecord check)
    {
        var columns = Electorate.Columns(electorate.Ids.Append(check.Id));
        var voters = electorate.Voters.Where(electorate.CountsByPlan).ToList();
        var rankings = voters
            .Select(v => Electorate.RankingOf(v, columns))
            .OfType<Trier.Statistics.Rankings.Ranking>()
            .Where(r => r.Served.Length >= 2)
            .ToList();
        if (rankings.Count is 0 or > MostBallots) return null;
        var found = HiddenRepeat.Compare(Trier.Statistics.Rankings.RankingSet.Create(rankings), columns[check.RepeatOf!], columns[check.Id]);
        if (!found.Stands) return null;
        var repeat = found.Value;
        var gaps = voters
            .Select(v => (One: v.Answers.GetValueOrDefault(check.RepeatOf!)?.Liking, Other: v.Answers.GetValueOrDefault(check.Id)?.Liking))
            .Where(l => l is { One: not null, Other: not null })
            .Select(l => Math.Abs(l.One!.Value - l.Other!.Value))
            .ToList();
        return new(
            check.Id,
            check.RepeatOf!,
            repeat.Ballots,
            repeat.SumOfDistances,
            repeat.SumOfDistances / repeat.Ballots,
            repeat.ExpectedSum / repeat.Ballots,
            repeat.P,
            repeat.Adjacent,
            repeat.ExpectedAdjacent,
            repeat.AdjacentP,
            repeat.Yardstick,
            gaps.Count == 0 ? null : gaps.Average());
    }
}
