using System.Collections.Immutable;
using Trier.Statistics.Distributions;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.RankTests;

/// <summary>Durbin's test. Its two approximations disagree strongly in small designs; decide by <paramref name="Gate"/>.</summary>
/// <param name="Statistic">T1, corrected for ties.</param>
/// <param name="DegreesOfFreedom">t - 1.</param>
/// <param name="ChiSquareP">Chi-square p of T1.</param>
/// <param name="F">T2.</param>
/// <param name="FDegreesOfFreedom">Denominator of T2: bk - b - t + 1.</param>
/// <param name="FP">p of T2.</param>
/// <param name="RankSums">Per item.</param>
/// <param name="LeastDifference">Least significant difference of two rank sums at 0.05, for comparison only.</param>
/// <param name="Gate">The same statistic with its p by shuffling.</param>
public sealed record DurbinResult(
    double Statistic, int DegreesOfFreedom, double ChiSquareP, double F, int FDegreesOfFreedom, double FP,
    ImmutableArray<double> RankSums, double LeastDifference, GateResult Gate);

/// <summary>
/// Durbin's test for balanced incomplete blocks: T1 = (t-1) sum (R_j - r(k+1)/2)^2/(A - C), A the sum of squared ranks, C = b k (k+1)^2/4;
/// T2 = (T1/(t-1)) / ((b(k-1) - T1)/(bk - b - t + 1)). Source: [Durbin1951], in the form of [Conover1999].
/// </summary>
public static class Durbin
{
    /// <summary>Tests balanced incomplete blocks.</summary>
    /// <param name="set">Ballots of equal length, each item equally often, each pair together equally often.</param>
    /// <param name="seed">Where chance comes from, if arrangements must be drawn.</param>
    /// <param name="effort">How much work; <see cref="Effort.Usual"/> if null.</param>
    /// <returns>Refused where the design is not balanced or says nothing.</returns>
    public static Answer<DurbinResult> Test(RankingSet set, Seed seed, Effort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(set);
        var t = set.Items;
        var sums = new double[t];
        var served = new long[t];
        var together = new long[t, t];
        double squares = 0;
        foreach (var (ranking, count, _) in set.Rows)
        {
            var places = ranking.Midranks();
            foreach (var i in ranking.Served)
            {
                sums[i] += count * places[i]!.Value;
                squares += count * places[i]!.Value * places[i]!.Value;
                served[i] += count;
                foreach (var j in ranking.Served) together[i, j] += count;
            }
        }

        var lengths = set.Rows.Select(row => row.Ranking.Served.Length).Distinct().ToArray();
        if (t < 2 || lengths.Length != 1 || lengths[0] < 2 || served.Distinct().Count() != 1 || !PairsAlike(together))
            return new Refusal(RefusalKind.WrongDesign, "The ballots are not balanced incomplete blocks: lengths, servings and pairs must each be equal.");
        double k = lengths[0], b = set.Ballots, r = served[0];
        var spread = squares - (b * k * (k + 1) * (k + 1) / 4);
        if (spread <= 0) return new Refusal(RefusalKind.NoInformation, "Every ballot ties everything.");
        var t1 = (t - 1) * sums.Sum(sum => Math.Pow(sum - (r * (k + 1) / 2), 2)) / spread;
        var freedom = (int)((b * k) - b - t + 1);
        if (freedom < 1) return new Refusal(RefusalKind.TooFewBallots, "There are too few blocks for the number of items: no degree of freedom is left.");
        var rest = (b * (k - 1)) - t1;
        var f = rest <= 1e-12 ? double.PositiveInfinity : t1 / (t - 1) / (rest / freedom);
        var least = Tails.StudentQuantile(0.025, freedom) * Math.Sqrt(spread * 2 * r / freedom * (1 - (t1 / (b * (k - 1)))));
        return new DurbinResult(
            t1, t - 1, Tails.ChiSquare(t1, t - 1), f, freedom, Tails.F(f, t - 1, freedom), [.. sums], least, RankTests.Gate.Test(set, seed, effort).Value);
    }

    private static bool PairsAlike(long[,] together)
    {
        var t = together.GetLength(0);
        for (var i = 0; i < t; i++)
        {
            for (var j = 0; j < t; j++)
            {
                if (i != j && together[i, j] != together[0, 1]) return false;
            }
        }

        return true;
    }
}
