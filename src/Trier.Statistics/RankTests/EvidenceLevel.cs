using System.Collections.Immutable;

namespace Trier.Statistics.RankTests;

/// <summary>
/// How much one count of ballots shows, on one ladder: 1 a shared lead, 2 luck, 3 a hint, 4 the items are not alike but the best is open, 5 the leader is shown over some, 6 over all. The highest level whose rule
/// holds. Where nobody prefers anything, levels 4 to 6 are reached in about 5 % of panels. Level 6 needs no adjustment: every one of its tests must reject, an intersection-union test.
/// Source of the last: [Berger1982].
/// </summary>
public static class EvidenceLevel
{
    /// <summary>Up to this p a single lead is a hint.</summary>
    public const double Hint = 0.20;

    /// <summary>Reads the level.</summary>
    /// <param name="gateP">The p of <see cref="Gate"/>; with two items the p of their one pair.</param>
    /// <param name="leaders">The best items by the planned rule; more than one where they tie.</param>
    /// <param name="pairs">All pairs of <see cref="Pairs.Compare"/>; may be empty where the p is above <see cref="Pairs.Level"/>, where no pair matters.</param>
    /// <returns>The level, 1 to 6, and the items the single leader is shown over by the step-down, rising.</returns>
    public static (int Level, ImmutableArray<int> Over) Of(double gateP, ImmutableArray<int> leaders, ImmutableArray<PairResult> pairs)
    {
        ImmutableArray<int> over = leaders.Length == 1 ? [.. pairs.Where(pair => pair.Shown && pair.Better == leaders[0]).Select(pair => pair.Worse).Order()] : [];
        if (gateP > Pairs.Level)
        {
            if (leaders.Length != 1) return (1, over);
            return (gateP > Hint ? 2 : 3, over);
        }

        if (leaders.Length != 1) return (4, over);
        var own = pairs.Where(pair => pair.Better == leaders[0] || pair.Worse == leaders[0]);
        if (own.All(pair => pair.Better == leaders[0] && pair.P <= Pairs.Level)) return (6, over);
        return (over.IsEmpty ? 4 : 5, over);
    }
}
