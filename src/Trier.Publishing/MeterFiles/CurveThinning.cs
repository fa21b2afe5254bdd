using System.Collections.Immutable;
using Trier.Trials.Makes.Days;

namespace Trier.Publishing.MeterFiles;

/// <summary>Thins a curve to what can be drawn: of each column of the drawing the lowest and highest reading, so that no spike is lost; the first and last reading are kept.</summary>
public static class CurveThinning
{
    /// <summary>Columns, each an equal stretch of time: as many as the widest drawing has pixels.</summary>
    public const int Columns = 800;

    /// <summary>Most points kept of a curve.</summary>
    public const int MostPoints = (2 * Columns) + 2;

    /// <summary>The points kept, in order of time.</summary>
    /// <param name="points">Readings in order of time.</param>
    public static ImmutableArray<MeterPoint> Of(IReadOnlyList<MeterPoint> points)
    {
        if (points.Count <= MostPoints) return [.. points];
        var (first, span) = (points[0].When, points[^1].When - points[0].When);
        var thin = ImmutableArray.CreateBuilder<MeterPoint>(MostPoints);
        var from = 0;
        while (from < points.Count)
        {
            var column = ColumnOf(points[from].When);
            var (low, high, to) = (from, from, from + 1);
            for (; to < points.Count && ColumnOf(points[to].When) == column; to++)
            {
                if (points[to].Value < points[low].Value) low = to;
                if (points[to].Value > points[high].Value) high = to;
            }

            foreach (var kept in new SortedSet<int> { low, high, from == 0 ? 0 : low, to == points.Count ? to - 1 : high }) thin.Add(points[kept]);
            from = to;
        }

        return thin.ToImmutable();

        int ColumnOf(DateTimeOffset when) => span == TimeSpan.Zero ? 0 : (int)Math.Min(Columns - 1, (when - first) / span * Columns);
    }
}
