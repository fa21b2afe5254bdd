using System.Collections;
using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;
using Trier.Resources;
using Trier.TestKit;

namespace Trier.Tests.Web.Ballots;

public partial class BallotWordsTests
{
    private static readonly HashSet<string> Defined = [.. new ResourceManager("Trier.Resources.BallotWords", typeof(BallotWords).Assembly)
        .GetResourceSet(CultureInfo.InvariantCulture, createIfNotExists: true, tryParents: false)!.Cast<DictionaryEntry>().Select(entry => (string)entry.Key)];

    [Fact]
    public void Every_text_a_page_asks_for_stands_in_the_resources_and_none_lies_unused()
    {
        var sources = Directory.EnumerateFiles(Path.Combine(Checkout.Root, "src", "Trier"), "*", SearchOption.AllDirectories)
            .Where(file => file.EndsWith(".razor", StringComparison.Ordinal) || file.EndsWith(".cs", StringComparison.Ordinal))
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Select(File.ReadAllText)
            .Where(text => text.Contains("BallotWords", StringComparison.Ordinal) || text.Contains("Say(", StringComparison.Ordinal))
            .ToList();
        var quoted = sources.SelectMany(text => Quoted().Matches(text)).Select(match => match.Groups["key"].Value).ToHashSet(StringComparer.Ordinal);
        for (var liking = 1; liking <= 9; liking++) quoted.UnionWith([$"liking.{liking}", $"junior.liking.{liking}"]);

        var asked = sources.SelectMany(text => Asked().Matches(text)).Select(match => match.Groups["key"].Value).Distinct().ToList();
        Assert.True(asked.Count > 80, $"{asked.Count}");
        Assert.Equal([], asked.Except(Defined).Where(key => !key.EndsWith('.')));
        Assert.Equal([], Defined.Except(quoted));
    }

    [Fact]
    public void A_missing_text_is_a_slip_of_the_program() => Assert.Throws<InvalidOperationException>(() => BallotWords.Say("no.such.text"));

    [Theory]
    [InlineData(1, "1st")]
    [InlineData(3, "3rd")]
    [InlineData(9, "9th")]
    public void Places_have_names(int place, string name) => Assert.Equal(name, BallotWords.Place(place));

    [GeneratedRegex("\"(?<key>[a-z]+(\\.[a-z]+)*)\"", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Quoted();

    [GeneratedRegex("(Say|OneOf)\\(\"(?<key>[a-z.]+)\"", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Asked();
}
