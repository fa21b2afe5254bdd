using System.Collections.Immutable;
using Trier.Publishing.Drawings;

namespace Trier.Publishing.Charts;

/// <summary>A wheel's mark: shape tells the recipe, fill which wheel of it. Drawn in a box of 16 by 16 units; its words stand beside it.</summary>
public static class MarkDrawing
{
    private const double Box = 16;
    private const double Rim = 1.5;
    private const double OpenRim = 2.6;

    private static readonly ImmutableArray<Outline> Outlines =
    [
        Outline.Circle(8, 8, 6.2),
        Outline.Polygon(new(8, 1), new(15, 8), new(8, 15), new(1, 8)),
        Outline.Rectangle(2.2, 2.2, 11.6, 11.6),
        Wedge(),
        Outline.Polygon(new(5.2, 2.6), new(10.8, 2.6), new(14.6, 13.4), new(1.4, 13.4)),
        Log(),
        Outline.Polygon(new(4.6, 2.1), new(11.4, 2.1), new(14.9, 8), new(11.4, 13.9), new(4.6, 13.9), new(1.1, 8)),
        Outline.Polygon(new(5.6, 1.2), new(10.4, 1.2), new(10.4, 5.6), new(14.8, 5.6), new(14.8, 10.4), new(10.4, 10.4), new(10.4, 14.8), new(5.6, 14.8), new(5.6, 10.4), new(1.2, 10.4), new(1.2, 5.6), new(5.6, 5.6)),
    ];

    /// <summary>The rim of a shape in its box.</summary>
    /// <param name="shape">1 disc to 8 cross.</param>
    public static Outline OutlineOf(int shape) => Outlines[shape - 1];

    /// <summary>The left half of a shape, for a recipe's third wheel.</summary>
    /// <param name="shape">1 disc to 8 cross.</param>
    public static Outline HalfOf(int shape) => LeftHalf.Of(OutlineOf(shape), Box / 2);

    /// <summary>The mark with its upper left corner at a point.</summary>
    /// <param name="look">Shape, fill and tone.</param>
    /// <param name="x">Left.</param>
    /// <param name="y">Top.</param>
    /// <param name="size">Side of its box.</param>
    /// <param name="ink">The ink on a wheel's own tone, where it is drawn on one; else null.</param>
    public static IEnumerable<Shape> Shapes(WheelLook look, double x, double y, double size, Tone? ink = null)
    {
        ArgumentNullException.ThrowIfNull(look);
        var scale = size / Box;
        var outline = OutlineOf(look.Shape).Placed(x, y, scale);
        var line = ink ?? Tone.Ink;
        Tone? ground = ink is null ? Tone.Sheet : null;
        var paint = ink ?? Tones.OfWheel(look.Tone);
        switch (look.Fill)
        {
            case WheelFill.Solid:
                yield return new Area(outline, paint, line, Rim * scale);
                break;
            case WheelFill.Open:
                yield return new Area(outline, ground, line, OpenRim * scale);
                break;
            case WheelFill.Half:
                yield return new Area(outline, ground, line, Rim * scale);
                yield return new Area(HalfOf(look.Shape).Placed(x, y, scale), paint, line, Rim * scale);
                break;
            default:
                yield return new Area(outline, ground, line, Rim * scale);
                yield return new Area(Outline.Circle(x + (8 * scale), y + (8 * scale), 2.3 * scale), line);
                break;
        }
    }

    private static Outline Wedge() => new([
        new(SegmentKind.Move, new(2.6, 13.6), default, default),
        new(SegmentKind.Line, new(2.6, 2.2), default, default),
        Outline.Curve(8.9, 2.2, 14, 7.3, 14, 13.6),
        new(SegmentKind.Close, default, default, default),
    ]);

    private static Outline Log()
    {
        const double Handle = 3.4 * 0.5522847498;
        return new([
            new(SegmentKind.Move, new(4.6, 4.6), default, default),
            new(SegmentKind.Line, new(11.4, 4.6), default, default),
            Outline.Curve(11.4 + Handle, 4.6, 14.8, 8 - Handle, 14.8, 8),
            Outline.Curve(14.8, 8 + Handle, 11.4 + Handle, 11.4, 11.4, 11.4),
            new(SegmentKind.Line, new(4.6, 11.4), default, default),
            Outline.Curve(4.6 - Handle, 11.4, 1.2, 8 + Handle, 1.2, 8),
            Outline.Curve(1.2, 8 - Handle, 4.6 - Handle, 4.6, 4.6, 4.6),
            new(SegmentKind.Close, default, default, default),
        ]);
    }
}
