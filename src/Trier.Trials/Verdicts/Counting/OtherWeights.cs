using System.Collections.Immutable;
using Planned = Trier.Trials.Plans.CountingRule;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>
/// Place points that somebody will ask about: even steps, steps that grow towards the first place, only the two best, all but the last. The choice of
/// these four is ours, no source.
/// </summary>
internal static class OtherWeights
{
    private const int FewestWheels = 3;

    /// <summary>Each whose steps differ from those of the weights the tally shows; none for fewer than three wheels, where all say the same.</summary>
    public static ImmutableArray<Planned.PlacePoints> For(Verdict verdict)
    {
        var wheels = verdict.Wheels.Length;
        if (wheels < FewestWheels || verdict.Tally.IsEmpty) return [];
        Func<int, decimal>[] shapes = [place => wheels - 1 - place, place => (wheels - place) * (wheels - 1 - place) / 2m, place => Math.Max(0, 2 - place), place => place < wheels - 1 ? 1 : 0];
        var seen = new List<ImmutableArray<decimal>> { verdict.Tally[0].Weights };
        foreach (var shape in shapes)
        {
            var weights = Enumerable.Range(0, wheels).Select(shape).ToImmutableArray();
            if (!seen.Exists(other => SameSteps(weights, other))) seen.Add(weights);
        }

        return [.. seen.Skip(1).Select(weights => new Planned.PlacePoints(weights))];
    }

    // Twice the points, or a point more for every place, name the same leader. Multiplied across, for a quotient may not be exact.
    private static bool SameSteps(ImmutableArray<decimal> one, ImmutableArray<decimal> other) =>
        one.Zip(other).All(pair => (pair.First - one[^1]) * (other[0] - other[^1]) == (pair.Second - other[^1]) * (one[0] - one[^1]));
}
