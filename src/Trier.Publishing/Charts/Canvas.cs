using System.Collections.Immutable;
using Trier.Publishing.Drawings;

namespace Trier.Publishing.Charts;

/// <summary>Collects the shapes of a chart.</summary>
internal sealed class Canvas
{
    private readonly ImmutableArray<Shape>.Builder _shapes = ImmutableArray.CreateBuilder<Shape>();

    public void Add(Shape shape) => _shapes.Add(shape);

    public void Add(IEnumerable<Shape> shapes) => _shapes.AddRange(shapes);

    public void Line(double x1, double y1, double x2, double y2, Tone tone, double width, bool dashed = false) =>
        Add(new Area(Outline.Line(new Spot(x1, y1), new Spot(x2, y2)), null, tone, width, dashed));

    public void Box(double x, double y, double width, double height, Tone fill) => Add(new Area(Outline.Rectangle(x, y, width, height), fill));

    /// <summary>A line of text.</summary>
    /// <returns>Where it ends, for text that starts at x.</returns>
    public double Text(double x, double y, string text, double size, Face face = Face.Sans, Tone tone = Tone.Ink, Anchor anchor = Anchor.Start)
    {
        if (text.Length > 0) Add(new Words(x, y, text, size, face, tone, anchor));
        return x + TextRuler.Width(text, size, face);
    }

    public Drawing Drawn(double width, double height, string title, string description) => new(width, height, title, description, _shapes.ToImmutable());
}
