namespace Trier.Publishing.Drawings;

/// <summary>The site's cut fonts within a style sheet, so that a file needs nothing from anywhere.</summary>
internal static class FontFace
{
    /// <summary>The rule that brings one cut.</summary>
    public static string Css(Face face)
    {
        var (family, weight, style, file) = face switch
        {
            Face.Sans => ("Trier Sans", 400, "normal", "trier-sans-regular"),
            Face.SansStrong => ("Trier Sans", 600, "normal", "trier-sans-semibold"),
            Face.Serif => ("Trier Serif", 400, "normal", "trier-serif-regular"),
            Face.SerifStrong => ("Trier Serif", 600, "normal", "trier-serif-semibold"),
            Face.SerifStrongItalic => ("Trier Serif", 600, "italic", "trier-serif-semibold-italic"),
            Face.SerifItalic => ("Trier Serif", 400, "italic", "trier-serif-italic"),
            _ => ("Trier Serif Display", 400, "normal", "trier-serif-display"),
        };
        return $"@font-face{{font-family:'{family}';font-weight:{weight};font-style:{style};src:url(data:font/woff2;base64,{Convert.ToBase64String(FontFiles.Of(file))}) format('woff2')}}";
    }
}
