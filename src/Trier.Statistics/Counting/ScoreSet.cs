using System.Collections.Immutable;
using Trier.Statistics.Rankings;

namespace Trier.Statistics.Counting;

/// <summary>One ballot's scores.</summary>
/// <param name="Scores">Per item the score times the set's denominator, null where not served.</param>
/// <param name="Count">How many ballots, at least 1.</param>
/// <param name="Voice">The joined voice it belongs to, or null; see <see cref="RankingRow"/>.</param>
public sealed record ScoreRow(ImmutableArray<long?> Scores, long Count, int? Voice);

/// <summary>Ballots turned into scores by an additive rule. Scores are whole numbers over one denominator. Immutable.</summary>
public sealed class ScoreSet
{
    private const int LargestDenominator = 2520;

    private ScoreSet(int items, long denominator, bool lowerIsBetter, bool isPlaces, ImmutableArray<ScoreRow> rows)
    {
        Items = items;
        Denominator = denominator;
        LowerIsBetter = lowerIsBetter;
        IsPlaces = isPlaces;
        Rows = rows;
    }

    /// <summary>How many items.</summary>
    public int Items { get; }

    /// <summary>What the stored scores are divided by.</summary>
    public long Denominator { get; }

    /// <summary>True where a low total is the better one.</summary>
    public bool LowerIsBetter { get; }

    /// <summary>The ballots that served two items or more.</summary>
    public ImmutableArray<ScoreRow> Rows { get; }

    /// <summary>True where every ballot kept here was served every item.</summary>
    public bool IsComplete => Rows.All(row => row.Scores.All(score => score.HasValue));

    /// <summary>The number of ballots kept.</summary>
    public long Ballots => Rows.Sum(row => row.Count);

    internal bool IsPlaces { get; }

    /// <summary>Scores rankings by a rule; ballots with fewer than two served items are left out.</summary>
    /// <param name="set">The ballots.</param>
    /// <param name="rule">The rule.</param>
    public static ScoreSet FromRankings(RankingSet set, CountingRule rule)
    {
        ArgumentNullException.ThrowIfNull(set);
        ArgumentNullException.ThrowIfNull(rule);
        var denominator = rule.Denominator(set);
        var rows = ImmutableArray.CreateBuilder<ScoreRow>(set.Rows.Length);
        var scores = new long?[set.Items];
        foreach (var row in set.Rows)
        {
            if (row.Ranking.Served.Length < 2) continue;
            rule.Score(row.Ranking, denominator, scores);
            rows.Add(new ScoreRow([.. scores], row.Count, row.Voice));
        }

        return new ScoreSet(set.Items, denominator, rule.LowerIsBetter, rule.IsPlaces, rows.DrainToImmutable());
    }

    /// <summary>Takes ratings, such as a liking from 1 to 9, as scores; higher is better.</summary>
    /// <param name="items">How many items.</param>
    /// <param name="ratings">Per ballot one rating per item (null where there is none) and the voice it belongs to.</param>
    /// <exception cref="ArgumentException">A row has another length, or a rating is not a whole number of some fraction down to 1/2520.</exception>
    public static ScoreSet FromRatings(int items, IEnumerable<(ImmutableArray<double?> Ratings, int? Voice)> ratings)
    {
        ArgumentNullException.ThrowIfNull(ratings);
        var given = ratings.ToArray();
        foreach (var (row, _) in given)
        {
            if (row.Length != items) throw new ArgumentException($"A row has {row.Length} ratings for {items} items.", nameof(ratings));
        }

        var denominator = DenominatorOf(given.SelectMany(row => row.Ratings).OfType<double>());
        var rows = given
            .Where(row => row.Ratings.Count(rating => rating.HasValue) >= 2)
            .Select(row => new ScoreRow([.. row.Ratings.Select(rating => rating is { } r ? (long?)Math.Round(r * denominator) : null)], 1, row.Voice));
        return new ScoreSet(items, denominator, false, false, [.. rows]);
    }

    /// <summary>The same with one ballot fewer in a row.</summary>
    /// <param name="row">The row's number.</param>
    public ScoreSet Without(int row)
    {
        var fewer = Rows[row].Count == 1 ? Rows.RemoveAt(row) : Rows.SetItem(row, Rows[row] with { Count = Rows[row].Count - 1 });
        return new ScoreSet(Items, Denominator, LowerIsBetter, IsPlaces, fewer);
    }

    /// <summary>The same without some rows.</summary>
    /// <param name="leaves">True for the number of a row that goes.</param>
    public ScoreSet Without(Func<int, bool> leaves)
    {
        ArgumentNullException.ThrowIfNull(leaves);
        return new ScoreSet(Items, Denominator, LowerIsBetter, IsPlaces, [.. Rows.Where((_, row) => !leaves(row))]);
    }

    /// <summary>The ballots drawn, each as often as its row was; for redrawing.</summary>
    /// <param name="rows">Numbers of rows of this set, each of which counts one ballot; a number may stand several times.</param>
    public ScoreSet Redrawn(ImmutableArray<int> rows)
    {
        var times = new long[Rows.Length];
        foreach (var row in rows) times[row]++;
        return new ScoreSet(Items, Denominator, LowerIsBetter, IsPlaces, [.. Rows.Select((row, i) => row with { Count = times[i] }).Where(row => row.Count > 0)]);
    }

    private static long DenominatorOf(IEnumerable<double> ratings)
    {
        var multiple = 1L;
        foreach (var rating in ratings)
        {
            var d = 1;
            while (d <= LargestDenominator && Math.Abs((rating * d) - Math.Round(rating * d)) > 1e-9) d++;
            multiple = multiple / Gcd.Of(multiple, d) * d;
            if (d > LargestDenominator || multiple > LargestDenominator)
                throw new ArgumentException($"The rating {rating.ToString("R", System.Globalization.CultureInfo.InvariantCulture)} is not a fraction with a denominator up to {LargestDenominator}.", nameof(ratings));
        }

        return multiple;
    }
}
