using System.Collections.Immutable;
using Trier.Statistics.Distributions;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.Agreement;

/// <summary>How far apart one ballot placed the two servings of one item.</summary>
/// <param name="Row">The row of the set.</param>
/// <param name="Distance">Absolute difference of the two mid-places among the served samples.</param>
/// <param name="Adjacent">True where no other sample lies between: same or neighbouring groups.</param>
/// <param name="Samples">How many samples the ballot served.</param>
public sealed record RepeatDistance(int Row, double Distance, bool Adjacent, int Samples);

/// <summary>What a hidden repeat says about tasters and panel.</summary>
/// <param name="Distances">One per row that served both.</param>
/// <param name="Ballots">Ballots behind them.</param>
/// <param name="SumOfDistances">Sum over ballots.</param>
/// <param name="ExpectedSum">Its mean by luck: (m+1)/3 a ballot.</param>
/// <param name="P">P(sum this small or smaller) were the two names dealt at random to the ballot's m places; exact.</param>
/// <param name="Adjacent">Ballots that put the two next to each other.</param>
/// <param name="ExpectedAdjacent">Their mean number by luck: 2/m a ballot.</param>
/// <param name="AdjacentP">P(at least as many), exact.</param>
/// <param name="Yardstick">
/// Y = z sqrt(sum d^2)/n (k+1)/(k+2) with z = 1.645 over the n ballots complete in all k+1 samples, the mean known to be 0: two servings of one item would land within
/// Y average places (among k) of each other in 9 panels of 10. Null with no complete ballot. Informs; it separates nothing.
/// </param>
public sealed record RepeatResult(
    ImmutableArray<RepeatDistance> Distances, long Ballots, double SumOfDistances, double ExpectedSum, double P,
    long Adjacent, double ExpectedAdjacent, double AdjacentP, double? Yardstick);

/// <summary>
/// A hidden repeat: one item served twice under two names. Under chance the two names fall on two different places of the m on the
/// ballot, every pair equally likely, whatever ties the ballot has; sums are convolved over ballots. Source: elementary counting.
/// </summary>
public static class HiddenRepeat
{
    private const double YardstickTail = 0.05;

    /// <summary>Compares the two servings.</summary>
    /// <param name="samples">Ballots over all samples, both servings among them.</param>
    /// <param name="a">The sample number of one serving.</param>
    /// <param name="b">The sample number of the other.</param>
    /// <returns>Refused where no ballot served both.</returns>
    /// <exception cref="ArgumentException">The two are the same sample, or out of range.</exception>
    public static Answer<RepeatResult> Compare(RankingSet samples, int a, int b)
    {
        ArgumentNullException.ThrowIfNull(samples);
        if (a == b || Math.Min(a, b) < 0 || Math.Max(a, b) >= samples.Items)
            throw new ArgumentException($"Samples {a} and {b} are not two different ones of the {samples.Items}.", nameof(b));
        var distances = ImmutableArray.CreateBuilder<RepeatDistance>();
        var sums = new double[] { 1 };
        var nears = new double[] { 1 };
        long ballots = 0, adjacent = 0, doubledSum = 0, complete = 0;
        double expectedSum = 0, expectedNear = 0, squares = 0;
        for (var r = 0; r < samples.Rows.Length; r++)
        {
            var (ranking, count, _) = samples.Rows[r];
            if (!ranking.IsServed(a) || !ranking.IsServed(b)) continue;
            var m = ranking.Served.Length;
            var doubled = ranking.DoubledMidranks();
            var distance = Math.Abs(doubled[a] - doubled[b]);
            var near = Math.Abs(GroupOf(ranking, a) - GroupOf(ranking, b)) <= 1;
            distances.Add(new RepeatDistance(r, distance / 2.0, near, m));
            var byDistance = Null(m);
            var nearChance = 2.0 / m;
            expectedSum += count * (m + 1) / 3.0;
            expectedNear += count * nearChance;
            ballots += count;
            doubledSum += count * distance;
            if (near) adjacent += count;
            if (ranking.IsComplete)
            {
                complete += count;
                squares += count * distance * distance / 4.0;
            }

            for (var copy = 0L; copy < count; copy++)
            {
                sums = Convolve(sums, byDistance);
                nears = Convolve(nears, [1 - nearChance, nearChance]);
            }
        }

        if (ballots == 0) return new Refusal(RefusalKind.TooFewBallots, "No ballot served both samples of the repeat.");
        var k = samples.Items - 1;
        double? yardstick = complete == 0 ? null : Tails.NormalQuantile(YardstickTail) * Math.Sqrt(squares) / complete * (k + 1) / (k + 2);
        return new RepeatResult(
            distances.DrainToImmutable(), ballots, doubledSum / 2.0, expectedSum, Math.Min(1, sums.Take((int)doubledSum + 1).Sum()),
            adjacent, expectedNear, Math.Min(1, nears.Skip((int)adjacent).Sum()), yardstick);
    }

    private static int GroupOf(Ranking ranking, int item)
    {
        for (var g = 0; g < ranking.Groups.Length; g++)
        {
            if (ranking.Groups[g].Contains(item)) return g;
        }

        return ranking.Groups.Length;
    }

    /// <summary>The chance of each doubled distance for two different places drawn at random from 1 to m: 2(m-x)/(m(m-1)) at distance x.</summary>
    private static double[] Null(int samples)
    {
        var byDistance = new double[(2 * samples) - 1];
        for (var x = 1; x < samples; x++) byDistance[2 * x] = 2.0 * (samples - x) / (samples * (samples - 1.0));
        return byDistance;
    }

    private static double[] Convolve(double[] a, double[] b)
    {
        var result = new double[a.Length + b.Length - 1];
        for (var i = 0; i < a.Length; i++)
        {
            for (var j = 0; j < b.Length; j++) result[i + j] += a[i] * b[j];
        }

        return result;
    }
}
