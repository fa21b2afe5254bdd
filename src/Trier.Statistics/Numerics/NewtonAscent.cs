namespace Trier.Statistics;

/// <summary>A log-likelihood with its derivatives at the point last evaluated.</summary>
internal interface ILikelihood
{
    /// <summary>Gradient at the last point, one entry a parameter.</summary>
    double[] Gradient { get; }

    /// <summary>Minus the second derivatives, or a positive definite stand-in for them.</summary>
    double[,] Information { get; }

    /// <summary>Log-likelihood at a point; not finite where it does not exist, and such points are not stepped to.</summary>
    double Evaluate(ReadOnlySpan<double> point);
}

/// <summary>Where an ascent ended.</summary>
/// <param name="Solved">True where every equation holds within the tolerance.</param>
/// <param name="Log">Log-likelihood there.</param>
/// <param name="Steps">Newton steps taken.</param>
/// <param name="Residual">The largest gradient entry in size.</param>
internal readonly record struct Ascent(bool Solved, double Log, int Steps, double Residual);

/// <summary>Newton's method with halved steps; where the information is not positive definite its diagonal is raised until it is.</summary>
internal static class NewtonAscent
{
    private const int MostSteps = 100;
    private const double SmallestStep = 1e-8;

    /// <summary>Climbs from a point, which is moved.</summary>
    /// <param name="model">The likelihood.</param>
    /// <param name="point">Start, and end.</param>
    /// <param name="tolerance">The equations are solved where no gradient entry is larger.</param>
    public static Ascent Climb(ILikelihood model, double[] point, double tolerance)
    {
        var log = model.Evaluate(point);
        var before = new double[point.Length];
        var move = new double[point.Length];
        for (var step = 0; step < MostSteps; step++)
        {
            var residual = Largest(model.Gradient);
            if (residual <= tolerance) return new Ascent(true, log, step, residual);
            if (Lower(model.Information) is not { } lower) break;
            model.Gradient.CopyTo(move, 0);
            SymmetricMatrix.Solve(lower, move);
            point.CopyTo(before, 0);
            var size = 1.0;
            while (true)
            {
                for (var i = 0; i < point.Length; i++) point[i] = before[i] + (size * move[i]);
                var next = model.Evaluate(point);

                // Near the maximum the gain is below rounding: a step is then taken on trust and the residual decides.
                if ((double.IsFinite(next) && next >= log - (1e-12 * Math.Abs(log))) || size < SmallestStep)
                {
                    log = next;
                    break;
                }

                size /= 2;
            }
        }

        var left = Largest(model.Gradient);
        return new Ascent(left <= tolerance, log, MostSteps, left);
    }

    private static double Largest(double[] values)
    {
        var largest = 0.0;
        foreach (var value in values)
        {
            // Not-a-number must not pass for small.
            if (!(Math.Abs(value) <= largest)) largest = Math.Abs(value);
        }

        return largest;
    }

    private static double[,]? Lower(double[,] information)
    {
        if (SymmetricMatrix.Factor(information) is { } lower) return lower;
        var n = information.GetLength(0);
        var scale = 0.0;
        for (var i = 0; i < n; i++) scale = Math.Max(scale, Math.Abs(information[i, i]));
        if (!double.IsFinite(scale) || scale == 0) return null;
        for (var ridge = 1e-3 * scale; ridge < 1e6 * scale; ridge *= 10)
        {
            var raised = (double[,])information.Clone();
            for (var i = 0; i < n; i++) raised[i, i] += ridge;
            if (SymmetricMatrix.Factor(raised) is { } found) return found;
        }

        return null;
    }
}
