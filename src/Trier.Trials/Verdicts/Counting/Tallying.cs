using System.Collections.Immutable;
using Trier.Statistics.Counting;
using Trier.Trials.Verdicts.Findings;
using Planned = Trier.Trials.Plans.CountingRule;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>The counts as makers know them.</summary>
internal static class Tallying
{
    public static ImmutableArray<TallyLine> Lines(Electorate electorate, ImmutableArray<SampleRecord> wheels, Count count)
    {
        var rule = electorate.Record.Plan.Rule;
        var weights = Rules.Weights(rule, electorate.Wheels.Length);
        var scale = Rules.Scale(weights);
        var ballots = electorate.Ballots(count);
        var tally = Tally.Of(ballots, Rules.WholeWeights(weights, Math.Max(1, electorate.Wheels.Length)));
        var standing = Standing.Of(Rules.Score(electorate, count, Planned.Default));
        return [.. wheels.Select(wheel =>
        {
            var i = electorate.OwnColumns[wheel.Id];
            var item = tally.Items[i];
            var likings = electorate.Voters.Where(count.Who).Select(v => v.Answers.GetValueOrDefault(wheel.Id)?.Liking).OfType<int>().ToList();
            return new TallyLine(
                wheel.Id,
                item.Firsts,
                item.FirstsShared,
                item.Lasts,
                item.LastsShared,
                item.Served,
                item.RankSum,
                standing.Averages[i],
                item.PlacePoints / scale,
                weights,
                likings.Count == 0 ? null : likings.Average(),
                likings.Count);
        })];
    }

    public static ImmutableArray<HeadToHeadFinding> HeadToHead(Electorate electorate, ImmutableArray<SampleRecord> wheels)
    {
        var table = Trier.Statistics.Counting.HeadToHead.Of(electorate.Ballots(electorate.Headline));
        return
        [
            .. from one in wheels
               from other in wheels
               where one.Id != other.Id
               let i = electorate.OwnColumns[one.Id]
               let j = electorate.OwnColumns[other.Id]
               select new HeadToHeadFinding(one.Id, other.Id, table.Above(i, j), table.Ties(i, j), table.Above(j, i)),
        ];
    }

    public static KemenyFinding? Kemeny(Electorate electorate)
    {
        var ballots = electorate.Ballots(electorate.Headline);
        if (ballots.Rows.IsEmpty) return null;
        var found = Trier.Statistics.Counting.Kemeny.Optima(ballots);
        if (!found.Stands) return null;
        return new(
            found.Value.Distance,
            found.Value.Agreement,
            found.Value.Optima,
            [.. found.Value.Orders.Select(o => o.Select(i => electorate.Wheels[i].Id).ToImmutableArray())]);
    }

    public static ImmutableArray<PlaceLine> Places(Electorate electorate, ImmutableArray<SampleRecord> wheels)
    {
        var complete = Standing.Of(Rules.Score(electorate, new Count(electorate.CountsByPlan, CompleteOnly: true), Planned.Default));
        var all = Standing.Of(Rules.Score(electorate, new Count(electorate.CountsByPlan, CompleteOnly: false), Planned.Default));
        return [.. wheels.Select(w => (w.Id, Column: electorate.OwnColumns[w.Id]))
            .Select(w => new PlaceLine(w.Id, complete.Adjusted ? null : complete.Averages[w.Column], all.IsConnected ? all.Averages[w.Column] : null))];
    }
}
