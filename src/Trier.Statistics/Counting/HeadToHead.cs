using System.Collections.Immutable;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.Counting;

/// <summary>Who was placed above whom, over the ballots that served both.</summary>
public sealed class HeadToHead
{
    private readonly long[] _above;

    private HeadToHead(int items, long[] above)
    {
        Items = items;
        _above = above;
    }

    /// <summary>How many items.</summary>
    public int Items { get; }

    /// <summary>Counts every ordered pair.</summary>
    /// <param name="set">The ballots.</param>
    public static HeadToHead Of(RankingSet set)
    {
        ArgumentNullException.ThrowIfNull(set);
        var k = set.Items;
        var above = new long[k * k];
        var ties = new long[k * k];
        foreach (var (ranking, count, _) in set.Rows)
        {
            var doubled = ranking.DoubledMidranks().AsSpan();
            for (var i = 0; i < k; i++)
            {
                if (doubled[i] == 0) continue;
                for (var j = 0; j < k; j++)
                {
                    if (i == j || doubled[j] == 0) continue;
                    if (doubled[i] < doubled[j]) above[(i * k) + j] += count;
                    else if (doubled[i] == doubled[j]) ties[(i * k) + j] += count;
                }
            }
        }

        return new HeadToHead(k, above) { TieCounts = ties };
    }

    private long[] TieCounts { get; init; } = [];

    /// <summary>Ballots that place i above j.</summary>
    /// <param name="i">An item.</param>
    /// <param name="j">Another.</param>
    public long Above(int i, int j) => _above[(i * Items) + j];

    /// <summary>Ballots that tie i and j.</summary>
    /// <param name="i">An item.</param>
    /// <param name="j">Another.</param>
    public long Ties(int i, int j) => TieCounts[(i * Items) + j];

    /// <summary>Wins of i over j with ties half, times two, so that it stays whole.</summary>
    /// <param name="i">An item.</param>
    /// <param name="j">Another.</param>
    public long DoubledWins(int i, int j) => (2 * Above(i, j)) + Ties(i, j);

    /// <summary>The item placed above each other by more ballots than place it below; null where there is none. Source: [Condorcet1785].</summary>
    public int? CondorcetWinner => Sweeping(1);

    /// <summary>The item placed below each other by more ballots than place it above; null where there is none.</summary>
    public int? CondorcetLoser => Sweeping(-1);

    /// <summary>Per item pairwise victories minus defeats. Source: [Copeland1951].</summary>
    public ImmutableArray<int> CopelandScores =>
        [.. Enumerable.Range(0, Items).Select(i => Enumerable.Range(0, Items).Sum(j => i == j ? 0 : Math.Sign(Above(i, j) - Above(j, i))))];

    /// <summary>The items with the highest Copeland score.</summary>
    public ImmutableArray<int> CopelandWinners
    {
        get
        {
            var scores = CopelandScores;
            var best = scores.Max();
            return [.. Enumerable.Range(0, Items).Where(i => scores[i] == best)];
        }
    }

    private int? Sweeping(int sign)
    {
        if (Items < 2) return null;
        for (var i = 0; i < Items; i++)
        {
            var all = true;
            for (var j = 0; j < Items && all; j++) all = i == j || Math.Sign(Above(i, j) - Above(j, i)) == sign;
            if (all) return i;
        }

        return null;
    }
}
