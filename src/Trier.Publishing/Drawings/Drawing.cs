using System.Collections.Immutable;

namespace Trier.Publishing.Drawings;

/// <summary>A cut of the typefaces.</summary>
public enum Face
{
    Sans,
    SansStrong,
    Serif,
    SerifStrong,
    SerifItalic,
    SerifStrongItalic,
    Display,
}

/// <summary>What of a text stands at its x.</summary>
public enum Anchor
{
    Start,
    Middle,
    End,
}

/// <summary>One thing in a drawing.</summary>
public abstract record Shape;

/// <summary>An area, a line or both.</summary>
/// <param name="Outline">Its rim.</param>
/// <param name="Fill">What fills it, or null.</param>
/// <param name="Stroke">What draws the rim, or null.</param>
/// <param name="Width">Width of the rim.</param>
/// <param name="Dashed">Whether the rim is broken.</param>
/// <param name="Opacity">How much of the fill is seen, from 0 to 1.</param>
public sealed record Area(Outline Outline, Tone? Fill, Tone? Stroke = null, double Width = 1, bool Dashed = false, double Opacity = 1) : Shape;

/// <summary>A line of text, always written as text.</summary>
/// <param name="X">Where its anchor stands.</param>
/// <param name="Y">Its base line.</param>
/// <param name="Text">What it says.</param>
/// <param name="Size">Type size.</param>
/// <param name="Face">Typeface.</param>
/// <param name="Tone">Colour.</param>
/// <param name="Anchor">What stands at <paramref name="X"/>.</param>
/// <param name="Turn">Degrees turned about the anchor, clockwise.</param>
public sealed record Words(double X, double Y, string Text, double Size, Face Face = Face.Sans, Tone Tone = Tone.Ink, Anchor Anchor = Anchor.Start, double Turn = 0) : Shape;

/// <summary>
/// A drawing as a value: one geometry that is written as SVG, as PNG and into a PDF. Units are free; a writer scales them.
/// </summary>
/// <param name="Width">Units across.</param>
/// <param name="Height">Units down.</param>
/// <param name="Title">What it shows, in a few words.</param>
/// <param name="Description">What it says, for those who do not see it.</param>
/// <param name="Shapes">What is drawn, in this order.</param>
/// <param name="Ground">What it is drawn on, or null for nothing.</param>
public sealed record Drawing(double Width, double Height, string Title, string Description, ImmutableArray<Shape> Shapes, Tone? Ground = null)
{
    /// <summary>Its shapes, scaled and moved into another drawing.</summary>
    public IEnumerable<Shape> Placed(double x, double y, double scale) => Shapes.Select(shape => shape switch
    {
        Area area => area with { Outline = area.Outline.Placed(x, y, scale), Width = area.Width * scale },
        Words words => words with { X = x + (words.X * scale), Y = y + (words.Y * scale), Size = words.Size * scale },
        _ => shape,
    });
}
