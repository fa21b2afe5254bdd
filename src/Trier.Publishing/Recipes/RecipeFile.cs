using System.Text.Json;
using Trier.Trials.Common;

namespace Trier.Publishing.Recipes;

/// <summary>Reads a recipe file: the program's own JSON, or schema.org Recipe JSON-LD. Nothing is taken in unless the file can be read.</summary>
public static class RecipeFile
{
    /// <summary>Largest file read, in bytes (1 MB).</summary>
    public const int LargestBytes = 1_000_000;

    /// <summary>Reads a file.</summary>
    /// <param name="bytes">UTF-8 text.</param>
    /// <returns>The draft, or every fault of the file, each naming the member by its path.</returns>
    public static Outcome<RecipeImport> Read(ReadOnlyMemory<byte> bytes)
    {
        if (bytes.Length > LargestBytes) return Outcome.Fault<RecipeImport>("file", "The file is larger than 1 MB, too large for a recipe.");
        if (bytes.Span.StartsWith("\uFEFF"u8)) bytes = bytes[3..];
        try
        {
            using var document = JsonDocument.Parse(bytes, new JsonDocumentOptions { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip, MaxDepth = 32 });
            if (SchemaOrgRecipe.Find(document.RootElement) is { } found) return SchemaOrgRecipe.Read(found);
            if (document.RootElement.ValueKind == JsonValueKind.Object && document.RootElement.TryGetProperty(RecipeJson.Mark, out _)) return RecipeJson.Read(document.RootElement);
            return Outcome.Fault<RecipeImport>("file", $"This JSON is no recipe: it has neither “{RecipeJson.Mark}” (our own format) nor “@type”: “Recipe” (schema.org).");
        }
        catch (JsonException fault)
        {
            var line = (fault.LineNumber ?? 0) + 1;
            return Outcome.Fault<RecipeImport>("file", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"Line {line}: this is not JSON; look for a missing comma, quote or bracket near there."));
        }
    }
}
