using System.Collections.Immutable;
using Trier.Statistics.Counting;
using Trier.Statistics.Rankings;
using Planned = Trier.Trials.Plans.CountingRule;
using Rule = Trier.Statistics.Counting.CountingRule;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>Turns ballots into scores by a rule of the plan.</summary>
internal static class Rules
{
    public static ScoreSet Score(Electorate electorate, Count count, Planned rule) => Score(electorate, count, rule, () => electorate.Ballots(count));

    /// <summary>The same with every ballot in a row of its own.</summary>
    public static ScoreSet ScoreOneByOne(Electorate electorate, Count count, Planned rule) => Score(electorate, count, rule, () => electorate.OneByOne(count).Set);

    private static ScoreSet Score(Electorate electorate, Count count, Planned rule, Func<RankingSet> ballots) => rule switch
    {
        Planned.MeanLiking when !electorate.Wheels.IsEmpty => Likings(electorate, count),
        Planned.Firsts => ScoreSet.FromRankings(ballots(), Rule.Firsts),
        Planned.PlacePoints points => ScoreSet.FromRankings(ballots(), Rule.PlacePoints(WholeWeights(points.Weights, Math.Max(1, electorate.Wheels.Length)))),
        _ => ScoreSet.FromRankings(ballots(), Rule.AveragePlace),
    };

    /// <summary>Weights of the place points to show: the planned ones, or k-1 down to 0.</summary>
    public static ImmutableArray<decimal> Weights(Planned rule, int wheels) =>
        rule is Planned.PlacePoints points
            ? [.. Enumerable.Range(0, wheels).Select(i => WeightAt(points.Weights, i))]
            : [.. Enumerable.Range(0, wheels).Select(i => (decimal)(wheels - 1 - i))];

    /// <summary>The weights as whole numbers in the same ratios, a million at most; a withdrawn wheel takes the last weights away with it.</summary>
    public static ImmutableArray<int> WholeWeights(ImmutableArray<decimal> weights, int wheels)
    {
        var scale = Scale(weights);
        return [.. Enumerable.Range(0, wheels).Select(i => (int)(WeightAt(weights, i) * scale))];
    }

    /// <summary>By how much <see cref="WholeWeights"/> are larger than the weights.</summary>
    public static int Scale(ImmutableArray<decimal> weights)
    {
        var scale = 1;
        while (scale < 1000 && weights.Any(w => w * scale != decimal.Truncate(w * scale))) scale *= 10;
        return scale;
    }

    private static decimal WeightAt(ImmutableArray<decimal> weights, int place) =>
        place < weights.Length ? weights[place] : weights.IsEmpty ? 0 : Math.Min(0, weights[^1]);

    private static ScoreSet Likings(Electorate electorate, Count count)
    {
        var ids = (count.Columns ?? electorate.OwnColumns).OrderBy(c => c.Value).Select(c => c.Key).ToList();
        var rows = electorate.Voters
            .Where(count.Who)
            .Select(v => (Ratings: ids.Select(id => count.WithoutNamed && v.Named.Contains(id) ? null : (double?)v.Answers.GetValueOrDefault(id)?.Liking).ToImmutableArray(), Voice: count.Joined ? v.Voice : null))
            .Where(r => !count.CompleteOnly || r.Ratings.All(x => x is not null));
        return ScoreSet.FromRatings(electorate.Wheels.Length, rows);
    }
}
