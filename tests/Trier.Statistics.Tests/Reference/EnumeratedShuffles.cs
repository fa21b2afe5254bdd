using Trier.Statistics.Rankings;

namespace Trier.Statistics.Tests.Reference;

/// <summary>
/// The slow, obvious second implementation of the gate on complete ballots: every order of every voice is tried. A few hundred thousand
/// combinations at most.
/// </summary>
internal static class EnumeratedShuffles
{
    public static double UpperTail(RankingSet set)
    {
        var voices = set.Rows
            .SelectMany((row, number) => Enumerable.Repeat((Name: row.Voice ?? -1 - number, row.Voice, row.Ranking), (int)row.Count))
            .Select((row, n) => (Key: row.Voice is { } v ? $"v{v}" : $"r{n}", row.Ranking))
            .GroupBy(row => row.Key, row => row.Ranking.DoubledMidranks().ToArray())
            .Select(group => group.Aggregate((a, b) => [.. a.Zip(b, (x, y) => x + y)]))
            .ToArray();
        var observed = Squares([.. Enumerable.Range(0, set.Items).Select(i => voices.Sum(voice => voice[i]))]);
        long hits = 0, all = 0;
        void Try(int depth, int[] sums)
        {
            if (depth == voices.Length)
            {
                all++;
                if (Squares(sums) >= observed) hits++;
                return;
            }

            foreach (var order in Orders(voices[depth])) Try(depth + 1, [.. sums.Zip(order, (a, b) => a + b)]);
        }

        Try(0, new int[set.Items]);
        return (double)hits / all;
    }

    private static long Squares(int[] sums) => sums.Sum(sum => (long)sum * sum);

    private static IEnumerable<int[]> Orders(int[] values)
    {
        if (values.Length <= 1) return [values];
        return Enumerable.Range(0, values.Length).SelectMany(i =>
            Orders([.. values.Where((_, j) => j != i)]).Select(rest => (int[])[values[i], .. rest]));
    }
}
