using System.Globalization;
using System.Security;
using System.Text;

namespace Trier.Publishing.Drawings;

/// <summary>Where an SVG will stand.</summary>
public enum SvgPlace
{
    /// <summary>In a file of its own: it carries its fonts and names its size.</summary>
    File,

    /// <summary>Within a page that has the fonts.</summary>
    Page,

    /// <summary>Within a page of the site: its colours are the page's, which may turn dark.</summary>
    Site,
}

/// <summary>Writes a drawing as SVG: an image with title and description, and its text as text.</summary>
public static class SvgWriter
{
    /// <summary>The SVG, lines ended by LF.</summary>
    /// <param name="drawing">What to write.</param>
    /// <param name="id">Its id: letters, digits, hyphens; unique on its page.</param>
    /// <param name="place">Where it will stand.</param>
    /// <param name="cssClass">Its class on a page, or null.</param>
    public static string Write(Drawing drawing, string id, SvgPlace place, string? cssClass = null)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        Func<Tone, string> paint = place == SvgPlace.Site ? Tones.Variable : Tones.Hex;
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {N(drawing.Width)} {N(drawing.Height)}\"");
        if (place == SvgPlace.File) svg.Append(CultureInfo.InvariantCulture, $" width=\"{N(drawing.Width)}\" height=\"{N(drawing.Height)}\"");
        if (cssClass is not null) svg.Append(CultureInfo.InvariantCulture, $" class=\"{Safe(cssClass)}\"");
        svg.Append(CultureInfo.InvariantCulture, $" role=\"img\" aria-labelledby=\"{id}-title {id}-said\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<title id=\"{id}-title\">{Safe(drawing.Title)}</title>\n<desc id=\"{id}-said\">{Safe(drawing.Description)}</desc>\n");
        if (place == SvgPlace.File) svg.Append(Fonts(drawing));
        if (drawing.Ground is { } ground) svg.Append(CultureInfo.InvariantCulture, $"<path d=\"{Outline.Rectangle(0, 0, drawing.Width, drawing.Height).Data()}\" fill=\"{paint(ground)}\"/>\n");
        svg.Append("<g aria-hidden=\"true\">\n");
        foreach (var shape in drawing.Shapes) svg.Append(Written(shape, paint)).Append('\n');
        return svg.Append("</g>\n</svg>\n").ToString();
    }

    private static string Written(Shape shape, Func<Tone, string> paint)
    {
        if (shape is Area area)
        {
            var stroke = area.Stroke is { } tone ? $" stroke=\"{paint(tone)}\" stroke-width=\"{N(area.Width)}\"{(area.Dashed ? $" stroke-dasharray=\"{N(area.Width * 2)} {N(area.Width * 2)}\"" : "")}" : "";
            var opacity = area.Opacity < 1 ? $" fill-opacity=\"{N(area.Opacity)}\"" : "";
            return $"<path d=\"{area.Outline.Data()}\" fill=\"{(area.Fill is { } fill ? paint(fill) : "none")}\"{opacity}{stroke}/>";
        }

        var words = (Words)shape;
        var anchor = words.Anchor switch { Anchor.Middle => " text-anchor=\"middle\"", Anchor.End => " text-anchor=\"end\"", _ => "" };
        var turn = words.Turn == 0 ? "" : $" transform=\"rotate({N(words.Turn)} {N(words.X)} {N(words.Y)})\"";
        var weight = words.Face is Face.SansStrong or Face.SerifStrong or Face.SerifStrongItalic ? " font-weight=\"600\"" : "";
        var italic = words.Face is Face.SerifItalic or Face.SerifStrongItalic ? " font-style=\"italic\"" : "";
        // The style of a page must not win over the drawing's, so the family stands in a style of its own.
        return $"<text x=\"{N(words.X)}\" y=\"{N(words.Y)}\" font-size=\"{N(words.Size)}\" fill=\"{paint(words.Tone)}\" style=\"font-family:{Family(words.Face)}\"{weight}{italic}{anchor}{turn}>{Safe(words.Text)}</text>";
    }

    private static string Family(Face face) => face switch
    {
        Face.Sans or Face.SansStrong => "'Trier Sans','Source Sans 3','Noto Sans',sans-serif",
        Face.Display => "'Trier Serif Display','Source Serif 4 Display','Noto Serif',serif",
        _ => "'Trier Serif','Source Serif 4','Noto Serif',serif",
    };

    private static string Fonts(Drawing drawing)
    {
        var faces = drawing.Shapes.OfType<Words>().Select(words => words.Face).Distinct().Order();
        return $"<style>{string.Concat(faces.Select(FontFace.Css))}</style>\n";
    }

    private static string N(double number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Safe(string text) => SecurityElement.Escape(text);
}
