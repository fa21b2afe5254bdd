using System.Globalization;
using System.Text.Json;
using Trier.Publishing.BallotFiles;
using Trier.Publishing.Tests.BallotFiles;
using Trier.Publishing.Verdicts;
using Trier.Statistics.Randomness;
using Trier.Trials.Verdicts;

namespace Trier.Publishing.Tests.Verdicts;

public class VerdictJsonTests
{
    [Fact]
    public void The_promised_members_are_there_in_full_precision()
    {
        using var json = JsonDocument.Parse(VerdictJson.Write(DemoFileTests.Judged(DemoFileTests.Read())));
        var root = json.RootElement;
        Assert.Equal("5", root.GetProperty("methodsVersion").GetString());
        Assert.Equal(14, root.GetProperty("tasters").GetInt32());
        var check = root.GetProperty("samples").EnumerateArray().Single(s => s.GetProperty("id").GetString() == "862");
        Assert.Equal(("417", "417", "862"), (check.GetProperty("wheel").GetString(), check.GetProperty("repeatOf").GetString(), check.GetProperty("codes")[0].GetString()));
        Assert.Equal("593", root.GetProperty("leader")[0].GetString());
        var first = root.GetProperty("tally")[0];
        Assert.Equal(["id", "firsts", "firstsShared", "lasts", "averagePlace", "placePoints", "meanLiking"], new[] { "id", "firsts", "firstsShared", "lasts", "averagePlace", "placePoints", "meanLiking" }.Where(m => first.TryGetProperty(m, out _)));
        Assert.Equal(24.5 / 12, first.GetProperty("averagePlace").GetDouble());
        var friedman = root.GetProperty("friedman");
        Assert.Equal(("exact", 4), (friedman.GetProperty("method").GetString(), friedman.GetProperty("degreesOfFreedom").GetInt32()));
        Assert.Equal(9.824267782426778, friedman.GetProperty("statistic").GetDouble(), 1e-9);
        Assert.True(friedman.TryGetProperty("pValue", out _) && friedman.TryGetProperty("chiSquareP", out _));
        Assert.Equal(0.2046722454672245, root.GetProperty("kendallW").GetDouble(), 1e-9);
        Assert.Equal("exact", root.GetProperty("gate").GetProperty("method").GetString());
        Assert.Equal(5, root.GetProperty("level").GetInt32());
        var pair = root.GetProperty("pairs")[0];
        Assert.Equal(("593", "751", true, 0.0009765625), (pair.GetProperty("better").GetString(), pair.GetProperty("worse").GetString(), pair.GetProperty("shown").GetBoolean(), pair.GetProperty("pValue").GetDouble()));
        Assert.Equal((3, 3), (root.GetProperty("kemeny").GetProperty("optima").GetInt32(), root.GetProperty("kemeny").GetProperty("orders").GetArrayLength()));
        Assert.NotEqual(0, root.GetProperty("sentences").GetArrayLength());
        Assert.NotEqual(0, root.GetProperty("cautions").GetArrayLength());
    }

