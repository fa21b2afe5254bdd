using System.Text.RegularExpressions;
using Trier.Web.Handbook;

namespace Trier.Tests.Web.Handbook;

public sealed partial class HandbookTests
{
    public static TheoryData<string, string> Pages
    {
        get
        {
            var pages = new TheoryData<string, string>();
            foreach (var name in typeof(HandbookText).Assembly.GetManifestResourceNames().Where(name => name.StartsWith("docs/", StringComparison.Ordinal)))
                pages.Add(name.Split('/')[1], name.Split('/')[2]);
            return pages;
        }
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void A_page_that_ships_reads_well_and_every_link_in_it_leads_somewhere(string folder, string name)
    {
        var page = HandbookText.Find(folder, name);
        Assert.NotNull(page);
        Assert.NotEmpty(page.Title);
        Assert.DoesNotContain("<h1", page.Html, StringComparison.Ordinal);
        Assert.DoesNotContain("| --- |", page.Html, StringComparison.Ordinal);
        foreach (var href in Links().Matches(page.Html).Select(match => match.Groups["href"].Value))
        {
            if (href.StartsWith("https://", StringComparison.Ordinal) || href.StartsWith('#')) continue;
            var parts = href.Split('#')[0].Split('/');
            Assert.True(HandbookText.Find(parts[1], parts[2]) is not null, $"{folder}/{name} links to {href}.");
        }
    }

    [Fact]
    public void The_methods_behind_a_verdict_ship() =>
        Assert.All(new[] { "gate", "pairs", "verdict-wording", "counting", "favourite", "resampling", "agreement", "influence", "choice-models", "serving-orders" }, name => Assert.NotNull(HandbookText.Find("methods", name)));

    [Theory]
    [InlineData("methods", "nothing")]
    [InlineData("methods", "../handbook/making")]
    [InlineData("decisions", "quantities")]
    [InlineData("", "")]
    public void Anything_else_is_not_there(string folder, string name) => Assert.Null(HandbookText.Find(folder, name));

    [GeneratedRegex("href=\"(?<href>[^\"]*)\"", RegexOptions.None, 1000)]
    private static partial Regex Links();
}
