namespace Trier.Statistics.RankTests;

/// <summary>
/// The exact chance that the largest and smallest rank sum of judges without ties lie at least so far apart when nothing differs: the "all treatments" table of ranking tests. States are rank sums sorted and taken from the smallest; each ballot
/// adds every order of 1 to k. It holds where no item differs at all, and says nothing about single pairs once some do. Source: elementary counting; the printed table is [NewellMacFarlane1987].
/// </summary>
public static class RankSumRange
{
    private const double MostWork = 5e7;
    private const int Bits = 10;

    /// <summary>P(max R - min R >= difference).</summary>
    /// <param name="items">k, 2 to 6.</param>
    /// <param name="judges">n, at least 1.</param>
    /// <param name="difference">0 or more.</param>
    /// <returns>Refused where the work, n (n(k-1))^(k-1) at most, exceeds 5e7.</returns>
    public static Answer<double> AtLeast(int items, int judges, int difference)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(items, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(judges, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(difference);
        if (items > 6 || Work(items, judges) > MostWork)
            return new Refusal(RefusalKind.TooManyItems, "There are too many items or judges to count every arrangement.");
        var orders = Arrangements.All([.. Enumerable.Range(0, items)]);
        var now = new Dictionary<ulong, double> { [0] = 1 };
        Span<int> sums = stackalloc int[items];
        for (var judge = 0; judge < judges; judge++)
        {
            var next = new Dictionary<ulong, double>(now.Count * 2);
            foreach (var (state, chance) in now)
            {
                for (var start = 0; start < orders.Length; start += items)
                {
                    for (var i = 0; i < items; i++) sums[i] = (int)((state >> (Bits * i)) & ((1UL << Bits) - 1)) + orders[start + i];
                    sums.Sort();
                    var key = 0UL;
                    for (var i = 1; i < items; i++) key |= (ulong)(sums[i] - sums[0]) << (Bits * i);
                    next[key] = next.GetValueOrDefault(key) + chance;
                }
            }

            now = next;
        }

        var (all, tail) = (0.0, 0.0);
        foreach (var (state, chance) in now)
        {
            all += chance;
            if ((int)(state >> (Bits * (items - 1))) >= difference) tail += chance;
        }

        return tail / all;
    }

    /// <summary>Sorted states times orders are at most (n(k-1))^(k-1) a ballot.</summary>
    private static double Work(int items, int judges)
    {
        var work = (double)judges;
        for (var i = 1; i < items; i++) work *= judges * (items - 1.0);
        return work;
    }
}
