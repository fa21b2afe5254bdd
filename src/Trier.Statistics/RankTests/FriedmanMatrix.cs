using System.Collections.Immutable;
using Trier.Statistics.Distributions;

namespace Trier.Statistics.RankTests;

/// <summary>Friedman's statistic of a whole table of scores with its approximations, none of which a verdict uses in words.</summary>
/// <param name="Statistic">T1, corrected for ties.</param>
/// <param name="DegreesOfFreedom">Items - 1.</param>
/// <param name="ChiSquareP">The chi-square approximation.</param>
/// <param name="F">Iman and Davenport's F; infinite where all judges agree.</param>
/// <param name="FP">Its p.</param>
/// <param name="KendallW">T1/(n(k-1)).</param>
/// <param name="RankSums">Per item the sum of mid-places, place 1 the lowest score.</param>
public sealed record FriedmanMatrix(double Statistic, int DegreesOfFreedom, double ChiSquareP, double F, double FP, double KendallW, ImmutableArray<double> RankSums)
{
    /// <summary>Ranks a table row by row and tests it: for large tables, where no arrangements need be counted. Agrees with <see cref="Friedman.Test"/>.</summary>
    /// <param name="scores">Row after row, one row a judge; finite numbers, low is place 1.</param>
    /// <param name="items">Columns, at least 2.</param>
    /// <returns>Refused for one item, no judge, or rows that all tie everything.</returns>
    /// <exception cref="ArgumentException">The numbers do not fill whole rows, or one is not a number.</exception>
    public static Answer<FriedmanMatrix> Of(ReadOnlySpan<double> scores, int items)
    {
        if (items < 2) return new Refusal(RefusalKind.TooFewItems, "There is one item: nothing can be compared.");
        if (scores.Length % items != 0) throw new ArgumentException($"{scores.Length} numbers do not fill rows of {items}.", nameof(scores));
        var n = scores.Length / items;
        if (n == 0) return new Refusal(RefusalKind.TooFewBallots, "There is no ballot.");
        Span<long> doubled = items <= 64 ? stackalloc long[items] : new long[items];
        var squares = 0L;
        for (var row = 0; row < n; row++) squares += Rank(scores.Slice(row * items, items), doubled);

        // Doubled mid-places are whole numbers, so sums and ties are exact; A1 and C1 are four times too large alike.
        var mean = n * (items + 1.0);
        var deviations = 0.0;
        foreach (var sum in doubled) deviations += (sum - mean) * (sum - mean);
        var spread = squares - (n * items * (items + 1.0) * (items + 1));
        if (spread <= 0) return new Refusal(RefusalKind.NoInformation, "Every ballot ties everything.");
        var t1 = (items - 1) * deviations / spread;
        var largest = n * (items - 1.0);
        var f = largest - t1 <= 1e-12 * largest ? double.PositiveInfinity : (n - 1) * t1 / (largest - t1);
        var sums = ImmutableArray.CreateBuilder<double>(items);
        foreach (var sum in doubled) sums.Add(sum / 2.0);
        return new FriedmanMatrix(
            t1, items - 1, Tails.ChiSquare(t1, items - 1), f, n > 1 ? Tails.F(f, items - 1, (n - 1.0) * (items - 1)) : 1, t1 / largest, sums.MoveToImmutable());
    }

    /// <summary>Adds the doubled mid-places of a row; returns their sum of squares. Twice the place is 1 + items that are lower + items that are not higher.</summary>
    private static long Rank(ReadOnlySpan<double> row, Span<long> doubled)
    {
        var squares = 0L;
        for (var i = 0; i < row.Length; i++)
        {
            var own = row[i];
            var place = 1;
            foreach (var other in row) place += (other < own ? 1 : 0) + (other <= own ? 1 : 0);

            // A number equals itself, so it counts once among those not higher; NaN does not.
            if (double.IsNaN(own)) throw new ArgumentException("A score is not a number.", nameof(row));
            doubled[i] += place;
            squares += (long)place * place;
        }

        return squares;
    }
}
