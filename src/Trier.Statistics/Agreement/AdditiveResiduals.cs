namespace Trier.Statistics.Agreement;

/// <summary>
/// What is left of a table of values when row and column means are taken out. With gaps in the table the two are fitted together by least squares, sweeping rows and columns in turn until nothing moves; without gaps one sweep
/// is exact.
/// </summary>
internal static class AdditiveResiduals
{
    private const int MostSweeps = 10_000;

    public static double?[][] Of(IEnumerable<double?[]> table, int columns)
    {
        double?[][] left = [.. table.Select(row => (double?[])row.Clone())];
        for (var sweep = 0; sweep < MostSweeps; sweep++)
        {
            var moved = 0.0;
            foreach (var row in left) moved = Math.Max(moved, Sweep(row.Length, i => row[i], (i, value) => row[i] = value));
            for (var column = 0; column < columns; column++)
            {
                var at = column;
                moved = Math.Max(moved, Sweep(left.Length, j => left[j][at], (j, value) => left[j][at] = value));
            }

            if (moved < 1e-12) break;
        }

        return left;
    }

    private static double Sweep(int length, Func<int, double?> get, Action<int, double> set)
    {
        var (sum, count) = (0.0, 0);
        for (var i = 0; i < length; i++)
        {
            if (get(i) is not { } value) continue;
            sum += value;
            count++;
        }

        if (count == 0) return 0;
        var mean = sum / count;
        for (var i = 0; i < length; i++)
        {
            if (get(i) is { } value) set(i, value - mean);
        }

        return Math.Abs(mean);
    }
}
