using Trier.Publishing.Drawings;

namespace Trier.Publishing.Documents;

/// <summary>The head of page one: title, question, stamp and the first sentences.</summary>
internal static class PdfHead
{
    private const double Stamp = 80;
    private const double Say = 13.4;

    public static void Draw(PdfFlow flow, Document document)
    {
        var top = flow.Y;
        flow.Text(PdfFlow.MarginLeft, top + 12, "Verdict", 11.5, Face.SerifStrongItalic);
        flow.Y = top + 16;
        flow.Paragraph(PdfFlow.MarginLeft, PdfFlow.MarginWidth, document.Where, 10.6, Face.SerifItalic, Tone.Pencil);
        var beside = flow.Y;
        var width = flow.Width - (document.Stamp is null ? 0 : Stamp + 14);
        if (document.Stamp is { } stamp) flow.Add(stamp, flow.Right - Stamp, top, Stamp / stamp.Width);
        flow.Y = top;
        var size = TextRuler.Width(document.Title, 38, Face.Display) <= width ? 38 : 28;
        flow.Paragraph(PdfFlow.Left, width, document.Title, size, Face.Display, leading: 1.08, after: 0.28);
        if (document.Question is { } question) flow.Paragraph(PdfFlow.Left, width, question, 12.6, Face.SerifItalic);
        flow.Y = Math.Max(flow.Y, Math.Max(beside, document.Stamp is null ? 0 : top + Stamp) + 4);
        for (var i = 0; i < document.Say.Length; i++) flow.Paragraph(PdfFlow.Left, flow.Width, document.Say[i], Say, i == 0 ? Face.SerifStrong : Face.Serif, leading: 1.3, after: 0.35);
        flow.Y += 4;
    }
}
