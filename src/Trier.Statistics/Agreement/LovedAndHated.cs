using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;

namespace Trier.Statistics.Agreement;

/// <summary>Whether some item is loved and hated more than luck makes it.</summary>
/// <param name="Measure">B = max over items of min(firsts, lasts), shared places split.</param>
/// <param name="Items">The items that reach it; none where B is 0.</param>
/// <param name="P">The chance of B or more when every ballot is shuffled.</param>
/// <param name="Marked">True where p is at most 0.05.</param>
public sealed record LovedAndHatedResult(double Measure, ImmutableArray<int> Items, PValue P, bool Marked);

/// <summary>
/// Loved and hated: B = max over items of min(firsts, lasts), a place shared by m counting 1/m, held against the shuffling of every ballot
/// within itself (joined voices with one shuffle over the items all their ballots served). A badge at "a quarter first and a quarter last" appears by luck in 62 % of
/// panels of 12 by 5. Source: the measure is this project's own.
/// </summary>
public static class LovedAndHated
{
    private const double Slack = 1e-9;

    /// <summary>Tests the ballots.</summary>
    /// <param name="set">Ballots over at least 2 items; those that tie everything or served fewer than two are left out.</param>
    /// <param name="seed">Where chance comes from.</param>
    /// <param name="effort">How many draws; <see cref="Effort.Usual"/> if null.</param>
    /// <returns>Refused where no ballot orders two items.</returns>
    public static Answer<LovedAndHatedResult> Test(RankingSet set, Seed seed, Effort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(set);
        effort ??= Effort.Usual;
        var voices = Voices(set);
        if (voices.Count == 0) return new Refusal(RefusalKind.NoInformation, "No ballot places one item above another.");
        var k = set.Items;
        var firsts = new double[k];
        var lasts = new double[k];
        foreach (var voice in voices) voice.Add(voice.Common, firsts, lasts);
        var measure = Measure(firsts, lasts);
        ImmutableArray<int> items = measure <= 0 ? [] : [.. Enumerable.Range(0, k).Where(i => Math.Min(firsts[i], lasts[i]) >= measure - Slack)];
        var hits = DrawParts.Run(effort.Draws, seed.Child("loved and hated"), (draws, generator) =>
        {
            var first = new double[k];
            var last = new double[k];
            var order = new int[k];
            var reached = 0L;
            for (var draw = 0; draw < draws; draw++)
            {
                Array.Clear(first);
                Array.Clear(last);
                foreach (var voice in voices)
                {
                    voice.Common.CopyTo(order, 0);
                    var names = order.AsSpan(0, voice.Common.Length);
                    generator.Shuffle(names);
                    voice.Add(names, first, last);
                }

                if (Measure(first, last) >= measure - Slack) reached++;
            }

            return new Hits(reached, 0);
        });
        var p = PValue.Drawn(hits.Statistic, effort.Draws);
        return new LovedAndHatedResult(measure, items, p, measure > 0 && p.Value <= 0.05);
    }

    private static double Measure(double[] firsts, double[] lasts)
    {
        var best = 0.0;
        for (var i = 0; i < firsts.Length; i++) best = Math.Max(best, Math.Min(firsts[i], lasts[i]));
        return best;
    }

    private static List<Ends> Voices(RankingSet set)
    {
        var voices = new List<Ends>();
        var joined = new Dictionary<int, int>();
        foreach (var (ranking, count, voice) in set.Rows)
        {
            if (ranking.IsAllTied) continue;
            var ends = Ends.Of(ranking);
            if (voice is { } name && joined.TryGetValue(name, out var at))
            {
                voices[at] = voices[at].With(ends);
                continue;
            }

            if (voice is { } fresh) joined.Add(fresh, voices.Count);
            for (var copy = 0L; copy < count; copy++) voices.Add(ends);
        }

        return voices;
    }

    private sealed record Ends(double[] First, double[] Last, int[] Common)
    {
        public static Ends Of(Ranking ranking)
        {
            var first = new double[ranking.Items];
            var last = new double[ranking.Items];
            var bottom = ranking.Below.IsEmpty ? ranking.Groups[^1] : ranking.Below;
            foreach (var item in ranking.Groups[0]) first[item] = 1.0 / ranking.Groups[0].Length;
            foreach (var item in bottom) last[item] = 1.0 / bottom.Length;
            return new Ends(first, last, [.. ranking.Served]);
        }

        public Ends With(Ends other) => new(
            [.. First.Zip(other.First, (a, b) => a + b)], [.. Last.Zip(other.Last, (a, b) => a + b)], [.. Common.Intersect(other.Common).Order()]);

        public void Add(ReadOnlySpan<int> names, double[] first, double[] last)
        {
            for (var i = 0; i < First.Length; i++)
            {
                first[i] += First[i];
                last[i] += Last[i];
            }

            for (var i = 0; i < names.Length; i++)
            {
                first[Common[i]] += First[names[i]] - First[Common[i]];
                last[Common[i]] += Last[names[i]] - Last[Common[i]];
            }
        }
    }
}
