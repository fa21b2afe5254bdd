using MathNet.Numerics;

namespace Trier.Statistics.Distributions;

/// <summary>
/// Upper tails and quantiles of the textbook distributions, from MathNet.Numerics. Tails come from upper-tail functions, so that
/// small ones keep their digits.
/// </summary>
public static class Tails
{
    /// <summary>P(X >= x) of a chi-square variable: Q(df/2, x/2), the upper regularised incomplete gamma function.</summary>
    /// <param name="x">The statistic, 0 or more.</param>
    /// <param name="degreesOfFreedom">At least 1; with 0 the variable is always 0.</param>
    public static double ChiSquare(double x, double degreesOfFreedom)
    {
        if (x <= 0) return 1;
        return degreesOfFreedom <= 0 ? 0 : SpecialFunctions.GammaUpperRegularized(degreesOfFreedom / 2, x / 2);
    }

    /// <summary>P(X >= x) of an F variable: I_{d2/(d2 + d1 x)}(d2/2, d1/2).</summary>
    /// <param name="x">The statistic, 0 or more; infinity gives 0.</param>
    /// <param name="numerator">Numerator degrees of freedom, above 0.</param>
    /// <param name="denominator">Denominator degrees of freedom, above 0.</param>
    public static double F(double x, double numerator, double denominator)
    {
        if (x <= 0) return 1;
        if (double.IsPositiveInfinity(x)) return 0;
        return SpecialFunctions.BetaRegularized(denominator / 2, numerator / 2, denominator / (denominator + (numerator * x)));
    }

    /// <summary>P(|T| >= |t|) of Student's t.</summary>
    /// <param name="t">The statistic.</param>
    /// <param name="degreesOfFreedom">Above 0.</param>
    public static double StudentTwoSided(double t, double degreesOfFreedom) =>
        double.IsInfinity(t) ? 0 : SpecialFunctions.BetaRegularized(degreesOfFreedom / 2, 0.5, degreesOfFreedom / (degreesOfFreedom + (t * t)));

    /// <summary>The t that Student's t exceeds with a given chance.</summary>
    /// <param name="upperTail">Between 0 and 1.</param>
    /// <param name="degreesOfFreedom">Above 0.</param>
    public static double StudentQuantile(double upperTail, double degreesOfFreedom) =>
        -MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, degreesOfFreedom, upperTail);

    /// <summary>P(Z >= z) of a standard normal variable.</summary>
    /// <param name="z">Any number.</param>
    public static double Normal(double z) => 0.5 * SpecialFunctions.Erfc(z / Math.Sqrt(2));

    /// <summary>The z that a standard normal variable exceeds with a given chance.</summary>
    /// <param name="upperTail">Between 0 and 1.</param>
    public static double NormalQuantile(double upperTail) => Math.Sqrt(2) * SpecialFunctions.ErfcInv(2 * upperTail);

    /// <summary>The x that a chi-square variable exceeds with a given chance.</summary>
    /// <param name="upperTail">Between 0 and 1.</param>
    /// <param name="degreesOfFreedom">At least 1.</param>
    public static double ChiSquareQuantile(double upperTail, double degreesOfFreedom) =>
        MathNet.Numerics.Distributions.ChiSquared.InvCDF(degreesOfFreedom, 1 - upperTail);

    /// <summary>P(X >= successes) of a binomial variable, summed term by term, so exact to rounding.</summary>
    /// <param name="successes">Any whole number.</param>
    /// <param name="trials">0 or more.</param>
    /// <param name="chance">Between 0 and 1.</param>
    public static double BinomialAtLeast(long successes, long trials, double chance)
    {
        if (successes <= 0) return 1;
        if (successes > trials) return 0;
        return SpecialFunctions.BetaRegularized(successes, trials - successes + 1, chance);
    }

    /// <summary>P(X = successes) of a binomial variable.</summary>
    /// <param name="successes">0 to trials.</param>
    /// <param name="trials">0 or more.</param>
    /// <param name="chance">Between 0 and 1, both excluded.</param>
    public static double BinomialExactly(long successes, long trials, double chance)
    {
        var logarithm = SpecialFunctions.GammaLn(trials + 1.0) - SpecialFunctions.GammaLn(successes + 1.0) - SpecialFunctions.GammaLn(trials - successes + 1.0)
            + (successes * Math.Log(chance)) + ((trials - successes) * Math.Log(1 - chance));
        return Math.Exp(logarithm);
    }

    /// <summary>The logarithm of the gamma function: of n + 1 it is that of n factorial.</summary>
    /// <param name="x">Above 0.</param>
    public static double LogGamma(double x) => SpecialFunctions.GammaLn(x);

    /// <summary>The x below which a beta variable lies with a given chance.</summary>
    /// <param name="lowerTail">Between 0 and 1.</param>
    /// <param name="a">First shape, above 0.</param>
    /// <param name="b">Second shape, above 0.</param>
    public static double BetaQuantile(double lowerTail, double a, double b) =>
        MathNet.Numerics.Distributions.Beta.InvCDF(a, b, lowerTail);
}
