using System.Collections.Immutable;

namespace Trier.Statistics.Rankings;

/// <summary>One row of a <see cref="RankingSet"/>.</summary>
/// <param name="Ranking">The order.</param>
/// <param name="Count">How many judges gave it, at least 1.</param>
/// <param name="Voice">
/// Null where each of them speaks for himself. Rows with the same number are one voice: judges who compared notes, or one
/// person heard twice. A row with a voice counts one ballot.
/// </param>
public sealed record RankingRow(Ranking Ranking, long Count = 1, int? Voice = null);

/// <summary>Ballots over the same items, with counts and with the voices they belong to. Immutable; may be empty of rows.</summary>
public sealed class RankingSet
{
    private RankingSet(int items, ImmutableArray<RankingRow> rows)
    {
        Items = items;
        Rows = rows;
        var voices = new HashSet<int>();
        foreach (var row in rows)
        {
            Ballots += row.Count;
            if (row.Voice is { } voice) voices.Add(voice);
            else Voices += row.Count;
        }

        Voices += voices.Count;
    }

    /// <summary>How many items every ranking is about; at least 1.</summary>
    public int Items { get; }

    /// <summary>The rows in the order given.</summary>
    public ImmutableArray<RankingRow> Rows { get; }

    /// <summary>The sum of the rows' counts.</summary>
    public long Ballots { get; }

    /// <summary>How many independent voices stand behind the ballots.</summary>
    public long Voices { get; }

    /// <summary>True where every item was served on every ballot.</summary>
    public bool IsComplete => Rows.All(row => row.Ranking.IsComplete);

    /// <summary>The complete ballots alone.</summary>
    public RankingSet Complete => Where(row => row.Ranking.IsComplete);

    /// <summary>Makes a set, checking every row.</summary>
    /// <param name="items">How many items, at least 1.</param>
    /// <param name="rows">The rows, each about that many items.</param>
    /// <exception cref="ArgumentException">A row is about another number of items, counts less than one, or has a voice and counts more than one.</exception>
    public static RankingSet Create(int items, IEnumerable<RankingRow> rows)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(items, 1);
        ArgumentNullException.ThrowIfNull(rows);
        var kept = rows.ToImmutableArray();
        for (var i = 0; i < kept.Length; i++)
        {
            var row = kept[i];
            if (row.Ranking.Items != items)
                throw new ArgumentException($"Row {i} is about {row.Ranking.Items} items, the set about {items}.", nameof(rows));
            if (row.Count < 1) throw new ArgumentException($"Row {i} counts {row.Count} ballots: at least 1 is needed.", nameof(rows));
            if (row.Voice is not null && row.Count != 1)
                throw new ArgumentException($"Row {i} belongs to a joined voice and counts {row.Count} ballots: write it once per ballot.", nameof(rows));
        }

        return new RankingSet(items, kept);
    }

    /// <summary>Makes a set in which every ranking counts once and every judge speaks for himself.</summary>
    /// <param name="rankings">At least one ranking, all about the same number of items.</param>
    /// <exception cref="ArgumentException">There is no ranking, or they differ in their number of items.</exception>
    public static RankingSet Create(IEnumerable<Ranking> rankings)
    {
        ArgumentNullException.ThrowIfNull(rankings);
        var rows = rankings.Select(ranking => new RankingRow(ranking)).ToImmutableArray();
        if (rows.IsEmpty) throw new ArgumentException("There is no ranking: say how many items there are.", nameof(rankings));
        return Create(rows[0].Ranking.Items, rows);
    }

    /// <summary>The same ballots about fewer items; item <c>keepItems[i]</c> becomes item i. Ballots left with nothing served are dropped.</summary>
    /// <param name="keepItems">Different items, at least one.</param>
    /// <exception cref="ArgumentException">An item is out of range or named twice.</exception>
    public RankingSet Restrict(ReadOnlySpan<int> keepItems)
    {
        var rows = ImmutableArray.CreateBuilder<RankingRow>(Rows.Length);
        foreach (var row in Rows)
        {
            var ranking = row.Ranking.Restrict(keepItems);
            if (!ranking.Served.IsEmpty) rows.Add(row with { Ranking = ranking });
        }

        return new RankingSet(keepItems.Length, rows.DrainToImmutable());
    }

    /// <summary>The rows that a condition keeps.</summary>
    /// <param name="keep">True for a row that stays.</param>
    public RankingSet Where(Func<RankingRow, bool> keep)
    {
        ArgumentNullException.ThrowIfNull(keep);
        return new RankingSet(Items, [.. Rows.Where(keep)]);
    }
}
