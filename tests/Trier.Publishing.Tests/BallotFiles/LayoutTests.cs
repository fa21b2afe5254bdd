using System.Globalization;
using System.Text;
using Trier.Publishing.BallotFiles;
using Trier.Trials.Verdicts;

namespace Trier.Publishing.Tests.BallotFiles;

public class LayoutTests
{
    private const string Rows = "taster,317,582,904\nAna,1,2,3\nBo,2,1,3\n";

    [Fact]
    public void One_row_a_taster_gives_orders_by_code()
    {
        var outcome = Reading.Text(Rows);
        Assert.Equal(["Ana: 317>582>904", "Bo: 582>317>904"], outcome.Orders());
        Assert.Equal(["317", "582", "904"], outcome.Value.Samples.Select(s => s.Id));
        Assert.True(outcome.Value.Head.FromFile);
        Assert.Empty(outcome.Value.InputCautions);
    }

    [Theory]
    [InlineData("taster,317,582,904\nAna,1,2.5,2.5\n")]
    [InlineData("taster;317;582;904\nAna;1;2,5;2,5\n")]
    [InlineData("taster\t317\t582\t904\nAna\t1\t2,5\t2.5\n")]
    [InlineData("taster,317,582,904\nAna,1,\"2,5\",\"2,5\"\n")]
    [InlineData("TASTER;317;582;904\r\nAna;1;2;2\r\n")]
    [InlineData("\n\ntaster , 317 , 582 , 904\n\n Ana , 1 , 3 , 3 \n\n")]
    public void Comma_semicolon_and_tab_with_decimal_comma_or_point_read_alike(string text)
    {
        var outcome = Reading.Text(text);
        Assert.Equal(["Ana: 317>582=904"], outcome.Orders());
        Assert.Empty(outcome.Value.InputCautions);
    }

    [Theory]
    [InlineData("utf-8", true)]
    [InlineData("utf-8", false)]
    [InlineData("utf-16", true)]
    [InlineData("utf-16", false)]
    [InlineData("utf-16BE", true)]
    [InlineData("utf-16BE", false)]
    public void Utf8_and_utf16_read_alike_with_and_without_a_mark(string name, bool mark)
    {
        var encoding = Encoding.GetEncoding(name);
        byte[] bytes = [.. mark ? encoding.GetPreamble() : [], .. encoding.GetBytes(Rows.Replace("Ana", "Amélia", StringComparison.Ordinal))];
        Assert.Equal(["Amélia: 317>582>904", "Bo: 582>317>904"], Reading.Bytes(bytes).Orders());
    }

    [Fact]
    public void Gaps_in_the_places_are_told_and_only_the_order_is_used()
    {
        var outcome = Reading.Text("taster,A,B,C,D\nAna,1,2,4,\nBo,1,1,3,4\nCy,1,1,2,3\nDi,2,2,3,4\n");
        Assert.Equal(["Ana: A>B>C", "Bo: A=B>C>D", "Cy: A=B>C>D", "Di: A=B>C>D"], outcome.Orders());
        Assert.Equal(["The places of Ana have gaps; only their order is used."], outcome.Value.InputCautions);
    }

    [Fact]
    public void An_empty_place_means_not_tasted_unless_told_that_it_means_last()
    {
        const string text = "taster,A,B,C\nAna,1,,\nBo,1,2,3\nCy,,,\n";
        Assert.Equal(["Ana: A", "Bo: A>B>C", "Cy: "], Reading.Text(text).Orders());
        Assert.Equal(["Ana: A | B=C", "Bo: A>B>C", "Cy: "], Reading.Text(text, Unplaced.Last).Orders());
        Assert.Equal(["000001: B>A", "000002: C | A=B"], Reading.Text("count,order\n1,B>A\n1,C", Unplaced.Last).Orders().Select(o => o.Replace(" | C", "", StringComparison.Ordinal)));
    }

    [Fact]
    public void One_row_a_sample_gives_places_liking_words_and_serving_order()
    {
        var outcome = Reading.Bytes(Reading.Demo, Unplaced.NotTasted, ("862", "417"));
        var record = outcome.Value;
        Assert.Equal(14, record.Voters.Length);
        Assert.Equal(["238", "417", "593", "751", "862", "946"], record.Samples.Select(s => s.Id));
        Assert.Equal("417", record.Samples.Single(s => s.Id == "862").RepeatOf);
        Assert.Contains("T08: 417>593=751>862>238>946", outcome.Orders());
        Assert.Contains("T09: ", outcome.Orders());
        var first = record.Voters[0];
        Assert.Equal(["417", "593", "862", "238", "946", "751"], first.ServingOrder);
        Assert.Equal((4, 1), (first.Answers["946"].Liking, first.Answers["946"].Salt));
        Assert.Equal(["bitter", "grassy"], first.Answers["593"].Words);
        Assert.Equal("Too fierce for my mouth, sorry.", first.Answers["946"].Remark);
        Assert.Equal(VoterMarks.FewerSamples, record.Voters.Single(v => v.Id == "T10").Marks);
    }

    [Fact]
    public void A_code_that_one_taster_alone_has_is_pointed_at()
    {
        var outcome = Reading.Text("taster,code,place\nA,1,1\nA,2,2\nB,1,1\nB,2,2\nC,1,1\nC,2,2\nD,1,1\nD,3,2\n");
        Assert.Equal(["Only D has the code 3 (line 9); look whether it is a slip."], outcome.Value.InputCautions);
    }

    [Fact]
    public void Counted_orders_become_that_many_ballots()
    {
        Assert.Equal(["000001: B>A=C>D", "000002: B>A=C>D", "000003: A>B"], Reading.Text("count;order\n2;B>A=C>D\n1;A > B\n").Orders());
    }

    [Fact]
    public void The_preference_data_formats_read_with_names_ties_and_missing_alternatives()
    {
        const string text = "# FILE NAME: x.toi\n# TITLE: Invented\n# DATA TYPE: toi\n# NUMBER ALTERNATIVES: 4\n# NUMBER VOTERS: 3\n"
            + "# ALTERNATIVE NAME 1: Thistle\n# ALTERNATIVE NAME 2: House\n# ALTERNATIVE NAME 3: Hot\n2: 1,{2,3},4\n1: 3, 1\n";
        Assert.Equal(["000001: Thistle>Hot=House>4", "000002: Thistle>Hot=House>4", "000003: Hot>Thistle"], Reading.Text(text).Orders());
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("en-US")]
    public void The_machine_s_language_changes_nothing(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        var plain = Reading.Bytes(Reading.Demo).Orders();
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Assert.Equal(plain, Reading.Bytes(Reading.Demo).Orders());
            Assert.Equal(["I: 317>582"], Reading.Text("TASTER;317;582\nI;1,5;2,0").Orders());
            Assert.Equal("Line 2, 317: place 7, but there are 2 samples; places run from 1 to 2.", Reading.Text("taster,317,582\nI,7,2").Problems[0].Sentence);
            Assert.Equal(["000001: B>A"], Reading.Text("COUNT,ORDER\n1,B>A").Orders());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
