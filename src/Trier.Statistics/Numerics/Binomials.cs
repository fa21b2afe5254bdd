namespace Trier.Statistics;

/// <summary>Binomial coefficients as whole numbers; overflow is an error.</summary>
internal static class Binomials
{
    public static long Choose(int n, int r)
    {
        if (r < 0 || r > n) return 0;
        r = Math.Min(r, n - r);
        var result = 1L;
        for (var i = 1; i <= r; i++) result = checked(result * (n - r + i)) / i;
        return result;
    }

    /// <summary>The coefficient as a double: no overflow, accurate to a few units in the last place.</summary>
    public static double ChooseReal(int n, int r)
    {
        if (r < 0 || r > n) return 0;
        r = Math.Min(r, n - r);
        var result = 1.0;
        for (var i = 1; i <= r; i++) result = result * (n - r + i) / i;
        return Math.Round(result);
    }
}

/// <summary>Greatest common divisor of whole numbers.</summary>
internal static class Gcd
{
    public static long Of(long a, long b)
    {
        a = Math.Abs(a);
        b = Math.Abs(b);
        while (b != 0) (a, b) = (b, a % b);
        return a;
    }
}
