using System.Collections.Immutable;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.Counting;

/// <summary>
/// An additive rule: each ballot gives each served item a score, and scores are added. Scores are whole numbers over one
/// common denominator, so that ties between totals are exact.
/// </summary>
public abstract record CountingRule
{
    private CountingRule()
    {
    }

    /// <summary>The average place: the score is the mid-place among the served items; lower is better.</summary>
    public static CountingRule AveragePlace { get; } = new AveragePlaceRule();

    /// <summary>Firsts: 1 for the first-placed item, 1/m to each of m that share the first place; higher is better.</summary>
    public static CountingRule Firsts { get; } = new FirstsRule();

    /// <summary>True where a low total is the better one.</summary>
    public abstract bool LowerIsBetter { get; }

    /// <summary>
    /// Place points: <paramref name="weights"/>[0] to the first place, and so on; tied items share the points of the places they
    /// cover. On a ballot of m of the k items a score is the mean of the points the item would get were the missing items slotted in at
    /// random; for equal steps this is the points at place r (k+1)/(m+1). Higher is better.
    /// </summary>
    /// <param name="weights">One whole number per place, never rising.</param>
    /// <exception cref="ArgumentException">The weights rise somewhere.</exception>
    public static CountingRule PlacePoints(ImmutableArray<int> weights)
    {
        for (var i = 1; i < weights.Length; i++)
        {
            if (weights[i] > weights[i - 1]) throw new ArgumentException($"The weight of place {i + 1} is above that of place {i}.", nameof(weights));
        }

        return new PlacePointsRule(weights);
    }

    /// <summary>Place points k-1, k-2, ..., 0 (Borda's count).</summary>
    /// <param name="items">The number k of items.</param>
    public static CountingRule Borda(int items) => PlacePoints([.. Enumerable.Range(0, items).Select(place => items - 1 - place)]);

    /// <summary>A number by which every score of this rule on such ballots is whole.</summary>
    internal abstract long Denominator(RankingSet set);

    /// <summary>Fills the scores times the denominator; null where not served.</summary>
    internal abstract void Score(Ranking ranking, long denominator, Span<long?> scores);

    /// <summary>True where scores are places, whose scale grows with the length of the ballot.</summary>
    internal virtual bool IsPlaces => false;

    private static ImmutableArray<ImmutableArray<int>> GroupsOf(Ranking ranking) =>
        ranking.Below.IsEmpty ? ranking.Groups : ranking.Groups.Add(ranking.Below);

    private static long LeastCommonMultiple(long a, long b) => a / Gcd.Of(a, b) * b;

    private static long MultipleOfGroupSizes(RankingSet set)
    {
        var multiple = 1L;
        foreach (var row in set.Rows)
        {
            foreach (var group in GroupsOf(row.Ranking)) multiple = LeastCommonMultiple(multiple, group.Length);
        }

        return multiple;
    }

    private sealed record AveragePlaceRule : CountingRule
    {
        public override bool LowerIsBetter => true;

        internal override bool IsPlaces => true;

        internal override long Denominator(RankingSet set) => 2;

        internal override void Score(Ranking ranking, long denominator, Span<long?> scores)
        {
            var doubled = ranking.DoubledMidranks();
            for (var item = 0; item < doubled.Length; item++) scores[item] = doubled[item] == 0 ? null : doubled[item];
        }
    }

    private sealed record FirstsRule : CountingRule
    {
        public override bool LowerIsBetter => false;

        internal override long Denominator(RankingSet set) => MultipleOfGroupSizes(set);

        internal override void Score(Ranking ranking, long denominator, Span<long?> scores)
        {
            var first = true;
            scores.Clear();
            foreach (var group in GroupsOf(ranking))
            {
                foreach (var item in group) scores[item] = first ? denominator / group.Length : 0;
                first = false;
            }
        }
    }

    private sealed record PlacePointsRule(ImmutableArray<int> Weights) : CountingRule
    {
        public override bool LowerIsBetter => false;

        public bool Equals(PlacePointsRule? other) => other is not null && Weights.AsSpan().SequenceEqual(other.Weights.AsSpan());

        public override int GetHashCode() => Weights.Aggregate(17, HashCode.Combine);

        internal override long Denominator(RankingSet set)
        {
            if (Weights.Length != set.Items)
                throw new ArgumentException($"There are {Weights.Length} weights for {set.Items} items.", nameof(set));

            // A ballot needs its own arrangements times its group sizes; the two multiples are found apart, for their product over all lengths overflows.
            var arrangements = 1L;
            foreach (var length in set.Rows.Select(row => row.Ranking.Served.Length).Distinct())
                arrangements = LeastCommonMultiple(arrangements, Binomials.Choose(set.Items, length));
            return arrangements * MultipleOfGroupSizes(set);
        }

        internal override void Score(Ranking ranking, long denominator, Span<long?> scores)
        {
            scores.Clear();
            var served = ranking.Served.Length;
            var unit = denominator / Binomials.Choose(ranking.Items, served);
            var place = 0;
            foreach (var group in GroupsOf(ranking))
            {
                var points = 0L;
                for (var i = 0; i < group.Length; i++) points += PointsTimesArrangements(++place, served, ranking.Items);
                foreach (var item in group) scores[item] = points * (unit / group.Length);
            }
        }

        // Place r of m lands at place s of k in C(s-1, r-1) C(k-s, m-r) of the C(k, m) ways to slot the others in.
        private long PointsTimesArrangements(int place, int served, int items)
        {
            var sum = 0L;
            for (var slot = place; slot <= items - served + place; slot++)
                sum += Binomials.Choose(slot - 1, place - 1) * Binomials.Choose(items - slot, served - place) * Weights[slot - 1];
            return sum;
        }
    }
}
