using System.Collections.Immutable;
using Trier.Statistics.Distributions;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.RankTests;

/// <summary>Page's test for an order expected beforehand.</summary>
/// <param name="L">Sum over items of expected position times rank sum.</param>
/// <param name="Z">(L - n k (k+1)^2/4) over the square root of n k^2 (k+1)^2 (k-1)/144, without tie correction.</param>
/// <param name="NormalP">Upper tail of Z.</param>
/// <param name="P">P(L or more) when every ballot is shuffled, given its ties; exact.</param>
public sealed record PageResult(double L, double Z, double NormalP, PValue P);

/// <summary>
/// Page's L = sum of j R_j, with j the place expected for the item and R_j its rank sum over complete ballots; large where the ballots follow the expected order. The exact p
/// convolves the ballots' own distributions of sum j r_j, ties included. Source: [Page1963].
/// </summary>
public static class PageTrend
{
    private const int LargestItems = 9;

    /// <summary>Tests the expected order, one-sided.</summary>
    /// <param name="set">Complete ballots over 3 to 9 items.</param>
    /// <param name="expected">The items in the order expected, lowest place first.</param>
    /// <returns>Refused for partial ballots, no ballot, or numbers of items outside 3 to 9.</returns>
    /// <exception cref="ArgumentException">The expected order does not name every item once.</exception>
    public static Answer<PageResult> Test(RankingSet set, ImmutableArray<int> expected)
    {
        ArgumentNullException.ThrowIfNull(set);
        var k = set.Items;
        if (!expected.Order().SequenceEqual(Enumerable.Range(0, k))) throw new ArgumentException("The expected order does not name every item once.", nameof(expected));
        if (k < 3) return new Refusal(RefusalKind.TooFewItems, "A trend needs three items.");
        if (k > LargestItems) return new Refusal(RefusalKind.TooManyItems, $"The exact trend test takes up to {LargestItems} items.");
        if (set.Ballots == 0) return new Refusal(RefusalKind.TooFewBallots, "There is no ballot.");
        if (!set.IsComplete) return new Refusal(RefusalKind.NotComplete, "Some ballot was not served every item: the trend test needs complete ballots.");
        var doubledL = 0L;
        var chances = new double[] { 1 };
        var lowest = 0L;
        var known = new Dictionary<string, (long Lowest, double[] Chances)>(StringComparer.Ordinal);
        foreach (var row in set.Rows)
        {
            var doubled = row.Ranking.DoubledMidranks();
            for (var j = 0; j < k; j++) doubledL += row.Count * (j + 1) * doubled[expected[j]];
            var sorted = doubled.Sort().ToArray();
            var name = string.Join(' ', sorted);
            if (!known.TryGetValue(name, out var one)) known.Add(name, one = Null(sorted));
            for (var copy = 0L; copy < row.Count; copy++)
            {
                chances = Convolve(chances, one.Chances);
                lowest += one.Lowest;
            }
        }

        var tail = 0.0;
        for (var i = chances.Length - 1; i >= 0 && lowest + i >= doubledL; i--) tail += chances[i];
        var n = (double)set.Ballots;
        var mean = n * k * (k + 1) * (k + 1) / 4;
        var z = ((doubledL / 2.0) - mean) / Math.Sqrt(n * k * k * (k + 1) * (k + 1) * (k - 1) / 144);
        return new PageResult(doubledL / 2.0, z, Tails.Normal(z), PValue.Exact(tail));
    }

    /// <summary>P(L = lowest + i) for judges without ties.</summary>
    internal static (long Lowest, double[] Chances) NullDistribution(int items, int judges)
    {
        var one = Null([.. Enumerable.Range(1, items).Select(place => 2 * place)]);
        var chances = new double[] { 1 };
        for (var judge = 0; judge < judges; judge++) chances = Convolve(chances, one.Chances);

        // Doubled places without ties make every other value impossible.
        return (judges * one.Lowest / 2, [.. chances.Where((_, i) => i % 2 == 0)]);
    }

    private static (long Lowest, double[] Chances) Null(int[] sorted)
    {
        var k = sorted.Length;
        var orders = Arrangements.All(sorted);
        var sums = new long[orders.Length / k];
        for (var order = 0; order < sums.Length; order++)
        {
            for (var j = 0; j < k; j++) sums[order] += (j + 1) * orders[(order * k) + j];
        }

        var low = sums.Min();
        var chances = new double[sums.Max() - low + 1];
        foreach (var sum in sums) chances[sum - low] += 1.0 / sums.Length;
        return (low, chances);
    }

    private static double[] Convolve(double[] a, double[] b)
    {
        var result = new double[a.Length + b.Length - 1];
        for (var j = 0; j < b.Length; j++)
        {
            if (b[j] == 0) continue;
            for (var i = 0; i < a.Length; i++) result[i + j] += a[i] * b[j];
        }

        return result;
    }
}
