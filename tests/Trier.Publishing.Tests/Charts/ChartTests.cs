using System.Collections.Immutable;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Trier.Publishing.Charts;
using Trier.Publishing.Drawings;
using Trier.Publishing.Tests.Bundles;
using Trier.Statistics.Randomness;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Publishing;

namespace Trier.Publishing.Tests.Charts;

/// <summary>The charts as drawings: nothing over an edge, the same shapes for every writer, marks told apart by shape and fill.</summary>
public sealed partial class ChartTests
{
    private static readonly Verdict Verdict = Judge.Of(PublishedRecord.Of(MadeUp.Record()), new Seed(5));

    public static TheoryData<string, double> Widths => [.. from chart in new[] { "rack", "places", "forest", "repeat" } from width in new[] { 350.0, 480, 640, 800, 1200 } select (chart, width)];

    [Theory]
    [MemberData(nameof(Widths))]
    public void Nothing_hangs_over_an_edge_at_any_width_even_with_long_names(string name, double width)
    {
        foreach (var verdict in new[] { Verdict, Judge.Of(Long(), new Seed(5)) })
        {
            var drawn = ChartSheet.Of(verdict).Single(chart => chart.Name == name).Natural(width, 1);
            Assert.Equal(width, drawn.Width);
            Assert.All(drawn.Shapes.OfType<Words>(), words =>
            {
                var wide = TextRuler.Width(words.Text, words.Size, words.Face);
                var left = words.X - words.Anchor switch { Anchor.Middle => wide / 2, Anchor.End => wide, _ => 0 };
                Assert.True(left >= -1 && left + wide <= width + 1, $"{words.Text}: {left:0} to {left + wide:0} of {width}");
                Assert.InRange(words.Y, 0, drawn.Height);
            });
            Assert.All(drawn.Shapes.OfType<Area>().SelectMany(area => area.Outline.Segments).Where(part => part.Kind != SegmentKind.Close), part =>
            {
                Assert.InRange(part.To.X, -9, width + 9);
                Assert.InRange(part.To.Y, -2, drawn.Height + 2);
            });
        }
    }

    [Fact]
    public void Every_ballot_has_its_row_and_every_wheel_its_cell()
    {
        var drawn = RackChart.Draw(VerdictRack.Of(Verdict), 800);
        var texts = drawn.Shapes.OfType<Words>().Select(words => words.Text).ToList();
        Assert.All(Verdict.Ballots, ballot => Assert.Single(texts, text => text.StartsWith(ballot.Name + " ", StringComparison.Ordinal) || text == ballot.Name));
        Assert.Equal(Verdict.Ballots.Sum(ballot => ballot.Groups.Sum(group => group.Length)), texts.Count(text => text is "House" or "Thistle" or "Hot" or "Old Hot"));
        Assert.Contains("no Old Hot", texts);
        Assert.Single(texts, text => text == "= ");
        Assert.Contains("† compared notes. ‡ came late. ° junior. “=”: a tie with the one before. Torn end: fewer wheels tasted.", texts);
    }

    [Fact]
    public void Thousands_of_ballots_are_gathered_by_kind_and_none_is_lost()
    {
        var record = MadeUp.Record();
        var many = record with { Voters = [.. Enumerable.Range(0, 3_000).Select(i => record.Voters[i % 10] with { Id = $"T{i:0000}", Voice = null })] };
        var rack = VerdictRack.Of(Judge.Headline(PublishedRecord.Of(many), new Seed(5)));
        var group = Assert.Single(rack.Groups);
        Assert.Equal(3_000, group.Rows.Sum(row => int.Parse(row.Name.Split(' ')[0].Replace("\u202f", "", StringComparison.Ordinal), System.Globalization.CultureInfo.InvariantCulture)));
        Assert.InRange(group.Rows.Count, 5, 10);
    }

    [Fact]
    public void Every_writer_writes_the_same_drawing()
    {
        var picture = ChartSheet.Picture(Verdict, ChartSheet.Of(Verdict)[0], ChartFormat.Wide);
        XNamespace svg = "http://www.w3.org/2000/svg";
        var root = XDocument.Parse(SvgWriter.Write(picture, "rack", SvgPlace.File)).Root!;
        Assert.Equal(picture.Shapes.OfType<Words>().Select(words => words.Text), root.Descendants(svg + "text").Select(text => text.Value));
        Assert.Equal(picture.Shapes.OfType<Area>().Select(area => area.Outline.Data()), root.Element(svg + "g")!.Elements(svg + "path").Select(path => path.Attribute("d")!.Value));
        Assert.Equal("#F6F2E4", root.Elements(svg + "path").Single().Attribute("fill")!.Value);

        // The pixel in the middle of a cell is its tone, the one in a corner the ground.
        var cell = picture.Shapes.OfType<Area>().First(area => area.Fill == Tone.Butter && area.Outline.Segments[0].Kind == SegmentKind.Move && area.Outline.Segments.Length == 5);
        using var bitmap = SkiaSharp.SKBitmap.Decode(PngWriter.Write(picture));
        var (from, to) = (cell.Outline.Segments[0].To, cell.Outline.Segments[2].To);
        Assert.Equal("#ffeccb6a", bitmap.GetPixel((int)(to.X - 8), (int)((from.Y + to.Y) / 2)).ToString());
        Assert.Equal("#fff6f2e4", bitmap.GetPixel(2, 2).ToString());
        using var overlay = SkiaSharp.SKBitmap.Decode(PngWriter.Write(ChartSheet.Picture(Verdict, ChartSheet.Of(Verdict)[3], ChartFormat.Overlay)));
        Assert.Equal("#00000000", overlay.GetPixel(2, 2).ToString());
    }

    [Fact]
    public void A_page_of_the_site_gives_its_own_colours_to_a_drawing()
    {
        var drawn = SvgWriter.Write(PlacesChart.Draw(VerdictPlaces.Of(Verdict), 800), "places", SvgPlace.Site, "chart");
        Assert.DoesNotMatch(Hex(), drawn);
        Assert.Contains("var(--ink)", drawn, StringComparison.Ordinal);
    }

    [Fact]
    public void Half_a_mark_keeps_to_its_left_half()
    {
        for (var shape = 1; shape <= WheelLook.Count; shape++)
        {
            var half = MarkDrawing.HalfOf(shape).Segments.Where(part => part.Kind != SegmentKind.Close).Select(part => part.To).ToList();
            Assert.Equal(8, half.Max(spot => spot.X), 1e-9);
            Assert.True(half.Min(spot => spot.X) < 4, $"shape {shape}");
        }
    }

    [Fact]
    public void Samples_without_marks_get_shapes_of_their_own()
    {
        var record = MadeUp.Record();
        var looks = VerdictLooks.Of(record with { Samples = [.. Enumerable.Range(0, 16).Select(i => new SampleRecord($"S{i:00}", $"S{i:00}", null, null, null, Trier.Trials.Makes.WheelFacts.None))] });
        Assert.Equal(16, looks.Values.Select(look => (look.Shape, look.Fill)).Distinct().Count());
    }

    private static TastingRecord Long()
    {
        var record = PublishedRecord.Of(MadeUp.Record());
        return record with
        {
            Samples = [.. record.Samples.Select(sample => sample with { Name = sample.Name + " of the northern mountain dairies" })],
            Voters = [.. record.Voters.Select(voter => voter with { Name = "Maria da Conceição de Almeida Salgueiro " + voter.Id })],
        };
    }

    [GeneratedRegex("#[0-9A-F]{6}", RegexOptions.None, 1000)]
    private static partial Regex Hex();
}
