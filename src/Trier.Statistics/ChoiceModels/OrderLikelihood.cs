using Trier.Statistics.Rankings;

namespace Trier.Statistics.ChoiceModels;

/// <summary>
/// The Plackett-Luce likelihood of a set of ballots. From the items still to be placed the next one is i with chance w_i over the sum of their worths. A tied
/// group counts as the sum over its orders: f(S) = sum over i in S of f(S less i) w_i / (W - w(S less i)), by subsets. The last group of a ballot has chance 1.
/// </summary>
internal sealed class OrderLikelihood
{
    public const int LargestTie = 14;

    private readonly List<(int[][] Groups, double Weight)> _ballots = [];
    private readonly double[] _worths;
    private readonly double[] _subset;

    private OrderLikelihood(int items, int largestTie)
    {
        Items = items;
        _worths = new double[items];
        _subset = new double[1 << largestTie];
    }

    public int Items { get; }

    /// <summary>Compiles ballots; members of a joined voice weigh one over its size. Refused where a tie is too large to sum over.</summary>
    public static Answer<OrderLikelihood> Of(RankingSet set)
    {
        var sizes = set.Rows.Where(row => row.Voice is not null).GroupBy(row => row.Voice!.Value).ToDictionary(voice => voice.Key, voice => voice.Count());
        var weights = new Dictionary<Ranking, double>();
        foreach (var row in set.Rows)
        {
            if (row.Ranking.IsAllTied) continue;
            var weight = row.Voice is { } voice ? 1.0 / sizes[voice] : row.Count;
            weights[row.Ranking] = weights.GetValueOrDefault(row.Ranking) + weight;
        }

        // The last group is never summed over: its chance is 1.
        var compiled = weights.Select(pair => (Groups: Stages(pair.Key), Weight: pair.Value)).ToList();
        var largest = compiled.SelectMany(ballot => ballot.Groups.SkipLast(1)).Select(group => group.Length).DefaultIfEmpty(1).Max();
        if (largest > LargestTie) return new Refusal(RefusalKind.TooManyItems, $"A ballot ties {largest} items above others: at most {LargestTie} can be summed over.");
        var likelihood = new OrderLikelihood(set.Items, largest);
        likelihood._ballots.AddRange(compiled);
        return likelihood;
    }

    /// <summary>A copy with scratch space of its own, for another thread.</summary>
    public OrderLikelihood Fork()
    {
        var fork = new OrderLikelihood(Items, int.Log2(_subset.Length));
        fork._ballots.AddRange(_ballots);
        return fork;
    }

    public double Log(ReadOnlySpan<double> logWorths)
    {
        var highest = double.NegativeInfinity;
        foreach (var value in logWorths) highest = Math.Max(highest, value);
        for (var i = 0; i < Items; i++) _worths[i] = Math.Exp(logWorths[i] - highest);
        var sum = 0.0;
        foreach (var (groups, weight) in _ballots)
        {
            var rest = 0.0;
            foreach (var item in groups[^1]) rest += _worths[item];
            var product = 1.0;
            for (var g = groups.Length - 2; g >= 0; g--)
            {
                var group = groups[g];
                if (group.Length == 1)
                {
                    rest += _worths[group[0]];
                    product *= _worths[group[0]] / rest;
                }
                else
                {
                    foreach (var item in group) rest += _worths[item];
                    product *= Tied(group, rest);
                }

                if (product >= 1e-200) continue;
                sum += weight * Math.Log(product);
                product = 1;
            }

            sum += weight * Math.Log(product);
        }

        return sum;
    }

    private double Tied(int[] group, double rest)
    {
        _subset[0] = 1;
        for (var set = 1; set < 1 << group.Length; set++)
        {
            var within = 0.0;
            for (var i = 0; i < group.Length; i++)
            {
                if ((set & (1 << i)) != 0) within += _worths[group[i]];
            }

            var chance = 0.0;
            for (var i = 0; i < group.Length; i++)
            {
                if ((set & (1 << i)) == 0) continue;
                var worth = _worths[group[i]];
                chance += _subset[set & ~(1 << i)] * worth / (rest - within + worth);
            }

            _subset[set] = chance;
        }

        return _subset[(1 << group.Length) - 1];
    }

    private static int[][] Stages(Ranking ranking)
    {
        var groups = ranking.Groups.Select(group => group.ToArray()).ToList();
        if (!ranking.Below.IsEmpty) groups.Add([.. ranking.Below]);
        return [.. groups];
    }
}
