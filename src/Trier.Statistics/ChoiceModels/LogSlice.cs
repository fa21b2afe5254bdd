using Trier.Statistics.Randomness;

namespace Trier.Statistics.ChoiceModels;

/// <summary>One slice step on the logarithm of a scale, stepping out by one. Source: [Neal2003].</summary>
internal static class LogSlice
{
    private const double Width = 1.0;

    /// <summary>Draws the next point.</summary>
    /// <param name="generator">Chance.</param>
    /// <param name="start">Where it stands.</param>
    /// <param name="floor">It goes no lower.</param>
    /// <param name="logDensity">Log density, up to a constant.</param>
    public static double Move(Generator generator, double start, double floor, Func<double, double> logDensity)
    {
        var level = logDensity(start) - generator.NextExponential();
        var low = start - (Width * generator.NextDouble());
        var high = low + Width;
        while (low > floor && logDensity(low) > level) low -= Width;
        low = Math.Max(low, floor);
        while (logDensity(high) > level) high += Width;
        while (true)
        {
            var point = low + ((high - low) * generator.NextDouble());
            if (logDensity(point) >= level) return point;
            if (point < start) low = point;
            else high = point;
        }
    }
}
