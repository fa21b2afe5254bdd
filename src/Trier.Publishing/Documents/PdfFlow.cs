using System.Globalization;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using Trier.Publishing.Drawings;

namespace Trier.Publishing.Documents;

/// <summary>The pages as they fill: where the next line goes, and when a new page begins. Lengths are points.</summary>
internal sealed class PdfFlow
{
    private const double Edge = 40;
    private const double Foot = 30;
    private const double MarginColumn = 108;

    private readonly PdfDocument _pdf;
    private readonly double _width;
    private readonly double _height;
    private readonly List<PdfPage> _pages = [];
    private XGraphics _page = null!;

    public PdfFlow(PdfDocument pdf, PaperSize paper)
    {
        _pdf = pdf;
        (_width, _height) = paper == PaperSize.A4 ? (595.28, 841.89) : (612, 792);
        NewPage();
    }

    /// <summary>Left of the margin's words.</summary>
    public static double MarginLeft => Edge;

    /// <summary>Width of the margin's words.</summary>
    public static double MarginWidth => MarginColumn - 16;

    /// <summary>Left of the passage.</summary>
    public static double Left => Edge + MarginColumn;

    /// <summary>Right of everything.</summary>
    public double Right => _width - Edge;

    /// <summary>Width of the passage.</summary>
    public double Width => Right - Left;

    /// <summary>Where the next thing goes.</summary>
    public double Y { get; set; }

    /// <summary>What is left of this page.</summary>
    public double Room => _height - Edge - Foot - Y;

    /// <summary>A whole page's height.</summary>
    public double WholeRoom => _height - (2 * Edge) - Foot;

    /// <summary>How many pages there are.</summary>
    public int Pages => _pages.Count;

    public void Add(Shape shape) => PdfDrawing.Draw(_page, shape);

    public void Add(Drawing drawing, double x, double y, double scale) => PdfDrawing.Draw(_page, drawing, x, y, scale);

    public void Text(double x, double y, string text, double size, Face face = Face.Sans, Tone tone = Tone.Ink, Anchor anchor = Anchor.Start)
    {
        if (text.Length > 0) Add(new Words(x, y, text, size, face, tone, anchor));
    }

    public void Rule(double x, double y, double width, Tone tone, double weight) => Add(new Area(Outline.Line(new Spot(x, y), new Spot(x + width, y)), null, tone, weight));

    /// <summary>Begins a new page where less than so much is left.</summary>
    public bool Need(double height)
    {
        if (height <= Room || Room > WholeRoom - 1) return false;
        NewPage();
        return true;
    }

    public void NewPage()
    {
        _page?.Dispose();
        var page = _pdf.AddPage();
        page.Width = XUnit.FromPoint(_width);
        page.Height = XUnit.FromPoint(_height);
        _pages.Add(page);
        _page = XGraphics.FromPdfPage(page);
        Y = Edge;
    }

    /// <summary>A paragraph broken into lines, over pages where it must.</summary>
    public void Paragraph(double x, double width, string text, double size, Face face = Face.Sans, Tone tone = Tone.Ink, double leading = 1.38, double after = 0.5)
    {
        foreach (var line in TextRuler.Wrap(text, width, size, face))
        {
            Need(size * leading);
            Text(x, Y + size, line, size, face, tone);
            Y += size * leading;
        }

        Y += size * after;
    }

    /// <summary>Writes the foot of every page and closes them.</summary>
    public void Finish(string foot)
    {
        _page.Dispose();
        for (var i = 0; i < _pages.Count; i++)
        {
            using var page = XGraphics.FromPdfPage(_pages[i]);
            PdfDrawing.Draw(page, new Words(Edge, _height - Edge + 6, TextRuler.Fit(foot, Right - Edge - 60, 8), 8, Face.Sans, Tone.Pencil));
            PdfDrawing.Draw(page, new Words(Right, _height - Edge + 6, string.Create(CultureInfo.InvariantCulture, $"page {i + 1} of {_pages.Count}"), 8, Face.Sans, Tone.Pencil, Anchor.End));
        }
    }
}