    [Fact]
    public void Where_nothing_can_be_tested_the_tests_are_null_and_the_tally_stays()
    {
        using var json = JsonDocument.Parse(VerdictJson.Write(Judge.Of(Reading.Text("taster,1,2,3\nAna,1,1,1\n").Value, new Seed(1))));
        Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty("gate").ValueKind);
        Assert.Equal(JsonValueKind.Null, json.RootElement.GetProperty("friedman").ValueKind);
        Assert.Equal(3, json.RootElement.GetProperty("tally").GetArrayLength());
        Assert.Equal(0, json.RootElement.GetProperty("level").GetInt32());
    }

    [Fact]
    public void Other_weights_are_counted_and_name_whoever_leads_by_them()
    {
        // By hand: A first, first, third, first; B second, first; C second of the third ballot, and so on.
        using var json = JsonDocument.Parse(VerdictJson.Write(Judge.Of(Reading.Text("taster,A,B,C,D\nx,1,2,3,4\ny,2,1,3,4\nz,1,4,2,3\nw,1,2,3,4\n").Value, new Seed(1))));
        var tried = json.RootElement.GetProperty("otherWeights").EnumerateArray().Select(one => (
            string.Join('-', one.GetProperty("weights").EnumerateArray()),
            string.Join(' ', one.GetProperty("leader").EnumerateArray()),
            string.Join(' ', one.GetProperty("samples").EnumerateArray().Select(sample => $"{sample.GetProperty("id")}{sample.GetProperty("points")}"))));
        Assert.Equal([("6-3-1-0", "A", "A21 B12 C6 D1"), ("2-1-0-0", "A", "A7 B4 C1 D0"), ("1-1-1-0", "A C", "A4 B3 C4 D1")], tried);
    }

    [Fact]
    public void Groups_are_told_by_who_is_in_them_and_never_by_name()
    {
        var record = Small;
        var text = VerdictJson.Write(Judge.Of(record with { Voters = [.. record.Voters.Select(voter => voter with { Group = voter.Id is "v" ? null : voter.Id is "x" or "u" ? "Qgroupq" : "the others" })] }, new Seed(1)));
        Assert.DoesNotContain("Qgroupq", text, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(text);
        Assert.Equal(["u x", "y z"], json.RootElement.GetProperty("groups").EnumerateArray().Select(group => string.Join(' ', group.GetProperty("tasters").EnumerateArray())));
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void Same_record_and_seed_give_the_same_bytes_in_every_language(string culture)
    {
        var plain = VerdictJson.Write(Judge.Of(Small, new Seed(1)));
        Assert.Equal(plain, VerdictJson.Write(Judge.Of(Small, new Seed(1))));
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(plain, VerdictJson.Write(Judge.Of(Small, new Seed(1))));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Written_ballots_read_back_as_the_same_ballots()
    {
        var record = DemoFileTests.Read();
        var text = BallotsCsv.Write(record);
        var back = Reading.Text(text, Unplaced.NotTasted, ("862", "417")).Value;
        Assert.Equal(Reading.Text(text).Orders(), Reading.Bytes(Reading.Demo).Orders());
        Assert.Equal(record.Voters.Select(v => v.Answers.Select(a => (a.Key, a.Value))), back.Voters.Select(v => v.Answers.Select(a => (a.Key, a.Value))));
        Assert.Equal(record.Voters.Select(v => v.ServingOrder.AsEnumerable()), back.Voters.Select(v => v.ServingOrder.AsEnumerable()));
        Assert.Equal(VerdictJson.Write(DemoFileTests.Judged(record)), VerdictJson.Write(DemoFileTests.Judged(back)).Replace("\"title\": \"test\"", "\"title\": \"demo\"", StringComparison.Ordinal));
    }

    [Fact]
    public void A_remark_that_looks_like_a_formula_is_guarded_and_read_back()
    {
        const string text = "taster,code,place,remark\nAna,1,1,\"=HYPERLINK(\"\"x\"\"), good\"\nAna,2,2,'-5\n";
        var record = Reading.Text(text).Value;
        var written = BallotsCsv.Write(record);
        Assert.Contains("\"'=HYPERLINK(\"\"x\"\"), good\"", written, StringComparison.Ordinal);
        Assert.Equal("=HYPERLINK(\"x\"), good", Reading.Text(written).Value.Voters[0].Answers["1"].Remark);
        Assert.DoesNotContain("HYPERLINK", BallotsCsv.Write(record, withRemarks: false), StringComparison.Ordinal);
    }

    private static TastingRecord Small => Reading.Text("taster,A,B,C\nx,1,2.5,2.5\ny,2,1,3\nz,1,2,\nu,3,1,2\nv,1,3,2\n").Value;
}
