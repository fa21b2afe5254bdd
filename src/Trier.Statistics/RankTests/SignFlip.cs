namespace Trier.Statistics.RankTests;

/// <summary>
/// The exact sign-flip test of one pair: if the two items are interchangeable on every ballot, each gap keeps its size and flips its
/// sign with chance 1/2. Two-sided: P(|sum of flipped gaps| >= |observed sum|), by integer convolution; for a crowd of thousands by summing the
/// characteristic function, a product of cosines, over its frequencies, which gives the same p within 1e-12. Gaps that are too fine for both, as place points on
/// ballots of many lengths give, are counted sign by sign for up to 36 voices; for more they are rounded to a coarser step, and the p is the exact one of the
/// rounded gaps. Zero gaps add nothing. Source: [Fisher1935], chapter 21; [Pitman1937]; the bound on tails beyond that [Hoeffding1963].
/// </summary>
public static class SignFlip
{
    // Beyond the observed sum plus this many standard deviations the mass is below one part in 1e20 of the tail.
    private const double Deviations = 10;

    /// <summary>Voices times reach beyond which the frequencies are summed instead.</summary>
    private const double LargestConvolution = 2e7;

    /// <summary>Different gaps times reach beyond which the frequencies are not summed either: some 0.2 s of a laptop's work.</summary>
    private const double LargestSum = 5e6;

    /// <summary>Most voices whose signs are counted in two halves.</summary>
    private const int MostHalved = 36;

    /// <summary>Below this the sum over frequencies is rounding alone, and a bound on the tail is given.</summary>
    private const double Finest = 1e-12;

    /// <summary>
    /// The two-sided p-value, exact to rounding; for thousands of voices a p below 1e-12 is given as an upper bound. For more than 36 voices whose gaps are too fine it
    /// is the exact p of gaps rounded to a step of which some hundred make a usual gap: about 0.001 from the other where p is near 0.05.
    /// </summary>
    /// <param name="gaps">One whole-number gap per voice, and how many voices have it.</param>
    public static double P(IEnumerable<(long Gap, long Count)> gaps)
    {
        ArgumentNullException.ThrowIfNull(gaps);
        var kept = gaps.Where(g => g.Gap != 0 && g.Count > 0).OrderBy(g => Math.Abs(g.Gap)).ToArray();
        if (kept.Length == 0) return 1;
        var unit = kept.Aggregate(0L, (divisor, g) => Gcd.Of(divisor, g.Gap));
        (long Gap, long Count)[] whole = [.. kept.Select(g => (g.Gap / unit, g.Count))];
        if (Bounded(whole) is { } p) return p;
        if (whole.Sum(g => g.Count) <= MostHalved && Reach(whole) <= long.MaxValue) return ByHalves(whole);
        for (var step = 2L; ; step *= 2)
        {
            (long Gap, long Count)[] rounded = [.. whole.Select(g => (Gap: Math.Sign(g.Gap) * ((Math.Abs(g.Gap) + (step / 2)) / step), g.Count)).Where(g => g.Gap != 0)];
            if (Bounded(rounded) is { } near) return near;
        }
    }

    private static Int128 Reach((long Gap, long Count)[] gaps) => gaps.Aggregate(Int128.Zero, (sum, g) => sum + ((Int128)Math.Abs(g.Gap) * g.Count));

    /// <summary>By convolution or by frequencies, or null where both are too much work.</summary>
    private static double? Bounded((long Gap, long Count)[] kept)
    {
        var sum = Int128.Abs(kept.Aggregate(Int128.Zero, (sum, g) => sum + ((Int128)g.Gap * g.Count)));
        if (sum == 0) return 1;
        var variance = kept.Sum(g => Math.Pow(Math.Abs(g.Gap), 2) * g.Count);
        var voices = kept.Sum(g => g.Count);
        var wide = Math.Min((double)Reach(kept), (double)sum + (Deviations * Math.Sqrt(variance)) + 1);
        if (wide * voices > LargestConvolution)
        {
            var bound = 2 * Math.Exp(-(double)sum * (double)sum / (2 * variance));
            if (bound < Finest) return bound;
            (long, long)[] sizes = [.. kept.GroupBy(g => Math.Abs(g.Gap), g => g.Count).Select(g => (g.Key, g.Sum()))];
            return wide * sizes.Length > LargestSum ? null : Math.Clamp(ByFrequencies(sizes, (long)sum, (int)wide), 0, Math.Min(1, bound));
        }

        return ByConvolution(kept, (long)sum, (int)wide);
    }

