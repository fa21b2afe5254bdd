using System.Collections.Immutable;
using Trier.Statistics.Distributions;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.RankTests;

/// <summary>Skillings and Mack's test.</summary>
/// <param name="Statistic">The classical statistic, without tie correction.</param>
/// <param name="DegreesOfFreedom">Items minus connected pieces.</param>
/// <param name="ChiSquareP">Its chi-square p. With many ties the true size is 0.8-2.3 % at nominal 5 %: nearly blind.</param>
/// <param name="AdjustedSums">Per item sum of sqrt(12/(m+1)) (r - (m+1)/2).</param>
/// <param name="Gate">The tie-corrected statistic with its p by shuffling: decide by this one.</param>
public sealed record SkillingsMackResult(
    double Statistic, int DegreesOfFreedom, double ChiSquareP, ImmutableArray<double> AdjustedSums, GateResult Gate);

/// <summary>
/// Skillings and Mack's test for any pattern of missing items: A_j = sum over ballots of sqrt(12/(m+1)) (r_j - (m+1)/2), covariance minus the number of ballots that hold
/// both items off the diagonal. Source: [SkillingsMack1981].
/// </summary>
public static class SkillingsMack
{
    /// <summary>Tests ballots that served two items or more.</summary>
    /// <param name="set">The ballots.</param>
    /// <param name="seed">Where chance comes from, if arrangements must be drawn.</param>
    /// <param name="effort">How much work for the shuffled p; <see cref="Effort.Usual"/> if null.</param>
    public static Answer<SkillingsMackResult> Test(RankingSet set, Seed seed, Effort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(set);
        var gate = RankTests.Gate.Test(set, seed, effort);
        if (!gate.Stands) return gate.Refusal!;
        var covariance = new Laplacian(set.Items);
        var sums = new double[set.Items];
        foreach (var (ranking, count, _) in set.Rows)
        {
            var m = ranking.Served.Length;
            if (m < 2) continue;
            covariance.Add(ranking.Served.AsSpan(), (double)m * count);
            var places = ranking.Midranks();
            foreach (var item in ranking.Served) sums[item] += count * Math.Sqrt(12.0 / (m + 1)) * (places[item]!.Value - ((m + 1) / 2.0));
        }

        var inverse = covariance.PseudoInverse();
        var statistic = 0.0;
        for (var i = 0; i < sums.Length; i++)
        {
            for (var j = 0; j < sums.Length; j++) statistic += sums[i] * inverse[i, j] * sums[j];
        }

        var freedom = set.Items - covariance.Pieces().Length;
        return new SkillingsMackResult(statistic, freedom, Tails.ChiSquare(statistic, freedom), [.. sums], gate.Value);
    }
}
