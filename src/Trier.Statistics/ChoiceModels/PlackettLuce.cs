using System.Collections.Immutable;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.ChoiceModels;

/// <summary>A maximum likelihood fit of the Plackett-Luce model.</summary>
/// <param name="LogWorths">Per item, the first item 0.</param>
/// <param name="StandardErrors">Per item of the difference to the first, from the observed information; the first 0.</param>
/// <param name="Worths">The worths, summing to 1.</param>
/// <param name="LogLikelihood">At the maximum.</param>
/// <param name="Rankings">Ballots that compared two items or more.</param>
/// <param name="Iterations">Newton steps taken.</param>
/// <param name="LargestResidual">The largest difference between how often an item was chosen and how often the fit expects it: how well the equations are solved.</param>
public sealed record PlackettLuceFit(
    ImmutableArray<double> LogWorths, ImmutableArray<double> StandardErrors, ImmutableArray<double> Worths,
    double LogLikelihood, double Rankings, int Iterations, double LargestResidual);

/// <summary>
/// Plackett-Luce by maximum likelihood: the next item is i with chance w_i over the sum of the worths left. With ballots of two items it is the Bradley-Terry
/// model. A finite estimate exists only where every split of the items has a win each way (Ford's condition); otherwise the fit is refused. Newton's method on the log-worths with halved
/// steps, from equal worths. Sources: [Luce1959], [Plackett1975]; existence [Hunter2004].
/// </summary>
public static class PlackettLuce
{
    private const int MostSteps = 100;
    private const double Solved = 1e-9;

    /// <summary>Fits the worths. A tie is taken only in a ballot's last place, where the items are not compared with each other.</summary>
    /// <param name="set">Ballots over at least 2 items; every ballot counts by itself.</param>
    /// <returns>Refused for ties above the last place, for disconnected or separated items, and where the equations are not solved.</returns>
    public static Answer<PlackettLuceFit> Fit(RankingSet set)
    {
        ArgumentNullException.ThrowIfNull(set);
        if (set.Items < 2) return new Refusal(RefusalKind.TooFewItems, "There is one item: nothing can be compared.");
        var ballots = new List<(int[] Order, int Stages, double Count)>();
        foreach (var (ranking, count, _) in set.Rows)
        {
            if (ranking.IsAllTied) continue;
            var groups = ranking.Below.IsEmpty ? ranking.Groups : ranking.Groups.Add(ranking.Below);
            if (groups.SkipLast(1).Any(group => group.Length > 1))
                return new Refusal(RefusalKind.WrongDesign, "A ballot ties items above its last place: this fit takes none.");
            ballots.Add(([.. groups.SelectMany(group => group)], groups.Length - 1, count));
        }

        if (Obstacle(set.Items, ballots) is { } obstacle) return obstacle;
        var model = new Equations(set.Items, ballots);
        var theta = new double[set.Items];
        var log = model.Evaluate(theta);
        for (var step = 0; step < MostSteps; step++)
        {
            if (model.Residual < Solved * Math.Max(1, set.Ballots)) return Result(model, theta, log, ballots.Sum(ballot => ballot.Count), step);
            var lower = SymmetricMatrix.Factor(model.Information);
            if (lower is null) break;
            var move = model.Gradient.AsSpan(1).ToArray();
            SymmetricMatrix.Solve(lower, move);
            var size = 1.0;
            var before = (double[])theta.Clone();
            while (true)
            {
                for (var i = 1; i < theta.Length; i++) theta[i] = before[i] + (size * move[i - 1]);
                var next = model.Evaluate(theta);

                // Near the maximum the gain is below rounding: a full step is then taken on trust and the residual decides.
                if (next >= log - (1e-12 * Math.Abs(log)) || size < 1e-8)
                {
                    log = next;
                    break;
                }

                size /= 2;
            }
        }

        return new Refusal(RefusalKind.NotConverged, "The likelihood equations were not solved.");
    }

    private static Answer<PlackettLuceFit> Result(Equations model, double[] theta, double log, double rankings, int steps)
    {
        var covariance = SymmetricMatrix.Factor(model.Information) is null ? null : SymmetricMatrix.Inverse(model.Information);
        if (covariance is null) return new Refusal(RefusalKind.NotConverged, "The information at the solution is singular.");
        var highest = theta.Max();
        var total = theta.Sum(value => Math.Exp(value - highest));
        return new PlackettLuceFit(
            [.. theta], [0, .. Enumerable.Range(0, theta.Length - 1).Select(i => Math.Sqrt(covariance[i, i]))],
            [.. theta.Select(value => Math.Exp(value - highest) / total)], log, rankings, steps, model.Residual);
    }

    /// <summary>Whether the items are linked, and each reaches each other along wins.</summary>
    private static Refusal? Obstacle(int items, List<(int[] Order, int Stages, double Count)> ballots)
    {
        var wins = new bool[items, items];
        foreach (var (order, stages, _) in ballots)
        {
            for (var s = 0; s < stages; s++)
            {
                for (var j = s + 1; j < order.Length; j++) wins[order[s], order[j]] = true;
            }
        }

        if (Reached(items, (a, b) => wins[a, b] || wins[b, a]) < items)
            return new Refusal(RefusalKind.Disconnected, "The items fall into pieces that no ballot compares.");
        return Reached(items, (a, b) => wins[a, b]) < items || Reached(items, (a, b) => wins[b, a]) < items
            ? new Refusal(RefusalKind.Separated, "Some items are never placed above some others, so no finite worths exist.")
            : null;
    }

    private static int Reached(int items, Func<int, int, bool> linked)
    {
        var seen = new bool[items];
        seen[0] = true;
        var reach = new Stack<int>([0]);
        while (reach.TryPop(out var a))
        {
            for (var b = 0; b < items; b++)
            {
                if (seen[b] || !linked(a, b)) continue;
                seen[b] = true;
                reach.Push(b);
            }
        }

        return seen.Count(value => value);
    }

    /// <summary>Log-likelihood, gradient and information at given log-worths.</summary>
    private sealed class Equations(int items, List<(int[] Order, int Stages, double Count)> ballots)
    {
        private readonly double[] _worths = new double[items];

        public double[] Gradient { get; } = new double[items];

        /// <summary>Without the first item's row and column.</summary>
        public double[,] Information { get; } = new double[items - 1, items - 1];

        public double Residual => Gradient.Max(Math.Abs);

        public double Evaluate(double[] theta)
        {
            Array.Clear(Gradient);
            Array.Clear(Information);
            var highest = theta.Max();
            for (var i = 0; i < items; i++) _worths[i] = Math.Exp(theta[i] - highest);
            var log = 0.0;
            foreach (var (order, stages, count) in ballots)
            {
                var rest = 0.0;
                for (var i = order.Length - 1; i >= stages; i--) rest += _worths[order[i]];
                for (var s = stages - 1; s >= 0; s--)
                {
                    rest += _worths[order[s]];
                    log += count * Math.Log(_worths[order[s]] / rest);
                    Gradient[order[s]] += count;
                    AddStage(order.AsSpan(s), rest, count);
                }
            }

            return log;
        }

        private void AddStage(ReadOnlySpan<int> left, double rest, double count)
        {
            foreach (var a in left)
            {
                var share = _worths[a] / rest;
                Gradient[a] -= count * share;
                if (a == 0) continue;
                Information[a - 1, a - 1] += count * share;
                foreach (var b in left)
                {
                    if (b != 0) Information[a - 1, b - 1] -= count * share * _worths[b] / rest;
                }
            }
        }
    }
}
