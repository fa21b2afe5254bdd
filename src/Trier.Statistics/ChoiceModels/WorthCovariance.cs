using System.Collections.Immutable;

namespace Trier.Statistics.ChoiceModels;

/// <summary>The covariance of estimated log-worths, the first item's held at 0. Immutable.</summary>
public sealed class WorthCovariance
{
    private readonly double[,] _matrix;

    internal WorthCovariance(double[,] withoutFirst)
    {
        Items = withoutFirst.GetLength(0) + 1;
        _matrix = withoutFirst;
    }

    /// <summary>How many items.</summary>
    public int Items { get; }

    /// <summary>The covariance of two log-worths; 0 where one is the first.</summary>
    /// <param name="first">0 to Items - 1.</param>
    /// <param name="second">0 to Items - 1.</param>
    public double this[int first, int second] => first == 0 || second == 0 ? 0 : _matrix[first - 1, second - 1];

    /// <summary>The standard error of a difference of two log-worths.</summary>
    /// <param name="first">0 to Items - 1.</param>
    /// <param name="second">0 to Items - 1.</param>
    public double ErrorOfDifference(int first, int second) => Math.Sqrt(Math.Max(0, this[first, first] + this[second, second] - (2 * this[first, second])));

    /// <summary>
    /// Quasi-variances: one number an item, so that q_i + q_j stands for the variance of the difference of i and j whichever item is the reference. They make the sum over pairs of (log(q_i + q_j) -
    /// log v_ij)^2 least. Source: [FirthDeMenezes2004].
    /// </summary>
    /// <returns>Refused for two items, where they are not determined, and where no numbers above 0 were found.</returns>
    public Answer<QuasiVarianceResult> QuasiVariances() => QuasiVariance.Of(this);
}

/// <summary>Quasi-variances and how well they stand for the whole covariance.</summary>
/// <param name="Values">One an item; those of very unequal designs can be below 0.</param>
/// <param name="WorstTooSmall">The worst relative error of a difference's standard error on the small side; 0 or below.</param>
/// <param name="WorstTooLarge">The same on the large side; 0 or above.</param>
public sealed record QuasiVarianceResult(ImmutableArray<double> Values, double WorstTooSmall, double WorstTooLarge);

/// <summary>Least squares on the log scale by Gauss and Newton with halved steps.</summary>
internal static class QuasiVariance
{
    private const int MostSteps = 200;

    public static Answer<QuasiVarianceResult> Of(WorthCovariance covariance)
    {
        var k = covariance.Items;
        if (k < 3) return new Refusal(RefusalKind.TooFewItems, "Quasi-variances need three items: with two only their sum is determined.");
        var logs = new double[k, k];
        var values = new double[k];
        for (var i = 0; i < k; i++)
        {
            for (var j = 0; j < k; j++)
            {
                if (i == j) continue;
                logs[i, j] = 2 * Math.Log(covariance.ErrorOfDifference(i, j));
                values[i] += Math.Exp(logs[i, j]) / (2 * (k - 1));
            }
        }

        var loss = Loss(logs, values);
        for (var step = 0; step < MostSteps; step++)
        {
            var (move, largest) = Step(logs, values);
            if (move is null) break;
            if (largest < 1e-13 * values.Max()) return Result(covariance, values);
            var size = 1.0;
            double[] next;
            while (true)
            {
                next = [.. values.Zip(move, (value, change) => value + (size * change))];
                var found = Loss(logs, next);
                if (found <= loss * (1 + 1e-12) || size < 1e-10)
                {
                    loss = found;
                    break;
                }

                size /= 2;
            }

            values = next;
        }

        return new Refusal(RefusalKind.NotConverged, "The quasi-variances were not found.");
    }

    private static double Loss(double[,] logs, double[] values)
    {
        var loss = 0.0;
        for (var i = 1; i < values.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (values[i] + values[j] <= 0) return double.PositiveInfinity;
                var error = Math.Log(values[i] + values[j]) - logs[i, j];
                loss += error * error;
            }
        }

        return loss;
    }

    private static (double[]? Move, double Largest) Step(double[,] logs, double[] values)
    {
        var k = values.Length;
        var normal = new double[k, k];
        var move = new double[k];
        for (var i = 1; i < k; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var slope = 1 / (values[i] + values[j]);
                var error = logs[i, j] + Math.Log(slope);
                normal[i, i] += slope * slope;
                normal[j, j] += slope * slope;
                normal[i, j] += slope * slope;
                normal[j, i] += slope * slope;
                move[i] += slope * error;
                move[j] += slope * error;
            }
        }

        if (SymmetricMatrix.Factor(normal) is not { } lower) return (null, 0);
        SymmetricMatrix.Solve(lower, move);
        return (move, move.Max(Math.Abs));
    }

    private static QuasiVarianceResult Result(WorthCovariance covariance, double[] values)
    {
        double small = 0, large = 0;
        for (var i = 1; i < values.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var error = (Math.Sqrt(values[i] + values[j]) / covariance.ErrorOfDifference(i, j)) - 1;
                small = Math.Min(small, error);
                large = Math.Max(large, error);
            }
        }

        return new QuasiVarianceResult([.. values], small, large);
    }
}
