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

    /// <summary>Each that differs from the weights the tally shows; none for fewer than three wheels, where all say the same.</summary>
    public static ImmutableArray<Planned.PlacePoints> For(Verdict verdict)
    {
        var wheels = verdict.Wheels.Length;
        if (wheels < FewestWheels || verdict.Tally.IsEmpty) return [];
        Func<int, decimal>[] shapes = [place => wheels - 1 - place, place => (wheels - place) * (wheels - 1 - place) / 2m, place => Math.Max(0, 2 - place), place => place < wheels - 1 ? 1 : 0];
        var seen = new HashSet<string>(StringComparer.Ordinal) { string.Join('-', verdict.Tally[0].Weights) };
        return [.. shapes.Select(shape => Enumerable.Range(0, wheels).Select(shape).ToImmutableArray()).Where(weights => seen.Add(string.Join('-', weights))).Select(weights => new Planned.PlacePoints(weights))];
    }
}
