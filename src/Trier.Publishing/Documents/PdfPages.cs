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
        var onPageOne = document.Passages.TakeWhile(passage => !passage.NewPage).ToList();
        var reserve = onPageOne.Skip(1).Sum(passage => HeightOf(passage, paper));
        for (var i = 0; i < document.Passages.Length; i++) PdfPassage.Draw(flow, document.Passages[i], i == 0 ? reserve : 0);
        flow.Finish(document.Foot);
        using var kept = new MemoryStream();
        pdf.Save(kept, closeStream: false);
        return kept.ToArray();
    }

    /// <summary>How high a passage is, measured on a page of its own.</summary>
    private static double HeightOf(DocumentPassage passage, PaperSize paper)
    {
        using var scratch = new PdfDocument();
        var flow = new PdfFlow(scratch, paper);
        var top = flow.Y;
        PdfPassage.Draw(flow, passage);
        flow.Finish("");
        return flow.Pages > 1 ? flow.WholeRoom : flow.Y - top;
    }
}
