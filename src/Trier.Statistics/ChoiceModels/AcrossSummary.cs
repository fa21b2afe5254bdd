using System.Collections.Immutable;
using Trier.Statistics.Distributions;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.ChoiceModels;

/// <summary>What several chains say together.</summary>
internal static class AcrossSummary
{
    private const int FewestMakes = 2;

    public static AcrossPosterior Of(AcrossModel model, double[][][] chains, Generator generator)
    {
        var kept = chains[0][0].Length;
        var worst = new Mixing();
        foreach (var chain in chains) Centre(model, chain, kept);
        ImmutableArray<int> able = [.. Enumerable.Range(0, model.Recipes).Where(recipe => model.MakesPerRecipe[recipe] >= FewestMakes)];
        var (best, next) = able.Length < 2 ? ([], []) : Leading(model, chains, able, kept, generator, worst);
        var recipes = ImmutableArray.CreateBuilder<RecipeWorth>();
        for (var recipe = 0; recipe < model.Recipes; recipe++)
        {
            var (mean, interval) = worst.Tell([.. chains.Select(chain => chain[recipe])]);
            var at = able.IndexOf(recipe);
            recipes.Add(new(model.WheelsPerRecipe[recipe], model.MakesPerRecipe[recipe], mean, interval, best.Length > 0 && at >= 0 ? best[at] : null, next.Length > 0 && at >= 0 ? next[at] : null));
        }

        var wheels = ImmutableArray.CreateBuilder<WheelWorth>();
        for (var wheel = 0; wheel < model.Wheels; wheel++)
        {
            var (mean, interval) = worst.Tell([.. chains.Select(chain => chain[model.RecipeOf[wheel]].Zip(chain[model.FirstWheel + wheel], (recipe, own) => recipe + own).ToArray())]);
            wheels.Add(new(model.RecipeOf[wheel], mean, interval));
        }

        (double Mean, Interval Interval)? age = model.AgesDiffer ? worst.Tell([.. chains.Select(chain => chain[model.Slope])]) : null;
        var spread = worst.Tell([.. chains.Select(chain => chain[^1])]);
        return new(recipes.ToImmutable(), wheels.ToImmutable(), age?.Mean, age?.Interval, spread.Mean, spread.Interval, worst.EffectiveSize, worst.RHat, chains.Length * kept);
    }

    private static void Centre(AcrossModel model, double[][] chain, int kept)
    {
        for (var step = 0; step < kept; step++)
        {
            var mean = 0.0;
            for (var recipe = 0; recipe < model.Recipes; recipe++) mean += chain[recipe][step] / model.Recipes;
            for (var recipe = 0; recipe < model.Recipes; recipe++) chain[recipe][step] -= mean;
        }
    }

    private static (double[] Best, double[] Next) Leading(AcrossModel model, double[][][] chains, ImmutableArray<int> able, int kept, Generator generator, Mixing worst)
    {
        var best = able.Select(_ => chains.Select(_ => new double[kept]).ToArray()).ToArray();
        var next = new double[able.Length];
        Span<double> fresh = stackalloc double[able.Length];
        for (var c = 0; c < chains.Length; c++)
        {
            for (var step = 0; step < kept; step++)
            {
                int leader = 0, first = 0;
                for (var i = 0; i < able.Length; i++)
                {
                    fresh[i] = chains[c][able[i]][step] + (chains[c][^1][step] * generator.NextNormal());
                    if (chains[c][able[i]][step] > chains[c][able[leader]][step]) leader = i;
                    if (fresh[i] > fresh[first]) first = i;
                }

                best[leader][c][step] = 1;
                next[first] += 1.0 / (chains.Length * kept);
            }
        }

        return ([.. best.Select(indicator => worst.Share(indicator))], next);
    }

    /// <summary>Keeps the worst mixing of all that is told.</summary>
    private sealed class Mixing
    {
        public double EffectiveSize { get; private set; } = double.PositiveInfinity;

        public double RHat { get; private set; } = 1;

        public (double Mean, Interval Interval) Tell(double[][] chains)
        {
            Note(chains);
            var all = chains.SelectMany(draws => draws).ToArray();
            Array.Sort(all);
            return (all.Average(), new Interval(all[(int)(0.05 * all.Length)], all[(int)(0.95 * all.Length)], 0.90));
        }

        public double Share(double[][] indicators)
        {
            Note(indicators);
            return indicators.Average(draws => draws.Average());
        }

        private void Note(double[][] chains)
        {
            if (MixingDiagnostics.IsConstant(chains)) return;
            EffectiveSize = Math.Min(EffectiveSize, MixingDiagnostics.EffectiveSize(chains));
            RHat = Math.Max(RHat, MixingDiagnostics.SplitRHat(chains));
        }
    }
}
