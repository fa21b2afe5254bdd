namespace Trier.Statistics.ChoiceModels;

/// <summary>How well chains mixed. Sources: split R-hat [GelmanEtAl2013]; effective size by initial positive pairs [Geyer1992].</summary>
internal static class MixingDiagnostics
{
    private const int FewestToTell = 200;

    public static bool IsConstant(double[][] chains) => chains.All(chain => chain.All(value => value.Equals(chains[0][0])));

    public static double SplitRHat(double[][] chains)
    {
        var halves = chains.SelectMany(chain => new[] { chain[..(chain.Length / 2)], chain[(chain.Length / 2)..] }).ToArray();
        var n = (double)halves[0].Length;
        var within = halves.Average(Variance);
        var between = n * Variance([.. halves.Select(half => half.Average())]);
        return within == 0 ? double.PositiveInfinity : Math.Sqrt((((n - 1) / n * within) + (between / n)) / within);
    }

    public static double EffectiveSize(double[][] chains)
    {
        var n = chains[0].Length;
        var means = chains.Select(chain => chain.Average()).ToArray();
        var within = chains.Average(Variance);
        var pooled = ((n - 1.0) / n * within) + (chains.Length > 1 ? Variance(means) : 0);
        var sum = 0.0;
        var least = double.PositiveInfinity;
        for (var lag = 0; lag + 1 < n; lag += 2)
        {
            var pair = Correlation(chains, means, within, pooled, lag) + Correlation(chains, means, within, pooled, lag + 1);
            if (pair <= 0) break;
            least = Math.Min(least, pair);
            sum += least;
            // Far too few already: following a slow decay to its end would cost the square of the draws and change no answer.
            if (sum > chains.Length * (double)n / (2 * FewestToTell)) break;
        }

        return Math.Min(chains.Length * (double)n, chains.Length * n / Math.Max((2 * sum) - 1, 1e-9));
    }

    private static double Correlation(double[][] chains, double[] means, double within, double pooled, int lag)
    {
        if (lag == 0) return 1;
        var covariance = 0.0;
        for (var c = 0; c < chains.Length; c++)
        {
            var sum = 0.0;
            var chain = chains[c];
            for (var t = lag; t < chain.Length; t++) sum += (chain[t] - means[c]) * (chain[t - lag] - means[c]);
            covariance += sum / chain.Length / chains.Length;
        }

        return 1 - ((within - covariance) / pooled);
    }

    private static double Variance(double[] values)
    {
        var mean = values.Average();
        return values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1);
    }
}
