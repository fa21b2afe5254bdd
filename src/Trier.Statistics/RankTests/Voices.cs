using System.Collections.Immutable;
using Trier.Statistics.Counting;

namespace Trier.Statistics.RankTests;

/// <summary>
/// What one voice contributes to the test: the sum of its ballots' centred, weighted scores, and the items whose names are shuffled,
/// which are those that all its ballots served.
/// </summary>
/// <param name="Weighted">Per item sum of w d, 0 where not served.</param>
/// <param name="Adjusted">Per item sum of c, the scores as the adjusted average takes them.</param>
/// <param name="Whole">Per item the sum of whole scores.</param>
/// <param name="Common">Items all its ballots served, rising.</param>
/// <param name="Count">How many voices are exactly like this one.</param>
internal sealed record Voice(double[] Weighted, double[] Adjusted, long[] Whole, int[] Common, long Count);

/// <summary>A score set gathered by voice, with the covariance of the shuffled sums and the normal matrix of adjusted averages.</summary>
internal sealed class VoiceTable
{
    private VoiceTable(int items, ImmutableArray<Voice> voices, Laplacian covariance, Laplacian normal, bool complete)
    {
        Items = items;
        Voices = voices;
        Covariance = covariance;
        Normal = normal;
        IsComplete = complete;
    }

    public int Items { get; }

    public ImmutableArray<Voice> Voices { get; }

    /// <summary>V = sum of w^2 v (I - J/m).</summary>
    public Laplacian Covariance { get; }

    /// <summary>Sum of (I - J/m).</summary>
    public Laplacian Normal { get; }

    /// <summary>True where every ballot served every item, so that all shuffles are alike and whole scores suffice.</summary>
    public bool IsComplete { get; }

    public long Count => Voices.Sum(voice => voice.Count);

    public static VoiceTable Of(ScoreSet set)
    {
        var k = set.Items;
        var covariance = new Laplacian(k);
        var normal = new Laplacian(k);
        var lengths = set.Rows.Select(row => row.Scores.Count(score => score.HasValue)).Distinct().ToArray();
        var alike = lengths.Length <= 1;
        var voices = ImmutableArray.CreateBuilder<Voice>();
        var joined = new Dictionary<int, int>();
        foreach (var row in set.Rows)
        {
            var served = Served(row);
            var m = served.Length;
            var weight = alike ? 1 : Math.Sqrt(12.0 / (m + 1));
            var stretch = set.IsPlaces ? (k + 1.0) / (m + 1) : 1;
            var mean = served.Sum(i => (double)row.Scores[i]!.Value) / m;
            var weighted = new double[k];
            var adjusted = new double[k];
            var whole = new long[k];
            var squares = 0.0;
            foreach (var i in served)
            {
                var d = (row.Scores[i]!.Value - mean) / set.Denominator;
                squares += d * d;
                weighted[i] = weight * d;
                adjusted[i] = stretch * d;
                whole[i] = row.Scores[i]!.Value;
            }

            if (squares > 0) covariance.Add(served, row.Count * weight * weight * squares / (m - 1));
            normal.Add(served, row.Count);
            var voice = new Voice(weighted, adjusted, whole, served, row.Count);
            if (row.Voice is { } name && joined.TryGetValue(name, out var earlier))
            {
                voices[earlier] = Join(voices[earlier], voice);
                continue;
            }

            if (row.Voice is { } fresh) joined.Add(fresh, voices.Count);
            voices.Add(voice);
        }

        return new VoiceTable(k, voices.DrainToImmutable(), covariance, normal, lengths.All(m => m == k));
    }

    private static int[] Served(ScoreRow row) => [.. Enumerable.Range(0, row.Scores.Length).Where(i => row.Scores[i].HasValue)];

    private static Voice Join(Voice a, Voice b)
    {
        var k = a.Weighted.Length;
        return new Voice(
            [.. Enumerable.Range(0, k).Select(i => a.Weighted[i] + b.Weighted[i])],
            [.. Enumerable.Range(0, k).Select(i => a.Adjusted[i] + b.Adjusted[i])],
            [.. Enumerable.Range(0, k).Select(i => a.Whole[i] + b.Whole[i])],
            [.. a.Common.Intersect(b.Common).Order()],
            1);
    }
}
