using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace Trier.Publishing.Drawings;

/// <summary>Hands the shipped fonts to the PDF library, which cuts and embeds them; the machine's own fonts are never used.</summary>
internal sealed class PdfFonts : IFontResolver
{
    private static readonly Lock Setting = new();

    /// <summary>A font of a drawing.</summary>
    public static XFont Of(Face face, double size)
    {
        lock (Setting)
        {
            // The library keeps one resolver for the whole program.
            if (GlobalFontSettings.FontResolver is null) GlobalFontSettings.FontResolver = new PdfFonts();
        }

        return new XFont(FontFiles.NameOf(face), size, XFontStyleEx.Regular, new XPdfFontOptions(PdfFontEncoding.Unicode, PdfFontEmbedding.TryComputeSubset));
    }

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        Enum.GetValues<Face>().Any(face => FontFiles.NameOf(face) == familyName) ? new FontResolverInfo(familyName) : null;

    public byte[]? GetFont(string faceName) => FontFiles.Of(faceName);
}
