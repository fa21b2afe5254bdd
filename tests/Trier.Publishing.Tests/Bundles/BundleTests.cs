using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Json.Schema;
using Trier.Publishing.BallotFiles;
using Trier.Publishing.Bundles;
using Trier.Statistics.Randomness;
using Trier.TestKit;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Publishing;
using UglyToad.PdfPig;

namespace Trier.Publishing.Tests.Bundles;

/// <summary>The bundle: the same record gives the same one twice, it is whole, asks for nothing, fits its schemas, and the verdict can be drawn from it again.</summary>
public sealed partial class BundleTests
{
    private static readonly ImmutableArray<BundleFile> Files = Bundle.Of(MadeUp.Publication(MadeUp.Record(agreed: i => new(i == 4, i == 7))));

    [Fact]
    public void The_same_record_gives_the_same_files_but_for_the_pdfs_whose_text_pages_and_geometry_are()
    {
        var again = Bundle.Of(MadeUp.Publication(MadeUp.Record(agreed: i => new(i == 4, i == 7))));
        Assert.Equal(Files.Select(file => file.Path), again.Select(file => file.Path));
        Assert.All(Files.Zip(again), pair =>
        {
            if (pair.First.IsPdf()) Assert.Equal(Geometry(pair.First), Geometry(pair.Second));
            else Assert.True(pair.First.Bytes.AsSpan().SequenceEqual(pair.Second.Bytes.AsSpan()), pair.First.Path);
        });
        var without = Files.RemoveAll(file => file.IsPdf());
        Assert.Equal(BundleZip.Pack(without), BundleZip.Pack(again.RemoveAll(file => file.IsPdf())));
    }

    [Fact]
    public void The_order_of_the_record_s_lists_changes_nothing()
    {
        var record = MadeUp.Record();
        var turned = record with { Voters = [.. record.Voters.Reverse()], Samples = [.. record.Samples.Reverse()] };
        var (one, other) = (Bundle.Of(MadeUp.Publication(record)), Bundle.Of(MadeUp.Publication(turned)));
        Assert.Equal(one.Text("verdict.json"), other.Text("verdict.json"));
        Assert.Equal(one.Text("ballots.csv"), other.Text("ballots.csv"));
        Assert.Equal(one.Text("index.html"), other.Text("index.html"));
    }

