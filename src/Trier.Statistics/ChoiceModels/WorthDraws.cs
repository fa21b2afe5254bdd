using System.Collections.Immutable;
using Trier.Statistics.Distributions;

namespace Trier.Statistics.ChoiceModels;

/// <summary>The log-worths one chain kept.</summary>
internal sealed class WorthDraws(int items, int kept)
{
    private readonly double[][] _draws = [.. Enumerable.Range(0, items).Select(_ => new double[kept])];

    public int Kept => kept;

    public void Keep(int step, double[] logWorths)
    {
        for (var i = 0; i < logWorths.Length; i++) _draws[i][step] = logWorths[i];
    }

    /// <summary>What several chains say together.</summary>
    /// <param name="chains">At least two, of the same length.</param>
    /// <param name="items">How many items.</param>
    /// <param name="spread">The mean spread to report.</param>
    public static WorthPosterior Summary(WorthDraws[] chains, int items, double spread)
    {
        foreach (var chain in chains) chain.Centre();
        var favourite = new double[items];
        var share = new double[items];
        var mean = new double[items];
        var intervals = new Interval[items];
        var effective = double.PositiveInfinity;
        var rHat = 1.0;
        for (var item = 0; item < items; item++)
        {
            double[][] centred = [.. chains.Select(chain => chain._draws[item])];
            double[][] best = [.. chains.Select(chain => chain.IsBest(item))];
            var all = centred.SelectMany(draws => draws).ToArray();
            Array.Sort(all);
            mean[item] = all.Average();
            intervals[item] = new Interval(all[(int)(0.05 * all.Length)], all[(int)(0.95 * all.Length)], 0.90);
            favourite[item] = best.Average(draws => draws.Average());
            share[item] = chains.Average(chain => chain.Share(item));
            foreach (var quantity in new[] { centred, best })
            {
                if (MixingDiagnostics.IsConstant(quantity)) continue;
                effective = Math.Min(effective, MixingDiagnostics.EffectiveSize(quantity));
                rHat = Math.Max(rHat, MixingDiagnostics.SplitRHat(quantity));
            }
        }

        ImmutableArray<Interval> found = [.. intervals];
        return new WorthPosterior([.. favourite], [.. share], [.. mean], found, spread, effective, rHat, chains.Sum(chain => chain.Kept));
    }

    private void Centre()
    {
        for (var step = 0; step < kept; step++)
        {
            var mean = 0.0;
            foreach (var draws in _draws) mean += draws[step] / items;
            foreach (var draws in _draws) draws[step] -= mean;
        }
    }

    private double[] IsBest(int item)
    {
        var best = new double[kept];
        for (var step = 0; step < kept; step++)
        {
            var value = _draws[item][step];
            best[step] = 1;
            foreach (var draws in _draws)
            {
                if (draws[step] > value) best[step] = 0;
            }
        }

        return best;
    }

    private double Share(int item)
    {
        var sum = 0.0;
        for (var step = 0; step < kept; step++)
        {
            var odds = 0.0;
            foreach (var draws in _draws) odds += Math.Exp(draws[step] - _draws[item][step]);
            sum += 1 / odds;
        }

        return sum / kept;
    }
}
