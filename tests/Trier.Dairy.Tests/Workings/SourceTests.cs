using System.Reflection;
using System.Text.RegularExpressions;
using Trier.Dairy.Workings;
using Trier.TestKit;

namespace Trier.Dairy.Tests.Workings;

public sealed partial class SourceTests
{
    private static readonly string Sourced = Path.Combine(Checkout.Root, "src", "Trier.Dairy");

    private static readonly string References = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "methods", "dairy-references.md"));

    [Fact]
    public void Every_source_stands_in_the_references()
    {
        var sources = typeof(Sources).GetFields(BindingFlags.Public | BindingFlags.Static).Select(field => (Source)field.GetValue(null)!).ToArray();
        Assert.NotEmpty(sources);
        Assert.All(sources, source => Assert.Contains($"`{source.Key}`", References, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_key_in_a_doc_comment_stands_in_the_references()
    {
        var keys = Directory.EnumerateFiles(Sourced, "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(File.ReadLines)
            .Where(line => line.TrimStart().StartsWith("///", StringComparison.Ordinal))
            .SelectMany(line => KeyPattern().Matches(line).Select(match => match.Groups["key"].Value))
            .Distinct(StringComparer.Ordinal)
            .ToArray();
        Assert.True(keys.Length > 10, "The pattern finds too few keys.");
        Assert.All(keys, key => Assert.Contains($"`{key}`", References, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_table_has_its_card()
    {
        var tables = Directory.GetFiles(Path.Combine(Sourced, "Tables"), "*.csv");
        Assert.True(tables.Length >= 16, "Tables are missing.");
        Assert.All(tables, table => Assert.Contains("- Source:", File.ReadAllText(Path.ChangeExtension(table, ".md")), StringComparison.Ordinal));
    }

    [GeneratedRegex(@"\[(?<key>[A-Z][A-Za-z]+[0-9]*)\]", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex KeyPattern();
}
