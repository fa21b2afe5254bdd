using SkiaSharp;

namespace Trier.Publishing.Drawings;

/// <summary>Writes a drawing as PNG. Pixels and nothing else: the file carries no text, time or program name.</summary>
public static class PngWriter
{
    /// <summary>The file's bytes.</summary>
    /// <param name="drawing">What to write.</param>
    /// <param name="pixels">Pixels a unit.</param>
    public static byte[] Write(Drawing drawing, double pixels = 1)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        var info = new SKImageInfo((int)Math.Round(drawing.Width * pixels), (int)Math.Round(drawing.Height * pixels), SKColorType.Rgba8888, SKAlphaType.Premul);
        using var bitmap = new SKBitmap(info);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(drawing.Ground is { } ground ? Colour(ground, 1) : SKColors.Transparent);
        canvas.Scale((float)pixels);
        foreach (var shape in drawing.Shapes) Draw(canvas, shape);
        canvas.Flush();
        // Flat colours pack well without the trials that the strongest packing makes, which take four times as long.
        using var pixmap = bitmap.PeekPixels()!;
        using var data = pixmap.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.NoFilters, 6))!;
        return data.ToArray();
    }

    private static void Draw(SKCanvas canvas, Shape shape)
    {
        if (shape is Words words)
        {
            Draw(canvas, words);
            return;
        }

        var area = (Area)shape;
        using var path = PathOf(area.Outline);
        if (area.Fill is { } fill)
        {
            using var paint = new SKPaint { Color = Colour(fill, area.Opacity), IsAntialias = true, Style = SKPaintStyle.Fill };
            canvas.DrawPath(path, paint);
        }

        if (area.Stroke is not { } stroke) return;
        using var pen = new SKPaint { Color = Colour(stroke, 1), IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = (float)area.Width };
        if (area.Dashed) pen.PathEffect = SKPathEffect.CreateDash([(float)area.Width * 2, (float)area.Width * 2], 0);
        canvas.DrawPath(path, pen);
    }

    private static void Draw(SKCanvas canvas, Words words)
    {
        using var font = new SKFont(Typefaces.Of(words.Face), (float)words.Size) { Edging = SKFontEdging.Antialias, Hinting = SKFontHinting.None, Subpixel = true, LinearMetrics = true };
        using var paint = new SKPaint { Color = Colour(words.Tone, 1), IsAntialias = true };
        var width = TextRuler.Width(words.Text, words.Size, words.Face);
        var start = words.Anchor switch { Anchor.Middle => -width / 2, Anchor.End => -width, _ => 0 };
        canvas.Save();
        canvas.Translate((float)words.X, (float)words.Y);
        if (words.Turn != 0) canvas.RotateDegrees((float)words.Turn);
        canvas.DrawText(words.Text, (float)start, 0, SKTextAlign.Left, font, paint);
        canvas.Restore();
    }

    private static SKPath PathOf(Outline outline)
    {
        using var builder = new SKPathBuilder();
        foreach (var part in outline.Segments)
        {
            switch (part.Kind)
            {
                case SegmentKind.Move:
                    builder.MoveTo(Point(part.To));
                    break;
                case SegmentKind.Line:
                    builder.LineTo(Point(part.To));
                    break;
                case SegmentKind.Curve:
                    builder.CubicTo(Point(part.First), Point(part.Second), Point(part.To));
                    break;
                default:
                    builder.Close();
                    break;
            }
        }

        return builder.Detach();
    }

    private static SKPoint Point(Spot spot) => new((float)spot.X, (float)spot.Y);

    private static SKColor Colour(Tone tone, double opacity) => new SKColor((uint)Tones.Rgb(tone)).WithAlpha((byte)Math.Round(opacity * 255));

    private static class Typefaces
    {
        private static readonly System.Collections.Concurrent.ConcurrentDictionary<Face, SKTypeface> Read = new();

        public static SKTypeface Of(Face face) => Read.GetOrAdd(face, static found => SKTypeface.FromData(SKData.CreateCopy(FontFiles.Of(found))));
    }
}
