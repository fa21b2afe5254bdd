using System.Collections.Immutable;

namespace Trier.Trials.Plans;

/// <summary>
/// The rule that decides who leads, fixed at sealing. Only additive rules may be planned: each ballot gives each wheel a
/// score and the scores are added.
/// </summary>
public abstract record CountingRule
{
    private CountingRule()
    {
    }

    /// <summary>Lowest average place leads. The default: it uses the whole order.</summary>
    public sealed record AveragePlace : CountingRule;

    /// <summary>Most first places lead; a shared first counts its share.</summary>
    public sealed record Firsts : CountingRule;

    /// <summary>Most place points lead.</summary>
    /// <param name="Weights">Points of the first place, second place and so on; falling, one for each wheel.</param>
    public sealed record PlacePoints(ImmutableArray<decimal> Weights) : CountingRule
    {
        /// <summary>Whether weights can tell a first place from a last: two or more, none higher than the one before, and not all the same.</summary>
        /// <param name="weights">The weights.</param>
        public static bool Fall(ImmutableArray<decimal> weights) =>
            weights.Length > 1 && weights[0] > weights[^1] && weights.Zip(weights.Skip(1)).All(pair => pair.First >= pair.Second);
    }

    /// <summary>Highest average liking leads.</summary>
    public sealed record MeanLiking : CountingRule;

    /// <summary>The default rule.</summary>
    public static CountingRule Default { get; } = new AveragePlace();
}
