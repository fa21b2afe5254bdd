using System.Collections.Immutable;
using Trier.Statistics.Distributions;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.RankTests;

/// <summary>The sign test and its kin.</summary>
public static class SignTest
{
    // Chances equal but for rounding count as equally extreme.
    private const double Slack = 1e-7;

    /// <summary>Two-sided exact binomial p: the chance of all counts no more likely than the observed one. Source: [ClopperPearson1934]; the rule is that of R's binom.test.</summary>
    /// <param name="successes">0 to trials.</param>
    /// <param name="trials">0 or more.</param>
    /// <param name="chance">Chance of a success by luck, between 0 and 1.</param>
    public static double TwoSided(long successes, long trials, double chance = 0.5)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(successes);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(successes, trials);
        var limit = Tails.BinomialExactly(successes, trials, chance) * (1 + Slack);
        var sum = 0.0;
        for (var x = 0L; x <= trials; x++)
        {
            var mass = Tails.BinomialExactly(x, trials, chance);
            if (mass <= limit) sum += mass;
        }

        return Math.Min(1, sum);
    }
}

/// <summary>McNemar's test of two paired yes-or-no answers.</summary>
/// <param name="ChiSquare">(b - c)^2/(b + c).</param>
/// <param name="ChiSquareP">Its p on 1 degree of freedom.</param>
/// <param name="Corrected">(|b - c| - 1)^2/(b + c), with continuity correction.</param>
/// <param name="CorrectedP">Its p.</param>
/// <param name="ExactP">Two-sided exact binomial p: the one to use.</param>
public sealed record McNemarResult(double ChiSquare, double ChiSquareP, double Corrected, double CorrectedP, double ExactP)
{
    /// <summary>Tests whether the two kinds of change are equally likely. Source: [McNemar1947].</summary>
    /// <param name="b">Pairs yes then no.</param>
    /// <param name="c">Pairs no then yes.</param>
    /// <returns>Refused where nobody changed.</returns>
    public static Answer<McNemarResult> Of(long b, long c)
    {
        if (b + c == 0) return new Refusal(RefusalKind.NoInformation, "Nobody answered differently the two times.");
        var n = (double)(b + c);
        var plain = (b - c) * (double)(b - c) / n;
        var corrected = Math.Pow(Math.Max(0, Math.Abs(b - c) - 1), 2) / n;
        return new McNemarResult(plain, Tails.ChiSquare(plain, 1), corrected, Tails.ChiSquare(corrected, 1), SignTest.TwoSided(b, b + c));
    }
}

/// <summary>Cochran's test of several yes-or-no answers by the same people.</summary>
/// <param name="Q">Cochran's Q.</param>
/// <param name="DegreesOfFreedom">k - 1.</param>
/// <param name="ChiSquareP">The chi-square approximation.</param>
/// <param name="P">By shuffling within each person, exact where the work allows.</param>
public sealed record CochranResult(double Q, int DegreesOfFreedom, double ChiSquareP, PValue P)
{
    /// <summary>Q = (k-1)(k sum C^2 - N^2)/(k N - sum R^2); it is Friedman's tie-corrected T1 on the answers as two places. Source: [Cochran1950].</summary>
    /// <param name="answers">Per person one answer per item, at least 2 items.</param>
    /// <param name="seed">Where chance comes from, if arrangements must be drawn.</param>
    /// <param name="effort">How much work; <see cref="Effort.Usual"/> if null.</param>
    /// <returns>Refused where nobody distinguishes two items.</returns>
    public static Answer<CochranResult> Of(ImmutableArray<ImmutableArray<bool>> answers, Seed seed, Effort? effort = null)
    {
        if (answers.IsEmpty) return new Refusal(RefusalKind.TooFewBallots, "Nobody answered.");
        var k = answers[0].Length;
        if (k < 2) return new Refusal(RefusalKind.TooFewItems, "There is one item: nothing can be compared.");
        double columns = 0, rows = 0, total = 0;
        for (var j = 0; j < k; j++) columns += Math.Pow(answers.Count(row => row[j]), 2);
        foreach (var row in answers)
        {
            var yes = row.Count(answer => answer);
            rows += yes * (double)yes;
            total += yes;
        }

        if (k * total <= rows) return new Refusal(RefusalKind.NoInformation, "Nobody answered differently for two items.");
        var q = (k - 1) * ((k * columns) - (total * total)) / ((k * total) - rows);
        var set = RankingSet.Create(answers.Select(row => Ranking.FromPlaces([.. row.Select(answer => (double?)(answer ? 1 : 2))])));
        return new CochranResult(q, k - 1, Tails.ChiSquare(q, k - 1), Gate.Test(set, seed, effort).Value.P);
    }
}