    [Fact]
    public void The_page_asks_for_nothing_and_holds_no_script()
    {
        var page = Files.Text("index.html");
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<link", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", page, StringComparison.OrdinalIgnoreCase);
        Assert.All(Urls().Matches(page).Select(match => match.Value), url => Assert.StartsWith("url(data:", url, StringComparison.Ordinal));
        Assert.All(Addresses().Matches(page).Select(match => match.Value), address => Assert.Equal("http://www.w3.org/2000/svg", address));
        Assert.Contains("default-src 'none'", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_svg_is_an_image_with_title_description_and_text_as_text()
    {
        var drawings = Files.Where(file => file.Path.EndsWith(".svg", StringComparison.Ordinal)).ToList();
        Assert.Equal(16, drawings.Count);
        XNamespace svg = "http://www.w3.org/2000/svg";
        Assert.All(drawings, drawing =>
        {
            var root = XDocument.Parse(Encoding.UTF8.GetString(drawing.Bytes.AsSpan())).Root!;
            Assert.Equal("img", root.Attribute("role")!.Value);
            Assert.NotEmpty(root.Element(svg + "title")!.Value);
            Assert.True(root.Element(svg + "desc")!.Value.Length > 40, drawing.Path);
            Assert.Contains(root.Descendants(svg + "text"), text => text.Value == "Thistle" || text.Value == "B" || text.Value == "House" || text.Value.StartsWith("Taster", StringComparison.Ordinal));
            Assert.All(root.Descendants(svg + "text"), text => Assert.True(double.Parse(text.Attribute("font-size")!.Value, System.Globalization.CultureInfo.InvariantCulture) >= 20, $"{drawing.Path}: {text}"));
        });
    }

    [Theory]
    [InlineData("wide", 1920, 1080)]
    [InlineData("square", 1080, 1080)]
    [InlineData("tall", 1080, 1920)]
    [InlineData("overlay", 1920, 1080)]
    public void Pictures_have_their_size(string format, int width, int height)
    {
        foreach (var chart in new[] { "rack", "places", "forest", "repeat" })
            Assert.Equal((width, height), Png.Size(Files.Single(file => file.Path == $"charts/{chart}-{format}.png").Bytes.AsSpan()));
    }

    [Fact]
    public void The_json_fits_the_published_schemas_and_something_else_does_not()
    {
        Assert.Equal(Files.Text("verdict.schema.json"), File.ReadAllText(Path.Combine(Checkout.Root, "docs", "handbook", "verdict.schema.json")));
        foreach (var name in new[] { "verdict", "record" })
        {
            var schema = JsonSchema.FromText(Files.Text($"{name}.schema.json"));
            Assert.Equal([], Faults(schema, Files.Text($"{name}.json")));
            Assert.NotEmpty(Faults(schema, Files.Text($"{name}.json").Replace("\"seed\": \"11\"", "\"seed\": 11", StringComparison.Ordinal)));
            Assert.NotEmpty(Faults(schema, "{}"));
        }
    }

    [Theory]
    [InlineData("firsts")]
    [InlineData("place points")]
    [InlineData("mean liking")]
    [InlineData("few")]
    [InlineData("asked")]
    public void The_schemas_fit_other_trials_too(string kind)
    {
        var record = MadeUp.Record();
        record = kind switch
        {
            "firsts" => record with { Plan = new(new Trier.Trials.Plans.CountingRule.Firsts(), false) },
            "place points" => record with { Plan = new(new Trier.Trials.Plans.CountingRule.PlacePoints([3, 2, 1, 0]), true) },
            "asked" => MadeUp.Asked(),
            "mean liking" => record with { Plan = new(new Trier.Trials.Plans.CountingRule.MeanLiking(), true) },
            _ => record with { Voters = [.. record.Voters.Take(2)], Withdrawals = [], Notes = [] },
        };
        var files = Bundle.Of(MadeUp.Publication(record));
        Assert.Equal([], Faults(JsonSchema.FromText(Schemas.Verdict), files.Text("verdict.json")));
        Assert.Equal([], Faults(JsonSchema.FromText(Schemas.Record), files.Text("record.json")));
        Assert.Empty(BundleCheck.Of(Named(files)).Value.Differences);
    }

    [Theory]
    [InlineData("[9999999, 0.055, 0, 0]", "The rule in record.json cannot be counted. A place has 1000 points at most.")]
    [InlineData("[1.0004, 1, 0, 0]", "The rule in record.json cannot be counted. Points have three decimals at most.")]
    [InlineData("[1, 2, 3, 4]", "The rule in record.json cannot be counted. Place points fall from the first place to the last.")]
    public void Place_points_that_cannot_be_counted_are_refused_in_a_sentence(string weights, string sentence)
    {
        var written = PublishedRecordJson.Write(MadeUp.Record() with { Plan = new(new Trier.Trials.Plans.CountingRule.PlacePoints([3, 2, 1, 0]), true) }, 11);
        var changed = System.Text.RegularExpressions.Regex.Replace(written, @"(?<=""weights"": )\[[^\]]*\]", weights, System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(1));
        Assert.NotEqual(written, changed);
        Assert.Equal(sentence, Assert.Single(PublishedRecordJson.Read(Encoding.UTF8.GetBytes(changed)).Problems).Sentence);
    }

    [Fact]
    public void The_verdict_drawn_from_a_bundle_is_equal()
    {
        var taken = BundleZip.Take(BundleZip.Pack([.. Files.Select(file => file with { Path = "verdict-v1/" + file.Path })]), BundleCheck.Files).Value;
        Assert.Empty(BundleCheck.Of(taken).Value.Differences);
    }

    [Fact]
    public void A_changed_bundle_is_not_equal_and_says_where()
    {
        var files = Named(Files);
        var verdict = Files.Text("verdict.json");
        Assert.Contains("tally[0].firsts is", Assert.Single(Differences(Bundle.VerdictFile, Once(verdict, "\"firsts\": ", "\"firsts\": 9"))), StringComparison.Ordinal);
        Assert.Contains("title is", Assert.Single(Differences(Bundle.VerdictFile, verdict.Replace("Thistle or calf?\",", "Calf!\",", StringComparison.Ordinal))), StringComparison.Ordinal);
        Assert.Contains("ballots.csv does not hold", Assert.Single(Differences(Bundle.BallotsFile, Files.Text(Bundle.BallotsFile) + "T99,1,417,,,,,\n")), StringComparison.Ordinal);
        Assert.Empty(Differences(Bundle.VerdictFile, verdict));

        IEnumerable<string> Differences(string name, string text) => BundleCheck.Of(files.SetItem(name, Encoding.UTF8.GetBytes(text))).Value.Differences;
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("nonsense")]
    [InlineData("{\"form\":\"trier record 1\",\"seed\":\"1\",\"record\":{\"head\":{\"title\":\"x\",\"invented\":false,\"fromFile\":true},\"plan\":{\"rule\":{\"name\":\"average place\"},\"juniorsCount\":true},\"samples\":[],\"voters\":[],\"withdrawals\":[],\"notes\":[]}}")]
    public void What_is_no_record_is_refused_in_a_sentence(string json)
    {
        var refused = BundleCheck.Of(ImmutableDictionary<string, byte[]>.Empty.Add(Bundle.RecordFile, Encoding.UTF8.GetBytes(json)));
        Assert.Contains("record.json", Assert.Single(refused.Problems).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_record_that_speaks_of_samples_it_does_not_list_is_refused()
    {
        var json = Files.Text(Bundle.RecordFile);
        var at = json.LastIndexOf("\"servingOrder\": [", StringComparison.Ordinal);
        var changed = json[..at] + json[at..].Replace("\"servingOrder\": [", "\"servingOrder\": [ \"Z\",", StringComparison.Ordinal);
        Assert.Contains("speaks of Z", Assert.Single(BundleCheck.Of(Named(Files).SetItem(Bundle.RecordFile, Encoding.UTF8.GetBytes(changed))).Problems).Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"unclear\": 1", "\"unclear\": 13")]
    [InlineData("\"yes\": ", "\"yes\": 9")]
    [InlineData("\"tooLittle\": ", "\"tooLittle\": -1")]
    public void Counts_that_cannot_be_are_refused(string find, string put)
    {
        var changed = Once(PublishedRecordJson.Write(MadeUp.Asked(), 11), find, put);
        Assert.Contains("The counts in record.json", Assert.Single(PublishedRecordJson.Read(Encoding.UTF8.GetBytes(changed)).Problems).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Ballots_of_a_file_become_numbers_and_the_same_verdict()
    {
        var ballots = BallotFile.Read(Encoding.UTF8.GetBytes("taster,317,582,904\nZoe,1,2,3\nBo,2,1,3\nAna,1,3,2\nCy,3,1,2\nDee,1,2,3\n"), "ballots", BallotFileOptions.Default).Value;
        var published = PublishedRecord.Of(ballots);
        Assert.Equal(["T05", "T02", "T01", "T03", "T04"], published.Voters.Select(voter => voter.Id));
        var files = Bundle.Of(new Publication { Verdict = Judge.Of(published, new Seed(1)) });
        Assert.DoesNotContain("Zoe", string.Concat(files.Select(file => file.Everything())), StringComparison.Ordinal);
        Assert.Empty(BundleCheck.Of(Named(files)).Value.Differences);
        Assert.DoesNotContain(files, file => file.Path == "key.json");
    }

    [Fact]
    public void The_data_dictionary_names_every_column_of_the_tables()
    {
        var dictionary = Files.Text("data-dictionary.csv");
        foreach (var (path, last) in new[] { ("ballots.csv", int.MaxValue), ("tasters.csv", int.MaxValue), ("wheels.csv", 4) })
            Assert.All(Files.Text(path).Split('\n')[0].Split(',').Take(last), column => Assert.Contains($"{path},{column},", dictionary, StringComparison.Ordinal));
    }

    [Fact]
    public void The_readme_names_every_file_of_the_top()
    {
        var readme = Files.Text("README.md");
        Assert.All(Files.Where(file => !file.Path.Contains('/', StringComparison.Ordinal) && file.Path != "README.md"), file => Assert.Contains(file.Path, readme, StringComparison.Ordinal));
    }

    private static string Once(string text, string find, string put)
    {
        var at = text.IndexOf(find, StringComparison.Ordinal);
        return text[..at] + put + text[(at + find.Length)..];
    }

    private static ImmutableDictionary<string, byte[]> Named(ImmutableArray<BundleFile> files) => files.Where(file => BundleCheck.Files.Contains(file.Path)).ToImmutableDictionary(file => file.Path, file => file.Bytes.ToArray(), StringComparer.Ordinal);

    private static List<string> Faults(JsonSchema schema, string json)
    {
        using var document = JsonDocument.Parse(json);
        var result = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return result.IsValid ? [] : [.. (result.Details ?? []).Where(detail => detail.Errors is { Count: > 0 }).Select(detail => $"{detail.InstanceLocation}: {string.Join("; ", detail.Errors!.Values)}").DefaultIfEmpty("not valid")];
    }

    private static string Geometry(BundleFile file)
    {
        using var pdf = PdfDocument.Open([.. file.Bytes]);
        return string.Join('\n', pdf.GetPages().Select(page => FormattableString.Invariant($"{page.Width:0.###} {page.Height:0.###} {page.Paths.Count} {string.Concat(page.Letters.Select(letter => FormattableString.Invariant($"{letter.Value}{letter.Location.X:0.###},{letter.Location.Y:0.###} ")))}")));
    }

    [GeneratedRegex(@"url\([^)]{0,20}", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Urls();

    [GeneratedRegex(@"https?://[^""' <)]+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Addresses();
}
