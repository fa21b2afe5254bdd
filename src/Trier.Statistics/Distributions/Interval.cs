namespace Trier.Statistics.Distributions;

/// <summary>An interval with its nominal level.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
/// <param name="Level">Nominal cover, such as 0.90.</param>
public sealed record Interval(double Low, double High, double Level)
{
    /// <summary>Student's t interval of a mean.</summary>
    /// <param name="mean">The mean.</param>
    /// <param name="variance">The sample variance, with n - 1.</param>
    /// <param name="n">How many, at least 2.</param>
    /// <param name="level">Nominal cover.</param>
    public static Interval OfMean(double mean, double variance, long n, double level = 0.90)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(n, 2);
        return OfMean(mean, variance, n, Tails.StudentQuantile((1 - level) / 2, n - 1), level);
    }

    /// <summary>The same with Student's quantile known: it is the dear part where many means rest on as many values.</summary>
    internal static Interval OfMean(double mean, double variance, long n, double quantile, double level)
    {
        var half = quantile * Math.Sqrt(variance / n);
        return new Interval(mean - half, mean + half, level);
    }

    /// <summary>Wilson's interval of a share. Source: [Wilson1927].</summary>
    /// <param name="successes">0 to n; halves allowed where ties count half.</param>
    /// <param name="n">How many, at least 1.</param>
    /// <param name="level">Nominal cover.</param>
    public static Interval OfShare(double successes, long n, double level = 0.90)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(n, 1);
        var z = Tails.NormalQuantile((1 - level) / 2);
        var share = successes / n;
        var centre = (share + (z * z / (2 * n))) / (1 + (z * z / n));
        var half = z / (1 + (z * z / n)) * Math.Sqrt((share * (1 - share) / n) + (z * z / (4.0 * n * n)));
        return new Interval(Math.Max(0, centre - half), Math.Min(1, centre + half), level);
    }

    /// <summary>Clopper and Pearson's interval of a share. Source: [ClopperPearson1934].</summary>
    /// <param name="successes">0 to n.</param>
    /// <param name="n">How many, at least 1.</param>
    /// <param name="level">Guaranteed cover.</param>
    public static Interval ExactShare(long successes, long n, double level = 0.95)
    {
        var tail = (1 - level) / 2;
        var low = successes == 0 ? 0 : Tails.BetaQuantile(tail, successes, n - successes + 1);
        var high = successes == n ? 1 : Tails.BetaQuantile(1 - tail, successes + 1, n - successes);
        return new Interval(low, high, level);
    }
}
