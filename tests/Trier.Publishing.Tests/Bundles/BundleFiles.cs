using System.Collections.Immutable;
using System.Text;
using Trier.Publishing.Bundles;
using UglyToad.PdfPig;

namespace Trier.Publishing.Tests.Bundles;

/// <summary>Reads the files of a bundle.</summary>
internal static class BundleFiles
{
    public static string Text(this ImmutableArray<BundleFile> files, string path) => Encoding.UTF8.GetString(files.Single(file => file.Path == path).Bytes.AsSpan());

    public static bool IsPdf(this BundleFile file) => file.Path.EndsWith(".pdf", StringComparison.Ordinal);

    /// <summary>All the text a file shows or hides: a PDF's pages and information, anything else byte for byte.</summary>
    public static string Everything(this BundleFile file)
    {
        if (!file.IsPdf()) return Encoding.UTF8.GetString(file.Bytes.AsSpan()) + Encoding.Latin1.GetString(file.Bytes.AsSpan());
        using var pdf = PdfDocument.Open([.. file.Bytes]);
        var information = pdf.Information;
        return string.Join('\n', pdf.GetPages().Select(page => page.Text).Append(information.Title).Append(information.Author).Append(information.Subject).Append(information.Keywords).Append(information.Creator));
    }
}
