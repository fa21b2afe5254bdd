using System.Collections.Immutable;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.Counting;

/// <summary>What the ballots say about one item when simply counted.</summary>
/// <param name="Firsts">Ballots that place it first, alone or shared; a ballot that ties everything has neither firsts nor lasts.</param>
/// <param name="FirstsShared">Of these, how many share the first place.</param>
/// <param name="FirstShare">Firsts with 1/m for a first place shared by m; all-tied ballots included, as the rule of firsts counts them.</param>
/// <param name="Lasts">Ballots that place it last, alone or shared.</param>
/// <param name="LastsShared">Of these, how many share the last place.</param>
/// <param name="Served">Ballots that served it.</param>
/// <param name="RankSum">Sum of mid-places over these ballots.</param>
/// <param name="AveragePlace">RankSum/Served, null where never served. On partial ballots see <see cref="Standing"/> for the adjusted one.</param>
/// <param name="PlacePoints">Place points by the weights asked for.</param>
public sealed record ItemTally(
    long Firsts, long FirstsShared, double FirstShare, long Lasts, long LastsShared, long Served, double RankSum, double? AveragePlace, double PlacePoints);

/// <summary>The counts of a set of ballots.</summary>
/// <param name="Items">One line per item.</param>
/// <param name="HeadToHead">Who was placed above whom.</param>
/// <param name="Ballots">Ballots that served two items or more.</param>
/// <param name="WithTies">Of these, how many tie two items.</param>
public sealed record Tally(ImmutableArray<ItemTally> Items, HeadToHead HeadToHead, long Ballots, long WithTies)
{
    /// <summary>Counts ballots. Ballots that served fewer than two items are left out.</summary>
    /// <param name="set">The ballots.</param>
    /// <param name="placeWeights">Weights of the place points, one per place; k-1, ..., 0 if null.</param>
    public static Tally Of(RankingSet set, ImmutableArray<int>? placeWeights = null)
    {
        ArgumentNullException.ThrowIfNull(set);
        var k = set.Items;
        var comparing = set.Where(row => row.Ranking.Served.Length >= 2);
        var points = Standing.Of(ScoreSet.FromRankings(comparing, placeWeights is { } weights ? CountingRule.PlacePoints(weights) : CountingRule.Borda(k))).Totals;
        var firstShares = Standing.Of(ScoreSet.FromRankings(comparing, CountingRule.Firsts)).Totals;
        long[] firsts = new long[k], firstsShared = new long[k], lasts = new long[k], lastsShared = new long[k], served = new long[k], sums = new long[k];
        foreach (var (ranking, count, _) in comparing.Rows)
        {
            var doubled = ranking.DoubledMidranks();
            foreach (var item in ranking.Served)
            {
                served[item] += count;
                sums[item] += count * doubled[item];
            }

            if (ranking.IsAllTied) continue;
            var first = ranking.Groups[0];
            var last = ranking.Below.IsEmpty ? ranking.Groups[^1] : ranking.Below;
            foreach (var item in first)
            {
                firsts[item] += count;
                if (first.Length > 1) firstsShared[item] += count;
            }

            foreach (var item in last)
            {
                lasts[item] += count;
                if (last.Length > 1) lastsShared[item] += count;
            }
        }

        return new Tally(
            [.. Enumerable.Range(0, k).Select(i => new ItemTally(
                firsts[i], firstsShared[i], firstShares[i], lasts[i], lastsShared[i], served[i], sums[i] / 2.0,
                served[i] == 0 ? null : sums[i] / 2.0 / served[i], points[i]))],
            HeadToHead.Of(comparing), comparing.Ballots, comparing.Rows.Where(row => row.Ranking.HasTies).Sum(row => row.Count));
    }
}
