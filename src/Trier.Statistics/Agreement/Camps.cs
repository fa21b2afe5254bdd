using System.Collections.Immutable;
using Trier.Statistics.Counting;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;

namespace Trier.Statistics.Agreement;

/// <summary>One item seen by the two camps.</summary>
/// <param name="Item">The item.</param>
/// <param name="FirstCamp">Mean place in camp 0 (scaled to k items on partial ballots); null where nobody in it was served the item.</param>
/// <param name="SecondCamp">The same in camp 1.</param>
/// <param name="P">The chance of a difference at least as large when labels are dealt at random.</param>
/// <param name="Shown">True where the camps are parted and the item stands by Holm's steps at 0.05.</param>
public sealed record CampItem(int Item, double? FirstCamp, double? SecondCamp, double P, bool Shown);

/// <summary>Whether two camps, declared beforehand, placed the items differently.</summary>
/// <param name="Statistic">T = sum over items of the squared difference of camp means.</param>
/// <param name="P">The chance of T or more when the labels are dealt at random over the voices.</param>
/// <param name="Ways">In how many ways the labels can be dealt.</param>
/// <param name="FirstVoices">Voices in camp 0.</param>
/// <param name="SecondVoices">Voices in camp 1.</param>
/// <param name="Parted">True where p is at most 0.01.</param>
/// <param name="Items">Per item the means and its own p.</param>
public sealed record CampsResult(
    double Statistic, PValue P, double Ways, int FirstVoices, int SecondVoices, bool Parted, ImmutableArray<CampItem> Items);

/// <summary>
/// Camps by a label declared before tasting: T = sum over items of (difference of camp mean places)^2, labels shuffled over voices, exact up to
/// 200,000 ways. Items are named by Holm's steps at 0.05. Sources: permutation of labels [Pitman1937]; steps [Holm1979].
/// </summary>
public static class Camps
{
    private const int SmallestCamp = 3;
    private const int FewestWays = 100;
    private const double MostWays = 200_000;
    private const double Slack = 1e-9;

    /// <summary>Tests the labels.</summary>
    /// <param name="set">Ballots over at least 2 items.</param>
    /// <param name="labels">Per row 0, 1, or null for no idea (left out). A joined voice whose members differ is left out.</param>
    /// <param name="seed">Where chance comes from, if labels must be drawn.</param>
    /// <param name="effort">How many draws; <see cref="Effort.Usual"/> if null.</param>
    /// <returns>Refused where a camp has fewer than 3 voices or there are fewer than 100 ways to deal the labels.</returns>
    /// <exception cref="ArgumentException">There is not one label per row, or a label is neither 0 nor 1.</exception>
    public static Answer<CampsResult> Test(RankingSet set, ImmutableArray<int?> labels, Seed seed, Effort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(set);
        effort ??= Effort.Usual;
        if (labels.Length != set.Rows.Length) throw new ArgumentException($"There are {labels.Length} labels for {set.Rows.Length} rows.", nameof(labels));
        if (labels.Any(label => label is not (null or 0 or 1))) throw new ArgumentException("A label is neither 0 nor 1.", nameof(labels));
        var (places, camps) = Voices(set, labels);
        var second = camps.Count(camp => camp == 1);
        var first = camps.Count - second;
        var ways = Binomials.ChooseReal(camps.Count, second);
        if (Math.Min(first, second) < SmallestCamp || ways < FewestWays)
            return new Refusal(RefusalKind.TooFewBallots, $"The camps have {first} and {second} voices: at least {SmallestCamp} each and {FewestWays} ways to deal the labels are needed.");
        var k = set.Items;
        var observed = Differences(places, [.. camps], k);
        var statistic = observed.Sum(d => d * d);
        var hits = new long[k + 1];
        long all;
        var exact = ways <= MostWays && effort.ExactWork > 0;
        if (exact)
        {
            all = 0;
            foreach (var deal in Deals(camps.Count, second))
            {
                Count(Differences(places, deal, k), observed, statistic, hits);
                all++;
            }
        }
        else
        {
            all = effort.Draws;
            var generator = seed.Child("camps").Generator();
            var deal = camps.ToArray();
            for (var draw = 0; draw < effort.Draws; draw++)
            {
                generator.Shuffle<int>(deal);
                Count(Differences(places, deal, k), observed, statistic, hits);
            }
        }

        var p = exact ? PValue.Exact((double)hits[k] / all) : PValue.Drawn(hits[k], all);
        var parted = p.Value <= 0.01;
        double ItemP(int item) => exact ? (double)hits[item] / all : PValue.Drawn(hits[item], all).Value;
        var shown = Holm([.. Enumerable.Range(0, k).Select(ItemP)]);
        return new CampsResult(statistic, p, ways, first, second, parted, [.. Enumerable.Range(0, k).Select(item => new CampItem(
            item, Mean(places, camps, item, 0, k), Mean(places, camps, item, 1, k), ItemP(item), parted && shown[item]))]);
    }

