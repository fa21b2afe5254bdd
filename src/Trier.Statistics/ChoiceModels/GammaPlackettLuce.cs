using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.ChoiceModels;

/// <summary>
/// Bayesian Plackett-Luce with independent gamma worths, by Gibbs: given the worths, each choice from a set of summed worth W has a latent exponential time of rate W; given the times, worth i is gamma with shape a + (times chosen) and rate 1 + (summed times of the sets it
/// stood in). The total worth, which the ballots do not touch, is redrawn each round, and orders inside tied groups are drawn from their chances. For two items the share w_1/(w_1 + w_2) is then exactly
/// beta(a + wins, a + losses). A verdict uses <see cref="BayesianPlackettLuce"/>, whose prior learns how far apart items stand.
/// Source: [CaronDoucet2012].
/// </summary>
public static class GammaPlackettLuce
{
    /// <summary>Samples the posterior.</summary>
    /// <param name="set">Ballots over at least 2 items; every ballot counts by itself.</param>
    /// <param name="seed">Where chance comes from.</param>
    /// <param name="shape">a, above 0: 1 takes every set of shares as equally likely beforehand; larger values hold the worths together.</param>
    /// <param name="effort">How long; <see cref="SamplingEffort.Usual"/> if null.</param>
    /// <returns>Refused for one item, or a tie of more than 12 items above others. Look at <see cref="WorthPosterior.Mixed"/>.</returns>
    public static Answer<WorthPosterior> Sample(RankingSet set, Seed seed, double shape = 1, SamplingEffort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(set);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(shape);
        effort ??= SamplingEffort.Usual;
        if (set.Items < 2) return new Refusal(RefusalKind.TooFewItems, "There is one item: nothing can be compared.");
        var choices = ChoiceCounts.Of(set);
        if (!choices.Stands) return choices.Refusal!;
        var draws = new WorthDraws[effort.Chains];
        Parallel.For(0, effort.Chains, i => draws[i] = new GammaChain(choices.Value, shape, seed.Child(i).Generator()).Run(effort.Discarded, effort.Kept));
        return WorthDraws.Summary(draws, set.Items, Math.Sqrt(Trigamma(shape)));
    }

    /// <summary>The variance of the log of a gamma number: by steps up to 8 and the asymptotic series from there.</summary>
    private static double Trigamma(double x)
    {
        var sum = 0.0;
        for (; x < 8; x++) sum += 1 / (x * x);
        var y = 1 / (x * x);
        return sum + (1 / x) + (y / 2) + (y / x * ((1.0 / 6) - (y * ((1.0 / 30) - (y / 42)))));
    }
}

/// <summary>One Gibbs chain over worths.</summary>
internal sealed class GammaChain
{
    private const double Smallest = 1e-300;

    private readonly ChoiceCounts _choices;
    private readonly double _shape;
    private readonly Generator _generator;
    private readonly double[] _worths;
    private readonly double[] _times;
    private readonly double[] _chosen;
    private readonly double[] _subset = new double[1 << ChoiceCounts.LargestTie];

    public GammaChain(ChoiceCounts choices, double shape, Generator generator)
    {
        _choices = choices;
        _shape = shape;
        _generator = generator;
        _worths = new double[choices.Items];
        _times = new double[choices.Items];
        _chosen = new double[choices.Items];
        for (var i = 0; i < _worths.Length; i++) _worths[i] = generator.NextGamma(shape);
    }

    public WorthDraws Run(int discarded, int kept)
    {
        var draws = new WorthDraws(_worths.Length, kept);
        var logs = new double[_worths.Length];
        for (var step = -discarded; step < kept; step++)
        {
            Array.Clear(_times);
            _choices.Chosen.CopyTo(_chosen, 0);
            DrawTimes();
            foreach (var tie in _choices.Ties) DrawTied(tie);
            var total = 0.0;
            for (var i = 0; i < _worths.Length; i++)
            {
                _worths[i] = _generator.NextGamma(_shape + _chosen[i]) / (1 + _times[i]);
                total += _worths[i];
            }

            var scale = _generator.NextGamma(_shape * _worths.Length) / total;
            for (var i = 0; i < _worths.Length; i++)
            {
                // A gamma of tiny shape can fall to 0; its log must not.
                _worths[i] = Math.Max(_worths[i] * scale, Smallest);
                logs[i] = Math.Log(_worths[i]);
            }

            if (step >= 0) draws.Keep(step, logs);
        }

        return draws;
    }

    private void DrawTimes()
    {
        var (members, starts, counts) = _choices.Sets;
        for (var s = 0; s < counts.Length; s++)
        {
            var set = members.AsSpan(starts[s]..starts[s + 1]);
            var rate = 0.0;
            foreach (var i in set) rate += _worths[i];
            var time = _generator.NextGamma(counts[s]) / rate;
            foreach (var i in set) _times[i] += time;
        }

        foreach (var (order, stages, count) in _choices.Orders)
        {
            var rate = 0.0;
            foreach (var i in order) rate += _worths[i];
            for (var place = 0; place < stages; place++)
            {
                var time = _generator.NextGamma(count) / rate;
                for (var later = place; later < order.Length; later++) _times[order[later]] += time;
                rate = Math.Max(rate - _worths[order[place]], Smallest);
            }
        }
    }

    /// <summary>Draws each ballot's order inside a tied group from last to first: the last of S is i with chance f(S less i) q_i(S less i)/f(S).</summary>
    private void DrawTied(TiedChoice tie)
    {
        var m = tie.Group.Length;
        var full = (1 << m) - 1;
        var rest = 0.0;
        foreach (var item in tie.Rest) rest += _worths[item];
        double Left(int placed)
        {
            var left = rest;
            for (var a = 0; a < m; a++)
            {
                if ((placed & (1 << a)) == 0) left += _worths[tie.Group[a]];
            }

            return left;
        }

        _subset[0] = 1;
        for (var set = 1; set <= full; set++)
        {
            _subset[set] = 0;
            for (var a = 0; a < m; a++)
            {
                if ((set & (1 << a)) != 0) _subset[set] += _subset[set & ~(1 << a)] * _worths[tie.Group[a]] / Left(set & ~(1 << a));
            }
        }

        for (var ballot = 0; ballot < tie.Count; ballot++)
        {
            for (var set = full; set != 0;)
            {
                var level = _generator.NextDouble() * _subset[set];
                var last = -1;
                for (var a = 0; a < m && level >= 0; a++)
                {
                    if ((set & (1 << a)) == 0) continue;
                    last = a;
                    level -= _subset[set & ~(1 << a)] * _worths[tie.Group[a]] / Left(set & ~(1 << a));
                }

                set &= ~(1 << last);
                var time = _generator.NextExponential() / Left(set);
                foreach (var item in tie.Rest) _times[item] += time;
                for (var a = 0; a < m; a++)
                {
                    if ((set & (1 << a)) == 0) _times[tie.Group[a]] += time;
                }
            }
        }

        foreach (var item in tie.Group) _chosen[item] += tie.Count;
    }
}
