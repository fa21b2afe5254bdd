using Trier.Dairy.Quantities;

namespace Trier.Dairy.Brine;

/// <summary>Diffusion into (or out of) a finite cylinder whose surface is held at one value from the start.</summary>
/// <remarks>
/// E = 1 - Fs Fc; Fs = sum 8/pi^2/(2k+1)^2 exp(-((2k+1) pi/2)^2 D t/(H/2)^2); Fc = sum 4/z_n^2 exp(-z_n^2 D t/R^2), z_n the zeros of J0.
/// At short times the exact short-time forms are used, as the series converges slowly there. Source [Crank1975]; checked against a
/// finite-difference solution in the tests. This is mathematics: the domain of salting is held by <see cref="BriningTime"/>.
/// </remarks>
public static class FiniteCylinder
{
    private const int ZeroCount = 220;
    private const double ShortSlab = 0.02;
    private const double ShortCylinder = 1e-3;

    /// <summary>Zeros of J0; the first five as tabulated, the rest by McMahon's expansion (Abramowitz and Stegun 9.5.12, from memory), good to 1e-10.</summary>
    private static readonly double[] Zeros = [.. Enumerable.Range(1, ZeroCount).Select(ZeroOfJ0)];

    /// <summary>The part of the final uptake reached at a time, 0 to 1.</summary>
    /// <param name="size">The wheel.</param>
    /// <param name="diffusivity">D, above 0.</param>
    /// <param name="time">Time, zero or more.</param>
    public static double Uptake(WheelSize size, Diffusivity diffusivity, TimeSpan time)
    {
        var spread = diffusivity.SquareMetresPerSecond * time.TotalSeconds;
        return 1 - ((1 - Slab(4 * spread / (size.Height.Metres * size.Height.Metres))) * (1 - Cylinder(4 * spread / (size.Diameter.Metres * size.Diameter.Metres))));
    }

    /// <summary>The time to reach a part of the final uptake.</summary>
    /// <param name="size">The wheel.</param>
    /// <param name="diffusivity">D, above 0.</param>
    /// <param name="uptake">Above 0, below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The uptake is not between 0 and 1.</exception>
    public static TimeSpan TimeFor(WheelSize size, Diffusivity diffusivity, double uptake)
    {
        if (uptake is not (> 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(uptake), uptake, "An uptake lies between 0 and 1.");
        var early = EarlyTimeFor(size, diffusivity, uptake).TotalSeconds;
        var (low, high) = (early / 16, early * 64);
        for (var step = 0; step < 200 && high - low > 1e-9 * high; step++)
        {
            var middle = Math.Sqrt(low * high);
            if (Uptake(size, diffusivity, TimeSpan.FromSeconds(middle)) < uptake) low = middle;
            else high = middle;
        }

        return TimeSpan.FromSeconds(Math.Sqrt(low * high));
    }

    /// <summary>The short-time form E = 2 (A/V) sqrt(D t/pi); overstates E by 5 to 10 % near E = 0.15.</summary>
    /// <param name="size">The wheel.</param>
    /// <param name="diffusivity">D.</param>
    /// <param name="time">Time.</param>
    public static double EarlyUptake(WheelSize size, Diffusivity diffusivity, TimeSpan time) =>
        2 / size.VolumeOverSurface.Metres * Math.Sqrt(diffusivity.SquareMetresPerSecond * time.TotalSeconds / Math.PI);

    /// <summary>t = (pi/4D) (E V/A)^2, the short-time form turned round.</summary>
    /// <param name="size">The wheel.</param>
    /// <param name="diffusivity">D.</param>
    /// <param name="uptake">E.</param>
    public static TimeSpan EarlyTimeFor(WheelSize size, Diffusivity diffusivity, double uptake)
    {
        var reach = uptake * size.VolumeOverSurface.Metres;
        return TimeSpan.FromSeconds(Math.PI / 4 / diffusivity.SquareMetresPerSecond * reach * reach);
    }

    /// <summary>Uptake of a slab at Fo = D t/(half thickness)^2.</summary>
    /// <param name="fourier">Fo, zero or more.</param>
    public static double Slab(double fourier)
    {
        if (fourier <= ShortSlab) return 2 * Math.Sqrt(fourier / Math.PI);
        var left = 0.0;
        for (var k = 0; k < 40; k++)
        {
            var odd = (2 * k) + 1;
            left += 8 / (Math.PI * Math.PI * odd * odd) * Math.Exp(-odd * odd * Math.PI * Math.PI / 4 * fourier);
        }

        return 1 - left;
    }

    /// <summary>Uptake of a long cylinder at Fo = D t/R^2.</summary>
    /// <param name="fourier">Fo, zero or more.</param>
    public static double Cylinder(double fourier)
    {
        if (fourier <= ShortCylinder)
        {
            var root = Math.Sqrt(fourier);
            return (4 / Math.Sqrt(Math.PI) * root) - fourier - (fourier * root / (3 * Math.Sqrt(Math.PI))) - (fourier * fourier / 8);
        }

        return 1 - Zeros.Sum(zero => 4 / (zero * zero) * Math.Exp(-zero * zero * fourier));
    }

    internal static double FirstZero => Zeros[0];

    private static double ZeroOfJ0(int n)
    {
        double[] tabulated = [2.4048255576957728, 5.5200781102863106, 8.6537279129110122, 11.791534439014281, 14.930917708487785];
        if (n <= tabulated.Length) return tabulated[n - 1];
        var beta = (n - 0.25) * Math.PI;
        var eight = 8 * beta;
        return beta + (1 / eight) - (124 / (3 * Math.Pow(eight, 3))) + (120928 / (15 * Math.Pow(eight, 5))) - (401743168 / (105 * Math.Pow(eight, 7)));
    }
}
