using System.Collections.Concurrent;

namespace Trier.Publishing.Drawings;

/// <summary>The typefaces that are shipped: Source Sans 3 and Source Serif 4, SIL Open Font License 1.1, see Fonts.</summary>
internal static class FontFiles
{
    private static readonly ConcurrentDictionary<string, byte[]> Read = new(StringComparer.Ordinal);
    private static readonly ConcurrentDictionary<Face, FontMetrics> Measured = new();

    /// <summary>A cut's TrueType file.</summary>
    public static byte[] Of(Face face) => Of(NameOf(face));

    /// <summary>A shipped font file by its name without ending.</summary>
    public static byte[] Of(string name) => Read.GetOrAdd(name, static found =>
    {
        using var stream = typeof(FontFiles).Assembly.GetManifestResourceStream($"Trier.Fonts.{found}") ?? throw new InvalidOperationException($"The font {found} is not in the program.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    });

    public static FontMetrics Metrics(Face face) => Measured.GetOrAdd(face, static found => FontMetrics.Read(Of(found)));

    public static string NameOf(Face face) => face switch
    {
        Face.SansStrong => "SourceSans3-Semibold",
        Face.Serif => "SourceSerif4-Regular",
        Face.SerifStrong => "SourceSerif4-Semibold",
        Face.SerifItalic => "SourceSerif4-It",
        Face.SerifStrongItalic => "SourceSerif4-SemiboldIt",
        Face.Display => "SourceSerif4Display-Regular",
        _ => "SourceSans3-Regular",
    };
}
