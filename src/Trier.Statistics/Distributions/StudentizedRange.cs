namespace Trier.Statistics.Distributions;

/// <summary>
/// The studentized range: the spread of k independent standard normal numbers over an independent estimate of their standard deviation. With the deviation known,
/// P(Q >= q) = k times the integral of phi(z) [Phi(z)^(k-1) - (Phi(z) - Phi(z-q))^(k-1)] dz, whose bracket is written as Phi(z-q) times a sum, so that small tails keep their digits; otherwise that is averaged over
/// the deviation's distribution. Gauss-Legendre panels; absolute error below 1e-9. Source: [CopenhaverHolland1988] for the form; check values by R's ptukey and qtukey.
/// </summary>
public static class StudentizedRange
{
    // Above this many degrees of freedom the deviation counts as known; R draws the same line.
    private const double Known = 25_000;

    private static readonly double[] Nodes =
    [
        0.0950125098376375, 0.2816035507792589, 0.4580167776572274, 0.6178762444026438, 0.7554044083550030, 0.8656312023878318, 0.9445750230732326, 0.9894009349916499,
    ];

    private static readonly double[] Weights =
    [
        0.1894506104550686, 0.1826034150449236, 0.1691565193950026, 0.1495959888165768, 0.1246289712555340, 0.0951585116824926, 0.0622535239386477, 0.0271524594117540,
    ];

    /// <summary>P(Q >= q).</summary>
    /// <param name="q">The range; 0 or below gives 1.</param>
    /// <param name="groups">How many numbers, at least 2.</param>
    /// <param name="degreesOfFreedom">Of the estimated deviation, at least 1; infinity where it is known.</param>
    public static double UpperTail(double q, int groups, double degreesOfFreedom = double.PositiveInfinity)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(groups, 2);
        if (!(degreesOfFreedom >= 1)) throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), "At least 1 degree of freedom is needed.");
        if (!(q > 0)) return 1;
        if (double.IsPositiveInfinity(q)) return 0;
        return Math.Clamp(degreesOfFreedom > Known ? Tail(q, groups) : Averaged(q, groups, degreesOfFreedom), 0, 1);
    }

    /// <summary>The q that the range exceeds with a given chance.</summary>
    /// <param name="upperTail">Between 0 and 1, both excluded.</param>
    /// <param name="groups">How many numbers, at least 2.</param>
    /// <param name="degreesOfFreedom">As in <see cref="UpperTail"/>.</param>
    public static double Quantile(double upperTail, int groups, double degreesOfFreedom = double.PositiveInfinity)
    {
        if (!(upperTail > 0 && upperTail < 1)) throw new ArgumentOutOfRangeException(nameof(upperTail), "The chance lies between 0 and 1.");
        var wanted = Math.Log(upperTail);
        double Gap(double q) => Math.Log(UpperTail(q, groups, degreesOfFreedom)) - wanted;
        double low = 0, high = 4;
        var (above, below) = (-wanted, Gap(high));
        while (below > 0) (low, above, high, below) = (high, below, 2 * high, Gap(2 * high));

        // Regula falsi; the end that stays is halved, so that both ends move (Illinois).
        var last = 0;
        for (var step = 0; step < 100 && high - low > 1e-11 * high; step++)
        {
            var q = ((low * below) - (high * above)) / (below - above);
            var gap = Gap(q);
            if (Math.Abs(gap) < 1e-13) return q;
            if (gap > 0)
            {
                (low, above) = (q, gap);
                if (last > 0) below /= 2;
                last = 1;
            }
            else
            {
                (high, below) = (q, gap);
                if (last < 0) above /= 2;
                last = -1;
            }
        }

        return (low + high) / 2;
    }

    private static double Tail(double q, int groups)
    {
        // Beyond 8.5 deviations the density adds less than 1e-16.
        const double reach = 8.5;
        return groups * Integral(-reach, reach, 6, z =>
        {
            var (under, far) = (Tails.Normal(-z), Tails.Normal(q - z));
            var inside = Math.Max(0, under - far);
            double sum = 0, power = 1;
            for (var i = 0; i < groups - 1; i++)
            {
                // The sum over i of under^i inside^(k-2-i), by Horner.
                sum = (sum * inside) + power;
                power *= under;
            }

            return far * sum * Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);
        });
    }

    private static double Averaged(double q, int groups, double freedom)
    {
        // u = log of (estimate/deviation): its density falls off fast both ways, so that few panels suffice.
        var logScale = (freedom / 2 * Math.Log(freedom / 2)) - Tails.LogGamma(freedom / 2) + Math.Log(2);
        double Density(double u) => Math.Exp(logScale + (freedom * u) - (freedom / 2 * Math.Exp(2 * u)));
        double low = 0, high = 0;
        while (Density(low) > 1e-18) low -= 0.25 / Math.Sqrt(freedom);
        while (Density(high) > 1e-16) high += 0.25 / Math.Sqrt(freedom);
        var panels = (int)Math.Ceiling((high - low) * Math.Sqrt(freedom) / 2);
        return Integral(low, high, panels, u => Density(u) * Tail(q * Math.Exp(u), groups));
    }

    private static double Integral(double low, double high, int panels, Func<double, double> f)
    {
        var sum = 0.0;
        var half = (high - low) / (2 * panels);
        for (var panel = 0; panel < panels; panel++)
        {
            var middle = low + (((2 * panel) + 1) * half);
            for (var i = 0; i < Nodes.Length; i++) sum += Weights[i] * (f(middle - (half * Nodes[i])) + f(middle + (half * Nodes[i])));
        }

        return sum * half;
    }
}
