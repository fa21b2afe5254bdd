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
    public sealed record PlacePoints : CountingRule
    {
        /// <summary>The most points of a place, and the fewest below 0: sums of whole numbers carry what is finer or larger only so far.</summary>
        public const int Most = 1000;

        private const int Thousand = 1000;

        /// <param name="weights">Points of the first place, second place and so on; falling, one for each wheel.</param>
        /// <exception cref="ArgumentException">The count cannot carry them: see <see cref="Fault"/>.</exception>
        public PlacePoints(ImmutableArray<decimal> weights)
        {
            if (Fault(weights) is { } fault) throw new ArgumentException(fault, nameof(weights));
            Weights = weights;
        }

        /// <summary>Points of the first place, second place and so on, each a whole number of thousandths between -<see cref="Most"/> and <see cref="Most"/>.</summary>
        public ImmutableArray<decimal> Weights { get; }

        /// <summary>Why the count cannot carry weights, in one sentence; null where it can.</summary>
        /// <param name="weights">The weights.</param>
        public static string? Fault(ImmutableArray<decimal> weights) =>
            weights.Any(weight => Math.Abs(weight) > Most) ? $"A place has {Most} points at most." : weights.Any(weight => Cut(weight) != weight) ? "Points have three decimals at most." : null;

        /// <summary>
        /// Weights as plans were once stored before they had bounds, brought into them: what is too large is made smaller in the same ratios, and what is finer than a
        /// thousandth is cut, as the count always cut it.
        /// </summary>
        /// <param name="weights">The weights.</param>
        public static PlacePoints Stored(ImmutableArray<decimal> weights)
        {
            var largest = weights.IsEmpty ? 0 : weights.Max(Math.Abs);
            return new([.. weights.Select(weight => Cut(largest > Most ? weight / largest * Most : weight))]);
        }

        /// <summary>Whether weights can tell a first place from a last: two or more, none higher than the one before, and not all the same.</summary>
        /// <param name="weights">The weights.</param>
        public static bool Fall(ImmutableArray<decimal> weights) =>
            weights.Length > 1 && weights[0] > weights[^1] && weights.Zip(weights.Skip(1)).All(pair => pair.First >= pair.Second);

        private static decimal Cut(decimal weight) => decimal.Truncate(weight * Thousand) / Thousand;
    }

    /// <summary>Highest average liking leads.</summary>
    public sealed record MeanLiking : CountingRule;

    /// <summary>The default rule.</summary>
    public static CountingRule Default { get; } = new AveragePlace();
}
