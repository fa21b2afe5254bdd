using System.Text;

namespace Trier.Publishing.Bundles;

/// <summary>The published schemas (JSON Schema, draft 2020-12) of what a bundle holds; they stand in docs/handbook too.</summary>
public static class Schemas
{
    /// <summary>The schema of verdict.json.</summary>
    public static string Verdict { get; } = Read("verdict");

    /// <summary>The schema of record.json.</summary>
    public static string Record { get; } = Read("record");

    private static string Read(string name)
    {
        using var stream = typeof(Schemas).Assembly.GetManifestResourceStream($"Trier.{name}.schema.json")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
