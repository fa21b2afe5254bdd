using System.Collections.Immutable;

namespace Trier.Statistics.RankTests;

/// <summary>
/// Complete ballots as small whole numbers. Each voice's score vector is shifted to start at 0 and all are divided by their common
/// divisor; neither changes which shuffles reach the observed statistic, which for complete ballots rises with the sum of
/// squared column totals.
/// </summary>
internal sealed class WholeBallots
{
    private WholeBallots(int items, ImmutableArray<(int[] Sorted, long Count)> patterns, long[] totals, long unit)
    {
        Items = items;
        Patterns = patterns;
        Totals = totals;
        Unit = unit;
        foreach (var (sorted, count) in patterns)
        {
            Range += sorted[^1] * count;
            Voices += count;
        }

        foreach (var total in totals) SumOfSquares += (Int128)total * total;
    }

    public int Items { get; }

    /// <summary>Score multisets in rising order, each with how many voices have it; voices that tie everything are left out.</summary>
    public ImmutableArray<(int[] Sorted, long Count)> Patterns { get; }

    /// <summary>The observed column totals.</summary>
    public long[] Totals { get; }

    /// <summary>One unit here is this many of the table's whole scores.</summary>
    public long Unit { get; }

    /// <summary>The largest total an item can reach.</summary>
    public long Range { get; }

    public long Voices { get; }

    public Int128 SumOfSquares { get; }

    public static WholeBallots Of(VoiceTable table)
    {
        var unit = 0L;
        foreach (var voice in table.Voices)
        {
            for (var i = 1; i < table.Items; i++) unit = Gcd.Of(unit, voice.Whole[i] - voice.Whole[0]);
        }

        unit = Math.Max(unit, 1);
        var totals = new long[table.Items];
        var counts = new SortedDictionary<int[], long>(Comparer<int[]>.Create((a, b) => a.AsSpan().SequenceCompareTo(b)));
        foreach (var voice in table.Voices)
        {
            var low = voice.Whole.Min();
            var vector = voice.Whole.Select(score => checked((int)((score - low) / unit))).ToArray();
            if (vector.Max() == 0) continue;
            for (var i = 0; i < vector.Length; i++) totals[i] += vector[i] * voice.Count;
            Array.Sort(vector);
            counts[vector] = counts.GetValueOrDefault(vector) + voice.Count;
        }

        return new WholeBallots(table.Items, [.. counts.Select(pair => (pair.Key, pair.Value))], totals, unit);
    }
}

/// <summary>The different orders of a multiset.</summary>
internal static class Arrangements
{
    /// <summary>How many there are: k! over the factorials of the repeats.</summary>
    public static double Count(ReadOnlySpan<int> sorted)
    {
        var count = 1.0;
        var run = 0;
        for (var i = 0; i < sorted.Length; i++)
        {
            run = i > 0 && sorted[i] == sorted[i - 1] ? run + 1 : 1;
            count = count * (i + 1) / run;
        }

        return Math.Round(count);
    }

    /// <summary>All of them in lexicographic order, one after another.</summary>
    public static int[] All(ReadOnlySpan<int> sorted)
    {
        var k = sorted.Length;
        var result = new int[checked((int)Count(sorted) * k)];
        var current = sorted.ToArray();
        for (var start = 0; ; start += k)
        {
            current.CopyTo(result, start);
            var i = k - 2;
            while (i >= 0 && current[i] >= current[i + 1]) i--;
            if (i < 0) return result;
            var j = k - 1;
            while (current[j] <= current[i]) j--;
            (current[i], current[j]) = (current[j], current[i]);
            Array.Reverse(current, i + 1, k - i - 1);
        }
    }
}