    private static bool[] Holm(double[] p)
    {
        var shown = new bool[p.Length];
        var left = p.Length;
        foreach (var item in Enumerable.Range(0, p.Length).OrderBy(i => p[i]))
        {
            if (p[item] > 0.05 / left--) break;
            shown[item] = true;
        }

        return shown;
    }

    private static double? Mean(List<double?[]> places, List<int> camps, int item, int camp, int items)
    {
        var own = places.Where((place, voice) => camps[voice] == camp && place[item].HasValue).Select(place => place[item]!.Value).ToArray();
        return own.Length == 0 ? null : own.Average() + ((items + 1) / 2.0);
    }

    private static void Count(double[] now, double[] observed, double statistic, long[] hits)
    {
        var total = 0.0;
        for (var i = 0; i < now.Length; i++)
        {
            total += now[i] * now[i];
            if (Math.Abs(now[i]) >= Math.Abs(observed[i]) - Slack) hits[i]++;
        }

        if (total >= statistic - Slack) hits[now.Length]++;
    }

    private static double[] Differences(List<double?[]> places, int[] camps, int items)
    {
        var differences = new double[items];
        for (var item = 0; item < items; item++)
        {
            double firstSum = 0, secondSum = 0;
            int first = 0, second = 0;
            for (var voice = 0; voice < camps.Length; voice++)
            {
                if (places[voice][item] is not { } place) continue;
                if (camps[voice] == 0) (firstSum, first) = (firstSum + place, first + 1);
                else (secondSum, second) = (secondSum + place, second + 1);
            }

            if (first > 0 && second > 0) differences[item] = (firstSum / first) - (secondSum / second);
        }

        return differences;
    }

    private static IEnumerable<int[]> Deals(int voices, int second)
    {
        var chosen = Enumerable.Range(0, second).ToArray();
        var deal = new int[voices];
        while (true)
        {
            Array.Clear(deal);
            foreach (var voice in chosen) deal[voice] = 1;
            yield return deal;
            var i = second - 1;
            while (i >= 0 && chosen[i] == voices - second + i) i--;
            if (i < 0) yield break;
            chosen[i]++;
            for (var j = i + 1; j < second; j++) chosen[j] = chosen[j - 1] + 1;
        }
    }

    /// <summary>Per voice the mean centred place of its ballots, scaled by (k+1)/(m+1), and its camp.</summary>
    private static (List<double?[]> Places, List<int> Camps) Voices(RankingSet set, ImmutableArray<int?> labels)
    {
        var k = set.Items;
        var places = new List<double?[]>();
        var camps = new List<int>();
        var groups = Enumerable.Range(0, set.Rows.Length).GroupBy(row => set.Rows[row].Voice is { } voice ? (long)voice : long.MaxValue - row);
        foreach (var group in groups)
        {
            var rows = group.Where(row => set.Rows[row].Ranking.Served.Length >= 2).ToArray();
            if (rows.Length == 0 || rows.Any(row => labels[row] is null || labels[row] != labels[rows[0]])) continue;
            var mean = new double?[k];
            for (var item = 0; item < k; item++)
            {
                var own = rows.Where(row => set.Rows[row].Ranking.IsServed(item)).Select(row => Centred(set.Rows[row].Ranking, item)).ToArray();
                mean[item] = own.Length == 0 ? null : own.Average();
            }

            for (var copy = 0L; copy < set.Rows[rows[0]].Count; copy++)
            {
                places.Add(mean);
                camps.Add(labels[rows[0]]!.Value);
            }
        }

        return (places, camps);
    }

    private static double Centred(Ranking ranking, int item)
    {
        var m = ranking.Served.Length;
        return (ranking.DoubledMidranks()[item] - (m + 1)) / 2.0 * (ranking.Items + 1) / (m + 1);
    }
}
