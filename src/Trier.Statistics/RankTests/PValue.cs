namespace Trier.Statistics.RankTests;

/// <summary>How a p-value was found.</summary>
public enum TestMethod
{
    /// <summary>Every arrangement counted, ties included; right to rounding.</summary>
    Exact,

    /// <summary>A stated number of seeded random arrangements: p = (1 + hits)/(1 + draws).</summary>
    Permutation,

    /// <summary>A large-sample approximation.</summary>
    ChiSquare,
}

/// <summary>A p-value and where it comes from.</summary>
/// <param name="Value">Between 0 and 1.</param>
/// <param name="Method">How it was found.</param>
/// <param name="Error">The Monte Carlo standard error; 0 unless the method is <see cref="TestMethod.Permutation"/>.</param>
/// <param name="Draws">How many arrangements were drawn; 0 unless the method is <see cref="TestMethod.Permutation"/>.</param>
public sealed record PValue(double Value, TestMethod Method, double Error = 0, long Draws = 0)
{
    internal static PValue Exact(double value) => new(Math.Clamp(value, 0, 1), TestMethod.Exact);

    internal static PValue Drawn(long hits, long draws)
    {
        var p = (1.0 + hits) / (1.0 + draws);
        return new PValue(p, TestMethod.Permutation, Math.Sqrt(p * (1 - p) / draws), draws);
    }
}

/// <summary>
/// How much work a test may do, in counts and never in time. The exact way is taken where its work formula stays within
/// <paramref name="ExactWork"/>; otherwise arrangements are drawn.
/// </summary>
/// <param name="ExactWork">The most elementary steps of an exact calculation.</param>
/// <param name="Draws">Random arrangements of a first pass; fewer for a crowd of thousands, as many as <paramref name="LargestDrawWork"/> allows.</param>
/// <param name="CloseDraws">Random arrangements where the first pass ends within 3 errors of 0.05 or 0.20, unless they exceed <paramref name="LargestDrawWork"/>.</param>
/// <param name="LargestDrawWork">The most ballots times draws, a ballot of a general table counted 25 times. Where fewer than 999 draws are left the chi-square approximation is given, and named.</param>
public sealed record Effort(double ExactWork, int Draws, int CloseDraws, double LargestDrawWork)
{
    /// <summary>6e7 exact steps (about a quarter of a second), 99,999 draws, 999,999 where it is close; 10,000 partial ballots in some seconds.</summary>
    public static Effort Usual { get; } = new(6e7, 99_999, 999_999, 5e8);

    /// <summary>No exact calculation: draws only, for comparison.</summary>
    public static Effort DrawsOnly { get; } = Usual with { ExactWork = 0 };
}
