namespace Trier.Dairy.Tests.Reference;

/// <summary>
/// Slow and plain: diffusion into a cylinder on a grid of rings, explicit steps, half the height by symmetry. Shares no code with the series.
/// </summary>
public static class CylinderByFiniteDifferences
{
    public static double Uptake(double radius, double height, double diffusivity, double seconds, double step)
    {
        var rings = (int)Math.Round(radius / step);
        var layers = (int)Math.Round(height / 2 / step);
        var now = new double[rings, layers];
        var next = new double[rings, layers];
        var steps = (int)Math.Ceiling(seconds * diffusivity / (0.15 * step * step));
        var number = diffusivity * seconds / steps / (step * step);
        for (var s = 0; s < steps; s++)
        {
            for (var i = 0; i < rings; i++)
            {
                for (var j = 0; j < layers; j++)
                {
                    var here = now[i, j];
                    var outward = (i + 1) / (i + 0.5) * (i == rings - 1 ? 2 * (1 - here) : now[i + 1, j] - here);
                    var inward = i == 0 ? 0 : i / (i + 0.5) * (now[i - 1, j] - here);
                    var up = j == layers - 1 ? 2 * (1 - here) : now[i, j + 1] - here;
                    var down = j == 0 ? 0 : now[i, j - 1] - here;
                    next[i, j] = here + (number * (outward + inward + up + down));
                }
            }

            (now, next) = (next, now);
        }

        var (sum, weight) = (0.0, 0.0);
        for (var i = 0; i < rings; i++)
        {
            for (var j = 0; j < layers; j++)
            {
                sum += (i + 0.5) * now[i, j];
                weight += i + 0.5;
            }
        }

        return sum / weight;
    }
}
