using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.Tests.Reference;

/// <summary>
/// The posterior over several tastings the slow way, sharing no code with the sampler but the generator: draws from the prior, each weighed by the chance it gives to the orders. Good for a few ballots.
/// </summary>
internal static class ImportanceAcross
{
    /// <summary>Weighted means, each with its standard error: chance that recipe 0 is best, its centred log-worth, the slope, tau.</summary>
    public static (double Mean, double Error)[] Of(Served[] served, (int[] Order, double Weight)[] orders, int recipes, int wheels, int draws, Generator generator)
    {
        var mean = served.Average(item => item.AgeDays!.Value);
        var weights = new double[draws];
        var values = new double[4][];
        for (var v = 0; v < 4; v++) values[v] = new double[draws];
        var worth = new double[served.Length];
        for (var d = 0; d < draws; d++)
        {
            var s = 0.8 * Math.Abs(generator.NextNormal());
            var tau = 0.5 * Math.Abs(generator.NextNormal());
            var recipe = Enumerable.Range(0, recipes).Select(_ => s * generator.NextNormal()).ToArray();
            var slope = 0.25 * generator.NextNormal();
            var own = Enumerable.Range(0, wheels).Select(_ => tau * generator.NextNormal()).ToArray();
            for (var i = 0; i < served.Length; i++) worth[i] = Math.Exp(recipe[served[i].Recipe] + (slope * (served[i].AgeDays!.Value - mean) / 30) + own[served[i].Wheel]);
            var log = 0.0;
            foreach (var (order, weight) in orders)
            {
                for (var place = 0; place < order.Length - 1; place++)
                {
                    var left = 0.0;
                    for (var later = place; later < order.Length; later++) left += worth[order[later]];
                    log += weight * Math.Log(worth[order[place]] / left);
                }
            }

            weights[d] = Math.Exp(log);
            values[0][d] = recipe[0] >= recipe.Max() ? 1 : 0;
            values[1][d] = recipe[0] - recipe.Average();
            values[2][d] = slope;
            values[3][d] = tau;
        }

        var sum = weights.Sum();
        return [.. values.Select(value =>
        {
            var average = value.Zip(weights, (x, w) => x * w).Sum() / sum;
            var error = Math.Sqrt(value.Zip(weights, (x, w) => w * w * (x - average) * (x - average)).Sum()) / sum;
            return (average, error);
        })];
    }
}
