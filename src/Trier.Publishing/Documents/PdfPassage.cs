using Trier.Publishing.Drawings;

namespace Trier.Publishing.Documents;

/// <summary>A passage on paper: its word in the margin, what it holds beside it.</summary>
internal static class PdfPassage
{
    private const double Type = 10.4;
    private const double FigureType = 9.2;
    private const double ChartType = 16;
    private const double FigureAfter = 10;

    /// <summary>Draws it.</summary>
    /// <param name="flow">The pages.</param>
    /// <param name="passage">The passage.</param>
    /// <param name="reserve">What must stay free below its charts on this page, for passages that belong on it too.</param>
    public static void Draw(PdfFlow flow, DocumentPassage passage, double reserve = 0)
    {
        if (passage.NewPage) flow.NewPage();
        if (reserve == 0) flow.Need(Math.Min(flow.WholeRoom, 24 + First(flow, passage)));
        if (flow.Room < flow.WholeRoom - 1) flow.Rule(PdfFlow.MarginLeft, flow.Y, flow.Right - PdfFlow.MarginLeft, Tone.Line, 0.7);
        flow.Y += 10;
        var (top, pages) = (flow.Y, flow.Pages);
        flow.Paragraph(PdfFlow.MarginLeft, PdfFlow.MarginWidth, passage.Word, 11.2, Face.SerifStrongItalic, after: 0.1);
        if (passage.Note is { } note) flow.Paragraph(PdfFlow.MarginLeft, PdfFlow.MarginWidth, note, 10.2, Face.SerifItalic, Tone.Pencil, after: 0.2);
        var beside = flow.Y;
        flow.Y = top;
        foreach (var block in passage.Blocks) Draw(flow, block, reserve);
        if (flow.Pages == pages) flow.Y = Math.Max(flow.Y, beside);
        flow.Y += 8;
    }

    /// <summary>How high the first block is, so that a word in the margin never stands alone at the foot of a page.</summary>
    private static double First(PdfFlow flow, DocumentPassage passage) => passage.Blocks.FirstOrDefault() switch
    {
        Figure figure => HeightOf(flow, figure),
        Paragraph when passage.Blocks.ElementAtOrDefault(1) is Figure figure => 20 + HeightOf(flow, figure),
        Table => 70,
        _ => 34,
    };

    private static void Draw(PdfFlow flow, Block block, double reserve)
    {
        switch (block)
        {
            case Paragraph paragraph:
                flow.Paragraph(PdfFlow.Left, Math.Min(flow.Width, 400), paragraph.Text, Type, paragraph.Strong ? Face.SansStrong : Face.Sans);
                break;
            case Listing listing:
                foreach (var item in listing.Items)
                {
                    flow.Need(Type * 1.4);
                    flow.Text(PdfFlow.Left, flow.Y + Type, "–", Type);
                    flow.Paragraph(PdfFlow.Left + 12, Math.Min(flow.Width, 400) - 12, item, Type, after: 0.25);
                }

                flow.Y += 4;
                break;
            case Terms terms:
                foreach (var (term, text) in terms.Items)
                {
                    flow.Need(Type * 3);
                    var (top, pages) = (flow.Y, flow.Pages);
                    flow.Paragraph(PdfFlow.Left, 96, term, Type, Face.SerifItalic, Tone.Pencil, after: 0.15);
                    var beside = flow.Y;
                    flow.Y = top;
                    flow.Paragraph(PdfFlow.Left + 108, flow.Width - 108, text, Type, after: 0.35);
                    if (flow.Pages == pages) flow.Y = Math.Max(flow.Y, beside);
                }

                break;
            case Figure figure:
                Draw(flow, figure, reserve);
                break;
            case Table table:
                PdfTable.Draw(flow, table);
                break;
            default:
                throw new NotSupportedException($"Paper cannot hold {block.GetType().Name}.");
        }
    }

    private static void Draw(PdfFlow flow, Figure figure, double reserve)
    {
        var (drawn, scale) = reserve > 0 ? Fitted(flow, figure, flow.Room - reserve - FigureAfter) : Scaled(flow, figure, FigureType, 1);
        flow.Need(drawn.Height * scale);
        // A chart that is higher than any page is made smaller rather than cut.
        if (drawn.Height * scale > flow.Room) scale = flow.Room / drawn.Height;
        flow.Add(drawn, PdfFlow.Left, flow.Y + 2, scale);
        flow.Y += (drawn.Height * scale) + FigureAfter;
    }

    /// <summary>Rows closer first, then smaller type, down to 8 points; below that it takes what it needs.</summary>
    private static (Drawing Drawn, double Scale) Fitted(PdfFlow flow, Figure figure, double height)
    {
        foreach (var (type, stretch) in new[] { (FigureType, 1), (FigureType, 0.9), (FigureType, 0.82), (8.6, 0.82), (8, 0.82), (8, 0.74) })
        {
            var fitted = Scaled(flow, figure, type, stretch);
            if (fitted.Drawn.Height * fitted.Scale <= height) return fitted;
        }

        return Scaled(flow, figure, 8, 0.74);
    }

    private static (Drawing Drawn, double Scale) Scaled(PdfFlow flow, Figure figure, double type, double stretch)
    {
        var scale = type / ChartType;
        return (figure.Chart.Natural(flow.Width / scale, stretch), scale);
    }

    private static double HeightOf(PdfFlow flow, Figure figure)
    {
        var (drawn, scale) = Scaled(flow, figure, FigureType, 1);
        return drawn.Height * scale;
    }
}
