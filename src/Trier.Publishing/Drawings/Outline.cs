using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Trier.Publishing.Drawings;

/// <summary>What a part of an outline does.</summary>
public enum SegmentKind
{
    Move,
    Line,
    Curve,
    Close,
}

/// <summary>A point, in the units of its drawing, y downwards.</summary>
/// <param name="X">Across.</param>
/// <param name="Y">Down.</param>
public readonly record struct Spot(double X, double Y);

/// <summary>One part of an outline.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="To">Where it ends.</param>
/// <param name="First">A curve's first handle.</param>
/// <param name="Second">A curve's second handle.</param>
public readonly record struct Segment(SegmentKind Kind, Spot To, Spot First, Spot Second);

/// <summary>A line or the rim of an area. Only straight lines and cubic curves, so that every writer draws the same.</summary>
/// <param name="Segments">Its parts; the first moves.</param>
public sealed record Outline(ImmutableArray<Segment> Segments)
{
    // A quarter of a circle by one cubic curve is off by less than 3 in 10 000 of the radius with handles of this length.
    private const double Quarter = 0.5522847498;

    public static Outline Rectangle(double x, double y, double width, double height) =>
        Polygon(new(x, y), new(x + width, y), new(x + width, y + height), new(x, y + height));

    public static Outline Circle(double x, double y, double radius)
    {
        var h = radius * Quarter;
        return new([
            new(SegmentKind.Move, new(x + radius, y), default, default),
            Curve(x + radius, y + h, x + h, y + radius, x, y + radius),
            Curve(x - h, y + radius, x - radius, y + h, x - radius, y),
            Curve(x - radius, y - h, x - h, y - radius, x, y - radius),
            Curve(x + h, y - radius, x + radius, y - h, x + radius, y),
            new(SegmentKind.Close, default, default, default),
        ]);
    }

    /// <summary>The end of a core: flat at the left, round at the right.</summary>
    public static Outline Tip(double x, double y, double width, double height)
    {
        var radius = Math.Min(height / 2, width);
        var (h, straight) = (radius * Quarter, x + width - radius);
        return new([
            new(SegmentKind.Move, new(x, y), default, default),
            new(SegmentKind.Line, new(straight, y), default, default),
            Curve(straight + h, y, straight + radius, y + (height / 2) - h, straight + radius, y + (height / 2)),
            Curve(straight + radius, y + (height / 2) + h, straight + h, y + height, straight, y + height),
            new(SegmentKind.Line, new(x, y + height), default, default),
            new(SegmentKind.Close, default, default, default),
        ]);
    }

    public static Outline Polygon(params ImmutableArray<Spot> spots) => new([.. Corners(spots), new Segment(SegmentKind.Close, default, default, default)]);

    public static Outline Line(params ImmutableArray<Spot> spots) => new([.. Corners(spots)]);

    /// <summary>The same outline, scaled and then moved.</summary>
    public Outline Placed(double x, double y, double scale = 1)
    {
        Spot Put(Spot spot) => new(x + (spot.X * scale), y + (spot.Y * scale));
        return new([.. Segments.Select(s => s.Kind == SegmentKind.Close ? s : new Segment(s.Kind, Put(s.To), Put(s.First), Put(s.Second)))]);
    }

    /// <summary>As SVG writes a path.</summary>
    public string Data()
    {
        var data = new StringBuilder();
        foreach (var part in Segments)
        {
            data.Append(part.Kind switch
            {
                SegmentKind.Move => string.Create(CultureInfo.InvariantCulture, $"M{part.To.X:0.##} {part.To.Y:0.##}"),
                SegmentKind.Line => string.Create(CultureInfo.InvariantCulture, $"L{part.To.X:0.##} {part.To.Y:0.##}"),
                SegmentKind.Curve => string.Create(CultureInfo.InvariantCulture, $"C{part.First.X:0.##} {part.First.Y:0.##} {part.Second.X:0.##} {part.Second.Y:0.##} {part.To.X:0.##} {part.To.Y:0.##}"),
                _ => "Z",
            });
        }

        return data.ToString();
    }

    internal static Segment Curve(double x1, double y1, double x2, double y2, double x, double y) => new(SegmentKind.Curve, new(x, y), new(x1, y1), new(x2, y2));

    private static IEnumerable<Segment> Corners(ImmutableArray<Spot> spots) => spots.Select((spot, i) => new Segment(i == 0 ? SegmentKind.Move : SegmentKind.Line, spot, default, default));
}
