using Trier.Statistics.Distributions;

namespace Trier.Statistics.RankTests;

/// <summary>Rank correlations of two measured lists.</summary>
/// <param name="TauB">Kendall's tau-b: (C - D) over the root of the pairs not tied in x times those not tied in y.</param>
/// <param name="Concordant">C.</param>
/// <param name="Discordant">D.</param>
/// <param name="TauP">Two-sided; exact without ties, else normal with the tie-corrected variance.</param>
/// <param name="TauExact">True where <paramref name="TauP"/> is exact.</param>
/// <param name="Rho">Spearman's rho: the correlation of mid-places.</param>
/// <param name="RhoP">Two-sided, by t on n - 2 degrees of freedom.</param>
/// <param name="RhoExactP">Two-sided, by every order, ties kept as they are; null above 10 pairs.</param>
public sealed record RankCorrelationResult(
    double TauB, long Concordant, long Discordant, double TauP, bool TauExact, double Rho, double RhoP, double? RhoExactP)
{
    /// <summary>(C - D)/(C + D), which ignores ties.</summary>
    public double Gamma => (double)(Concordant - Discordant) / (Concordant + Discordant);

    /// <summary>(C - D) over all n(n-1)/2 pairs, ties among them.</summary>
    /// <param name="pairs">n.</param>
    public double TauA(int pairs) => (Concordant - Discordant) / (pairs * (pairs - 1) / 2.0);
}

/// <summary>Kendall's tau-b and Spearman's rho. Sources: [Kendall1938], [Kendall1970] for ties; [Spearman1904].</summary>
public static class RankCorrelation
{
    private const int MostOrdered = 10;

    /// <summary>Correlates two lists.</summary>
    /// <param name="x">Finite numbers, at least 3.</param>
    /// <param name="y">As many.</param>
    /// <returns>Refused for fewer than three pairs, or a list that is all one value.</returns>
    /// <exception cref="ArgumentException">The lists differ in length.</exception>
    public static Answer<RankCorrelationResult> Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        if (x.Length != y.Length) throw new ArgumentException("The lists differ in length.", nameof(y));
        var n = x.Length;
        if (n < 3) return new Refusal(RefusalKind.TooFewBallots, "A rank correlation needs three pairs.");
        long concordant = 0, discordant = 0, tiedX = 0, tiedY = 0;
        for (var i = 0; i < n; i++)
        {
            for (var j = i + 1; j < n; j++)
            {
                var a = x[i].CompareTo(x[j]);
                var b = y[i].CompareTo(y[j]);
                if (a == 0) tiedX++;
                if (b == 0) tiedY++;
                if (a * b > 0) concordant++;
                else if (a * b < 0) discordant++;
            }
        }

        var pairs = n * (n - 1L) / 2;
        if (tiedX == pairs || tiedY == pairs) return new Refusal(RefusalKind.NoInformation, "One list is all one value.");
        var tau = (concordant - discordant) / Math.Sqrt((double)(pairs - tiedX) * (pairs - tiedY));
        var exact = tiedX == 0 && tiedY == 0 && n <= 100;
        var p = exact ? ExactTau(n, concordant, discordant) : 2 * Tails.Normal(Math.Abs(concordant - discordant) / Math.Sqrt(Variance(x, y)));
        var rho = Correlation(MidPlaces(x), MidPlaces(y));
        var t = 1 - (rho * rho) <= 1e-15 ? double.PositiveInfinity : rho * Math.Sqrt((n - 2) / (1 - (rho * rho)));
        return new RankCorrelationResult(tau, concordant, discordant, p, exact, rho, Tails.StudentTwoSided(t, n - 2), n <= MostOrdered ? ExactRho(x, y) : null);
    }

    /// <summary>
    /// The share of all orders of y whose sum of products of doubled mid-places lies at least as far from its mean n(n+1)^2. Sets of places used so far are gone through with the distribution of
    /// the sum so far, so that 2^n sets stand for n! orders.
    /// </summary>
    private static double ExactRho(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var n = x.Length;
        var (a, b) = (Doubled(x), Doubled(y));
        var observed = 0;
        for (var i = 0; i < n; i++) observed += a[i] * b[i];
        var centre = n * (n + 1) * (n + 1);
        var sums = new Dictionary<int, double>[1 << n];
        sums[0] = new Dictionary<int, double> { [0] = 1 };
        for (var set = 0; set < sums.Length - 1; set++)
        {
            var place = System.Numerics.BitOperations.PopCount((uint)set);
            for (var next = 0; next < n; next++)
            {
                if ((set & (1 << next)) != 0) continue;
                var to = sums[set | (1 << next)] ??= [];
                foreach (var (sum, chance) in sums[set])
                {
                    var longer = sum + (a[place] * b[next]);
                    to[longer] = to.GetValueOrDefault(longer) + (chance / (n - place));
                }
            }

            sums[set] = null!;
        }

        var tail = 0.0;
        foreach (var (sum, chance) in sums[^1])
        {
            if (Math.Abs(sum - centre) >= Math.Abs(observed - centre)) tail += chance;
        }

        return Math.Min(1, tail);
    }

    private static int[] Doubled(ReadOnlySpan<double> values) => [.. MidPlaces(values).Select(place => (int)Math.Round((2 * place) + 1))];

    /// <summary>The number of discordant pairs of a random order: each further item adds 0 to i of them, all equally likely.</summary>
    private static double ExactTau(int n, long concordant, long discordant)
    {
        var chances = new double[] { 1 };
        for (var i = 1; i < n; i++)
        {
            var next = new double[chances.Length + i];
            for (var d = 0; d < chances.Length; d++)
            {
                for (var add = 0; add <= i; add++) next[d + add] += chances[d] / (i + 1);
            }

            chances = next;
        }

        var extreme = Math.Min(concordant, discordant);
        if (concordant == discordant) return 1;
        var tail = 0.0;
        for (var d = 0L; d <= extreme; d++) tail += chances[d];
        return Math.Min(1, 2 * tail);
    }

    private static double Variance(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double n = x.Length;
        var (x1, x2, x3) = TieSums(x);
        var (y1, y2, y3) = TieSums(y);
        return (((n * (n - 1) * ((2 * n) + 5)) - x3 - y3) / 18) + (x1 * y1 / (2 * n * (n - 1))) + (x2 * y2 / (9 * n * (n - 1) * (n - 2)));
    }

    private static (double Two, double Three, double Five) TieSums(ReadOnlySpan<double> values)
    {
        double two = 0, three = 0, five = 0;
        foreach (var t in values.ToArray().GroupBy(value => value).Select(group => (double)group.Count()))
        {
            two += t * (t - 1);
            three += t * (t - 1) * (t - 2);
            five += t * (t - 1) * ((2 * t) + 5);
        }

        return (two, three, five);
    }

    private static double[] MidPlaces(ReadOnlySpan<double> values)
    {
        var places = new double[values.Length];
        for (var i = 0; i < values.Length; i++)
        {
            foreach (var other in values) places[i] += other < values[i] ? 1 : other > values[i] ? 0 : 0.5;
        }

        return places;
    }

    private static double Correlation(double[] a, double[] b)
    {
        double meanA = a.Average(), meanB = b.Average(), ab = 0, aa = 0, bb = 0;
        for (var i = 0; i < a.Length; i++)
        {
            ab += (a[i] - meanA) * (b[i] - meanB);
            aa += (a[i] - meanA) * (a[i] - meanA);
            bb += (b[i] - meanB) * (b[i] - meanB);
        }

        return ab / Math.Sqrt(aa * bb);
    }
}
