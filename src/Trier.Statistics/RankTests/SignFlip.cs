namespace Trier.Statistics.RankTests;

/// <summary>
/// The exact sign-flip test of one pair: if the two items are interchangeable on every ballot, each gap keeps its size and flips its
/// sign with chance 1/2. Two-sided: P(|sum of flipped gaps| >= |observed sum|), by integer convolution. Zero gaps add nothing.
/// Source: [Fisher1935], chapter 21; [Pitman1937].
/// </summary>
public static class SignFlip
{
    // Beyond the observed sum plus this many standard deviations the mass is below one part in 1e20 of the tail.
    private const double Deviations = 10;

    /// <summary>The two-sided p-value, exact to rounding.</summary>
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
}
