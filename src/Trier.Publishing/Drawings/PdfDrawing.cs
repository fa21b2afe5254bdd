using PdfSharp.Drawing;

namespace Trier.Publishing.Drawings;

/// <summary>Draws a drawing on a page of a PDF.</summary>
internal static class PdfDrawing
{
    /// <summary>Draws it with its upper left corner at a point.</summary>
    /// <param name="page">The page.</param>
    /// <param name="drawing">What to draw.</param>
    /// <param name="x">Points from the left.</param>
    /// <param name="y">Points from the top.</param>
    /// <param name="scale">Points a unit.</param>
    public static void Draw(XGraphics page, Drawing drawing, double x, double y, double scale)
    {
        foreach (var shape in drawing.Placed(x, y, scale)) Draw(page, shape);
    }

    public static void Draw(XGraphics page, Shape shape)
    {
        if (shape is Words words)
        {
            Draw(page, words);
            return;
        }

        var area = (Area)shape;
        var path = PathOf(area.Outline);
        var pen = area.Stroke is { } stroke ? new XPen(Colour(stroke, 1), area.Width) : null;
        if (pen is not null && area.Dashed) pen.DashPattern = [2, 2];
        if (area.Fill is { } fill) page.DrawPath(pen, new XSolidBrush(Colour(fill, area.Opacity)), path);
        else if (pen is not null) page.DrawPath(pen, path);
    }

    private static void Draw(XGraphics page, Words words)
    {
        var width = TextRuler.Width(words.Text, words.Size, words.Face);
        var start = words.Anchor switch { Anchor.Middle => -width / 2, Anchor.End => -width, _ => 0 };
        var brush = new XSolidBrush(Colour(words.Tone, 1));
        var font = PdfFonts.Of(words.Face, words.Size);
        if (words.Turn == 0)
        {
            page.DrawString(words.Text, font, brush, new XPoint(words.X + start, words.Y));
            return;
        }

        var state = page.Save();
        page.RotateAtTransform(words.Turn, new XPoint(words.X, words.Y));
        page.DrawString(words.Text, font, brush, new XPoint(words.X + start, words.Y));
        page.Restore(state);
    }

    private static XGraphicsPath PathOf(Outline outline)
    {
        var path = new XGraphicsPath();
        Spot at = default;
        foreach (var part in outline.Segments)
        {
            switch (part.Kind)
            {
                case SegmentKind.Move:
                    path.StartFigure();
                    break;
                case SegmentKind.Line:
                    path.AddLine(at.X, at.Y, part.To.X, part.To.Y);
                    break;
                case SegmentKind.Curve:
                    path.AddBezier(at.X, at.Y, part.First.X, part.First.Y, part.Second.X, part.Second.Y, part.To.X, part.To.Y);
                    break;
                default:
                    path.CloseFigure();
                    continue;
            }

            at = part.To;
        }

        return path;
    }

    private static XColor Colour(Tone tone, double opacity) => XColor.FromArgb(unchecked((int)0xFF000000) | Tones.Rgb(tone)) is var solid && opacity < 1 ? XColor.FromArgb((int)Math.Round(opacity * 255), solid) : solid;
}