    private static double ByConvolution((long Gap, long Count)[] kept, long observed, int window)
    {
        var now = new double[(2 * window) + 1];
        var next = new double[now.Length];
        now[window] = 1;
        var width = 0;
        foreach (var (gap, count) in kept)
        {
            var step = (int)Math.Abs(gap);
            for (var i = 0L; i < count; i++)
            {
                var wider = Math.Min(window, width + step);
                next.AsSpan(window - wider, (2 * wider) + 1).Clear();
                for (var s = window - width; s <= window + width; s++)
                {
                    var half = now[s] * 0.5;
                    if (half == 0) continue;
                    if (s - step >= 0) next[s - step] += half;
                    if (s + step < next.Length) next[s + step] += half;
                }

                (now, next) = (next, now);
                width = wider;
            }
        }

        var tail = 0.0;
        for (var s = now.Length - 1; s >= window + observed; s--) tail += now[s];
        return Math.Min(1, 2 * tail);
    }

    /// <summary>Counts the signs whose sum reaches the observed one: all sums of either half of the voices in order, each of the one met with those of the other.</summary>
    private static double ByHalves((long Gap, long Count)[] gaps)
    {
        var sizes = gaps.SelectMany(g => Enumerable.Repeat(Math.Abs(g.Gap), (int)g.Count)).ToArray();
        var observed = Math.Abs(gaps.Sum(g => g.Gap * g.Count));
        var (one, other) = (Sums(sizes.AsSpan(0, sizes.Length / 2)), Sums(sizes.AsSpan(sizes.Length / 2)));
        var (hits, at) = (0L, other.Length);
        foreach (var sum in one)
        {
            while (at > 0 && sum + other[at - 1] >= observed) at--;
            hits += other.Length - at;
        }

        return Math.Min(1, 2.0 * hits / one.Length / other.Length);
    }

    /// <summary>The sums of gaps under all signs, rising.</summary>
    private static long[] Sums(ReadOnlySpan<long> sizes)
    {
        long[] sums = [0];
        foreach (var size in sizes)
        {
            var next = new long[2 * sums.Length];
            var (low, high) = (0, 0);
            for (var i = 0; i < next.Length; i++)
                next[i] = low < sums.Length && sums[low] - size <= sums[high] + size ? sums[low++] - size : sums[high++] + size;
            sums = next;
        }

        return sums;
    }

    /// <summary>
    /// 1 - P(|S| &lt; s) with P(S = t) = mean over frequencies w of phi(w) cos(wt), phi(w) = product of cos(g w) to the power of the gap's count: sums beyond the window, of
    /// which there are less than 1e-20, fold back into it.
    /// </summary>
    private static double ByFrequencies((long Gap, long Count)[] sizes, long observed, int window)
    {
        var points = (2 * window) + 1;
        var inside = 0.0;
        for (var k = 0; k <= window; k++)
        {
            var half = Math.PI * k / points;
            var (log, sign) = (0.0, 1);
            foreach (var (gap, count) in sizes)
            {
                var cosine = Math.Cos(2 * half * gap);
                if (cosine < 0 && count % 2 == 1) sign = -sign;
                log += count * Math.Log(Math.Abs(cosine));
                if (log < -50) break;
            }

            if (log < -50) continue;
            // The sum of cos(wt) over |t| < s.
            var kernel = k == 0 ? (2 * observed) - 1 : Math.Sin(((2 * observed) - 1) * half) / Math.Sin(half);
            inside += (k == 0 ? 1 : 2) * sign * Math.Exp(log) * kernel;
        }

        return 1 - (inside / points);
    }
}
