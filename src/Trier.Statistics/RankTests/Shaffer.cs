using System.Collections.Immutable;

namespace Trier.Statistics.RankTests;

/// <summary>
/// How many pairs of k items can still be untrue together: S(k) = all C(j,2) + x with x in S(k-j), j = 1..k, S(0) = S(1) = {0}.
/// Source: [Shaffer1986].
/// </summary>
public static class Shaffer
{
    /// <summary>
    /// The divisors t of the step-down after the gate has rejected "no difference at all": at each step the largest number in S(k), below
    /// all pairs, that does not exceed the pairs left. For k = 5: 6 6 6 6 6 4 4 3 2 1.
    /// </summary>
    /// <param name="items">2 or more.</param>
    /// <returns>One divisor per pair, in the order of rising p-values.</returns>
    public static ImmutableArray<int> Divisors(int items)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(items, 2);
        var pairs = items * (items - 1) / 2;
        if (pairs == 1) return [1];
        var possible = TrueTogether(items);
        var divisors = ImmutableArray.CreateBuilder<int>(pairs);
        for (var left = pairs; left >= 1; left--)
        {
            var bound = Math.Min(left, pairs - 1);
            var t = bound;
            while (!possible[t]) t--;
            divisors.Add(Math.Max(1, t));
        }

        return divisors.MoveToImmutable();
    }

    /// <summary>The fewest voices, all agreeing, with which a pair can be shown at level 0.05: 2^(1-n) times the first divisor at most 0.05.</summary>
    /// <param name="items">2 or more.</param>
    public static int SmallestPanel(int items)
    {
        var divisor = Divisors(items)[0];
        var n = 1;
        while (Math.ScaleB(1, 1 - n) * divisor > 0.05) n++;
        return n;
    }

    private static bool[] TrueTogether(int items)
    {
        var sets = new bool[items + 1][];
        sets[0] = [true];
        for (var k = 1; k <= items; k++)
        {
            sets[k] = new bool[(k * (k - 1) / 2) + 1];
            for (var j = 1; j <= k; j++)
            {
                for (var x = 0; x < sets[k - j].Length; x++)
                {
                    if (sets[k - j][x]) sets[k][(j * (j - 1) / 2) + x] = true;
                }
            }
        }

        return sets[items];
    }
}
