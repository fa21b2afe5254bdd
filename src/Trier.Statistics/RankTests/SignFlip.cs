namespace Trier.Statistics.RankTests;

/// <summary>
/// The exact sign-flip test of one pair: if the two items are interchangeable on every ballot, each gap keeps its size and flips its
/// sign with chance 1/2. Two-sided: P(|sum of flipped gaps| >= |observed sum|), by integer convolution; for a crowd of thousands by summing the
/// characteristic function, a product of cosines, over its frequencies, which gives the same p within 1e-12. Zero gaps add nothing.
/// Source: [Fisher1935], chapter 21; [Pitman1937]; the bound on tails beyond that [Hoeffding1963].
/// </summary>
public static class SignFlip
{
    // Beyond the observed sum plus this many standard deviations the mass is below one part in 1e20 of the tail.
    private const double Deviations = 10;

    /// <summary>Voices times reach beyond which the frequencies are summed instead.</summary>
    private const double LargestConvolution = 2e7;

    /// <summary>Below this the sum over frequencies is rounding alone, and a bound on the tail is given.</summary>
    private const double Finest = 1e-12;

    /// <summary>The two-sided p-value, exact to rounding; for thousands of voices a p below 1e-12 is given as an upper bound.</summary>
    /// <param name="gaps">One whole-number gap per voice, and how many voices have it.</param>
    public static double P(IEnumerable<(long Gap, long Count)> gaps)
    {
        ArgumentNullException.ThrowIfNull(gaps);
        var kept = gaps.Where(g => g.Gap != 0 && g.Count > 0).OrderBy(g => Math.Abs(g.Gap)).ToArray();
        if (kept.Length == 0) return 1;
        var unit = kept.Aggregate(0L, (divisor, g) => Gcd.Of(divisor, g.Gap));
        var observed = Math.Abs(kept.Sum(g => g.Gap * g.Count)) / unit;
        if (observed == 0) return 1;
        var reach = kept.Sum(g => Math.Abs(g.Gap) / unit * g.Count);
        var variance = kept.Sum(g => Math.Pow(Math.Abs(g.Gap) / unit, 2) * g.Count);
        var window = (int)Math.Min(reach, observed + (Deviations * Math.Sqrt(variance)) + 1);
        if ((double)window * kept.Sum(g => g.Count) > LargestConvolution)
        {
            var bound = 2 * Math.Exp(-(double)observed * observed / (2 * variance));
            return bound < Finest ? bound : Math.Clamp(ByFrequencies(kept.GroupBy(g => Math.Abs(g.Gap) / unit, g => g.Count).Select(g => (g.Key, g.Sum())).ToArray(), observed, window), 0, Math.Min(1, bound));
        }

        var now = new double[(2 * window) + 1];
        var next = new double[now.Length];
        now[window] = 1;
        var width = 0;
        foreach (var (gap, count) in kept)
        {
            var step = (int)(Math.Abs(gap) / unit);
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
