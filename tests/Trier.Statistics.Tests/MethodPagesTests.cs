using Trier.TestKit;

namespace Trier.Statistics.Tests;

/// <summary>The method pages have one shape, and the code they print is the code that <see cref="MethodExamples"/> runs.</summary>
public sealed class MethodPagesTests
{
    private static readonly string[] Shape = ["Question", "Model", "Formula", "Source", "Assumptions", "When not to use it", "Worked example"];

    public static TheoryData<string> Pages =>
    [
        "gate", "pairs", "favourite", "rank-tests", "choice-models", "ratings", "counting", "influence", "agreement", "resampling", "discrimination", "distributions", "power", "serving-orders", "aliasing", "across-tastings",
    ];

    [Theory]
    [MemberData(nameof(Pages))]
    public void A_page_has_the_one_shape_and_every_part_says_something(string page)
    {
        var text = Read(page);
        var at = 0;
        for (var part = 0; part < Shape.Length; part++)
        {
            var start = text.IndexOf($"\n**{Shape[part]}.** ", at, StringComparison.Ordinal);
            Assert.True(start >= 0, $"{page} has no {Shape[part]} after {(part == 0 ? "its title" : Shape[part - 1])}.");
            at = start + Shape[part].Length + 6;
            var end = part + 1 < Shape.Length ? text.IndexOf($"\n**{Shape[part + 1]}.** ", at, StringComparison.Ordinal) : text.Length;
            Assert.True(end - at > 20, $"{page}: {Shape[part]} says nothing.");
        }
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void The_code_on_a_page_is_the_body_of_its_test(string page)
    {
        var text = Read(page);
        var start = text.IndexOf("```csharp\n", StringComparison.Ordinal) + "```csharp\n".Length;
        var printed = text[start..text.IndexOf("```", start, StringComparison.Ordinal)].TrimEnd().Split('\n');
        var tests = File.ReadAllText(Path.Combine(Checkout.Root, "tests", "Trier.Statistics.Tests", "MethodExamples.cs"));
        var head = $"public void Page_{page.Replace('-', '_')}()\n    {{\n";
        var body = tests.IndexOf(head, StringComparison.Ordinal);
        Assert.True(body >= 0, $"No test Page_{page}.");
        body += head.Length;
        var run = tests[body..tests.IndexOf("\n    }\n", body, StringComparison.Ordinal)].Split('\n');
        Assert.Equal(run.Select(line => line.Length == 0 ? "" : line[8..]), printed);
    }

    private static string Read(string page) => File.ReadAllText(Path.Combine(Checkout.Root, "docs", "methods", page + ".md"));
}
