using System.Collections.Immutable;

namespace Trier.Statistics.Ratings;

/// <summary>One rating, or several that are alike.</summary>
/// <param name="Covariates">What the rating may depend on, one finite number each; a factor of g levels is g - 1 columns of 0 and 1.</param>
/// <param name="Rating">The rating; only the order of ratings matters.</param>
/// <param name="Count">How many, above 0.</param>
public sealed record RatingRow(ImmutableArray<double> Covariates, int Rating, double Count = 1);

/// <summary>Ratings gathered by what they may depend on. Ratings that nobody gave take no part. Immutable.</summary>
public sealed class RatingTable
{
    private RatingTable(ImmutableArray<int> ratings, int covariates, double count, (double[] Covariates, double[] Counts)[] patterns)
    {
        Ratings = ratings;
        Covariates = covariates;
        Count = count;
        Patterns = patterns;
    }

    /// <summary>The ratings given, rising.</summary>
    public ImmutableArray<int> Ratings { get; }

    /// <summary>How many covariates.</summary>
    public int Covariates { get; }

    /// <summary>How many ratings were given.</summary>
    public double Count { get; }

    internal (double[] Covariates, double[] Counts)[] Patterns { get; }

    /// <summary>Gathers rows.</summary>
    /// <param name="rows">The rows, all with the same number of covariates.</param>
    /// <exception cref="ArgumentException">Rows differ in their number of covariates, a covariate is not finite, or a count is not above 0; the message names the row.</exception>
    public static RatingTable Create(IEnumerable<RatingRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var given = rows.ToArray();
        var covariates = given.Length == 0 ? 0 : given[0].Covariates.Length;
        var ratings = given.Select(row => row.Rating).Distinct().Order().ToImmutableArray();
        var at = new Dictionary<ImmutableArray<double>, double[]>(new SameNumbers());
        var patterns = new List<(double[] Covariates, double[] Counts)>();
        var count = 0.0;
        for (var r = 0; r < given.Length; r++)
        {
            var row = given[r];
            if (row.Covariates.Length != covariates || row.Covariates.Any(value => !double.IsFinite(value)))
                throw new ArgumentException($"Row {r} does not have {covariates} finite covariates.", nameof(rows));
            if (!(row.Count > 0) || !double.IsFinite(row.Count)) throw new ArgumentException($"Row {r} does not count more than nothing.", nameof(rows));
            if (!at.TryGetValue(row.Covariates, out var counts))
            {
                at.Add(row.Covariates, counts = new double[ratings.Length]);
                patterns.Add(([.. row.Covariates], counts));
            }

            counts[ratings.BinarySearch(row.Rating)] += row.Count;
            count += row.Count;
        }

        return new RatingTable(ratings, covariates, count, [.. patterns]);
    }

    private sealed class SameNumbers : IEqualityComparer<ImmutableArray<double>>
    {
        public bool Equals(ImmutableArray<double> x, ImmutableArray<double> y) => x.AsSpan().SequenceEqual(y.AsSpan());

        public int GetHashCode(ImmutableArray<double> obj)
        {
            var hash = default(HashCode);
            foreach (var value in obj) hash.Add(value);
            return hash.ToHashCode();
        }
    }
}
