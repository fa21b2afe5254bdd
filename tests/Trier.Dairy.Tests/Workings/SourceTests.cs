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

    [Fact]
    public void Every_method_page_keeps_the_fixed_shape_and_known_keys()
    {
        var pages = Directory.GetFiles(Path.Combine(Checkout.Root, "docs", "methods"), "dairy-*.md")
            .Where(page => !page.EndsWith("dairy-references.md", StringComparison.Ordinal))
            .ToArray();
        Assert.True(pages.Length >= 8, "Pages are missing.");
        string[] shape = ["Question", "Formula", "Domain and error", "Source and status", "When not to use it", "Worked example", "Code"];
        foreach (var section in pages.SelectMany(page => File.ReadAllText(page).Split("\n## ").Skip(1)))
        {
            Assert.All(shape, part => Assert.Contains($"- **{part}.** ", section, StringComparison.Ordinal));
            foreach (Match match in KeyPattern().Matches(section))
                Assert.Contains($"`{match.Groups["key"].Value}`", References, StringComparison.Ordinal);
            foreach (var file in CodePattern().Matches(section.Split("- **Code.** ")[1]).Select(match => match.Groups["file"].Value))
                Assert.True(File.Exists(Path.Combine(Sourced, file + ".cs")), file);
        }
    }

    [GeneratedRegex("`(?<file>[A-Za-z/]+)`", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex CodePattern();

    [GeneratedRegex(@"\[(?<key>[A-Z][A-Za-z]+[0-9]*)\]", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex KeyPattern();
}
