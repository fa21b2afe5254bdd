using System.Collections.Immutable;
using Trier.Publishing.Drawings;

namespace Trier.Publishing.Charts;

/// <summary>Cuts an outline at an upright line and keeps what lies left of it, curves as short straight lines (Sutherland and Hodgman 1974, one side of the clip).</summary>
internal static class LeftHalf
{
    private const int StepsOfACurve = 12;

    public static Outline Of(Outline outline, double at)
    {
        var corners = Flat(outline);
        var kept = ImmutableArray.CreateBuilder<Spot>();
        for (var i = 0; i < corners.Count; i++)
        {
            var (from, to) = (corners[i], corners[(i + 1) % corners.Count]);
            if (from.X <= at) kept.Add(from);
            if ((from.X < at && to.X > at) || (from.X > at && to.X < at)) kept.Add(new(at, from.Y + ((to.Y - from.Y) * (at - from.X) / (to.X - from.X))));
        }

        return Outline.Polygon(kept.ToImmutable());
    }

    private static List<Spot> Flat(Outline outline)
    {
        var spots = new List<Spot>();
        foreach (var part in outline.Segments.Where(part => part.Kind != SegmentKind.Close))
        {
            if (part.Kind != SegmentKind.Curve)
            {
                spots.Add(part.To);
                continue;
            }

            var from = spots[^1];
            for (var i = 1; i <= StepsOfACurve; i++)
            {
                var t = (double)i / StepsOfACurve;
                double Along(double a, double b, double c, double d) => (Math.Pow(1 - t, 3) * a) + (3 * Math.Pow(1 - t, 2) * t * b) + (3 * (1 - t) * t * t * c) + (t * t * t * d);
                spots.Add(new(Along(from.X, part.First.X, part.Second.X, part.To.X), Along(from.Y, part.First.Y, part.Second.Y, part.To.Y)));
            }
        }

        return spots;
    }
}
