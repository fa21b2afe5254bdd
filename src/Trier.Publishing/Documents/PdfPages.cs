using PdfSharp.Drawing;
using PdfSharp.Pdf;
using Trier.Publishing.Drawings;

namespace Trier.Publishing.Documents;

/// <summary>A size of paper.</summary>
public enum PaperSize
{
    A4,
    Letter,
}

/// <summary>Writes a document as a PDF: one flow of text, tables and charts beside a margin of words; fonts embedded as subsets.</summary>
public static class PdfPages
{
    /// <summary>The file's bytes. The same document gives the same pages, text and geometry.</summary>
    /// <param name="document">The document.</param>
    /// <param name="paper">The paper.</param>
    public static byte[] Write(Document document, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(document);
        using var pdf = new PdfDocument();
        pdf.Info.Title = $"{document.Title}: the verdict";
        pdf.Language = "en";
        var flow = new PdfFlow(pdf, paper);
        PdfHead.Draw(flow, document);
        foreach (var passage in document.Passages) PdfPassage.Draw(flow, passage);
        flow.Finish(document.Foot);
        using var kept = new MemoryStream();
        pdf.Save(kept, closeStream: false);
        return kept.ToArray();
    }
}
