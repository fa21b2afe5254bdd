using System.Collections.Immutable;

namespace Trier.Statistics.Designs;

/// <summary>The rank of a table of main effects.</summary>
internal static class MainEffects
{
    /// <summary>Rank of the columns 1 and one indicator per level of every factor.</summary>
    /// <param name="factors">All about the same units.</param>
    /// <param name="units">How many units, where there may be no factor.</param>
    public static int Rank(ImmutableArray<Factor> factors, int? units = null)
    {
        var n = units ?? factors[0].Levels.Length;
        var columns = new List<double[]> { Enumerable.Repeat(1.0, n).ToArray() };
        foreach (var factor in factors)
        {
            foreach (var level in factor.Levels.Distinct(StringComparer.Ordinal))
                columns.Add([.. factor.Levels.Select(own => own == level ? 1.0 : 0)]);
        }

        // Gram and Schmidt, twice over for rounding; indicator columns have length of at least 1, so what stays of a dependent one is far below the bound.
        var basis = new List<double[]>();
        foreach (var column in columns)
        {
            var rest = column;
            for (var pass = 0; pass < 2; pass++)
            {
                foreach (var unit in basis)
                {
                    var share = rest.Zip(unit, (x, y) => x * y).Sum();
                    rest = [.. rest.Zip(unit, (x, y) => x - (share * y))];
                }
            }

            var length = Math.Sqrt(rest.Sum(x => x * x));
            if (length > 1e-9) basis.Add([.. rest.Select(x => x / length)]);
        }

        return basis.Count;
    }
}
