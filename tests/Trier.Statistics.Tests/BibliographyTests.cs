using System.Text.RegularExpressions;
using Trier.TestKit;

namespace Trier.Statistics.Tests;

public sealed partial class BibliographyTests
{
    [Fact]
    public void Every_key_cited_stands_in_the_bibliography_and_every_key_there_is_cited()
    {
        var references = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "methods", "references.md"));
        var known = Keys(references).ToHashSet(StringComparer.Ordinal);
        string[] folders = [Path.Combine(Checkout.Root, "src", "Trier.Statistics"), Path.Combine(Checkout.Root, "docs", "methods")];
        var cited = folders
            .SelectMany(folder => Directory.EnumerateFiles(folder, "*.*", SearchOption.AllDirectories))
            .Where(file => file.EndsWith(".cs", StringComparison.Ordinal) || file.EndsWith(".md", StringComparison.Ordinal))
            .Where(file => Path.GetFileName(file) != "references.md")
            // The dairy pages have a bibliography of their own, held by the dairy tests.
            .Where(file => !Path.GetFileName(file).StartsWith("dairy-", StringComparison.Ordinal))
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(file => Keys(File.ReadAllText(file)))
            .ToHashSet(StringComparer.Ordinal);
        Assert.True(cited.Count > 20, $"Only {cited.Count} keys were found: the pattern is broken.");
        Assert.Empty(cited.Except(known));
        Assert.Empty(known.Except(cited));
    }

    private static IEnumerable<string> Keys(string text) => Key().Matches(text).Select(match => match.Value);

    [GeneratedRegex(@"\[[A-Z][A-Za-z]+[0-9]{4}\]", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Key();
}
