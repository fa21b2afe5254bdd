namespace Trier.Dairy.Acidity;

/// <summary>Quantiles of Student's t for few degrees of freedom, by bisection on the exact distribution (Abramowitz and Stegun 26.7.3 and 26.7.4, from memory; checked in the tests).</summary>
internal static class StudentQuantile
{
    public const double Normal90 = 1.2815515655446004;

    /// <summary>The value that t exceeds with this probability.</summary>
    public static double Upper(double tail, int degrees)
    {
        var (low, high) = (0.0, 1e4);
        while (high - low > 1e-10 * (1 + low))
        {
            var middle = (low + high) / 2;
            if ((1 - Central(middle, degrees)) / 2 > tail) low = middle;
            else high = middle;
        }

        return low;
    }

    private static double Central(double t, int degrees)
    {
        var angle = Math.Atan(t / Math.Sqrt(degrees));
        var (sine, cosine) = Math.SinCos(angle);
        if (degrees == 1) return 2 * angle / Math.PI;
        var odd = degrees % 2 == 1;
        var term = odd ? cosine : 1.0;
        var sum = term;
        for (var k = odd ? 3 : 2; k < degrees; k += 2)
        {
            term *= cosine * cosine * (k - 1) / k;
            sum += term;
        }

        return odd ? 2 / Math.PI * (angle + (sine * sum)) : sine * sum;
    }
}
