using Trier.Publishing.Documents;
using Trier.Publishing.Tests.Bundles;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Trier.Publishing.Tests.Documents;

/// <summary>The PDFs, read back: paper, page one, the same words as the page, embedded fonts, nothing over the edge.</summary>
public sealed class PdfTests
{
    public static TheoryData<PaperSize, double, double> Papers => new() { { PaperSize.A4, 595.28, 841.89 }, { PaperSize.Letter, 612, 792 } };

    [Theory]
    [MemberData(nameof(Papers))]
    public void Page_one_holds_question_sentences_every_ballot_and_both_answers(PaperSize paper, double width, double height)
    {
        var publication = MadeUp.Publication(MadeUp.Record());
        var document = VerdictDocument.Of(publication);
        using var pdf = PdfDocument.Open(PdfPages.Write(document, paper));
        var one = pdf.GetPage(1);
        Assert.Equal((width, height), (one.Width, one.Height));
        var text = Text(one);
        Assert.Contains("Which do we like best?", text, StringComparison.Ordinal);
        Assert.All(document.Say, sentence => Assert.Contains(Bare(sentence), Bare(text), StringComparison.Ordinal));
        Assert.All(publication.Verdict.Ballots, ballot => Assert.Contains(ballot.Name, text, StringComparison.Ordinal));
        foreach (var word in new[] { "Best bet for the next", "Shown", "Not shown", "KEYOPENED17:00" }) Assert.Contains(Bare(word), Bare(text), StringComparison.Ordinal);
        Assert.All(pdf.GetPages(), page => Assert.All(page.Letters, letter => Assert.True(letter.BoundingBox.Right <= width - 30 && letter.BoundingBox.Left >= 30 && letter.BoundingBox.Bottom >= 15, $"page {page.Number}: {letter.Value} at {letter.BoundingBox}")));
        Assert.All(pdf.GetPages(), page => Assert.All(page.Letters, letter => Assert.Matches("^[A-Z]{6}\\+Source", letter.FontName)));
    }

    [Theory]
    [MemberData(nameof(Papers))]
    public void The_summary_is_one_page(PaperSize paper, double width, double height)
    {
        using var pdf = PdfDocument.Open(PdfPages.Write(VerdictDocument.Summary(MadeUp.Publication(MadeUp.Record())), paper));
        Assert.Equal(1, pdf.NumberOfPages);
        Assert.Equal((width, height), (pdf.GetPage(1).Width, pdf.GetPage(1).Height));
    }

    [Fact]
    public void What_the_verdict_page_tells_of_other_draws_other_weights_and_two_tastes_is_told_to_strangers_too()
    {
        var record = MadeUp.Record();
        var crowd = record with { Voters = [.. Enumerable.Range(0, 3).SelectMany(_ => record.Voters).Select((voter, i) => voter with { Id = $"T{i + 10}", Name = $"Person {i}", Voice = null })] };
        var captions = VerdictDocument.Of(MadeUp.Publication(crowd)).Passages.ToDictionary(passage => passage.Word, passage => string.Join('\n', passage.Blocks.OfType<Table>().Select(table => table.Caption)));
        Assert.Contains("as many voices drawn again from these same ballots", captions["How sure"], StringComparison.Ordinal);
        Assert.Contains("Place points with other weights", captions["The tally"], StringComparison.Ordinal);
        Assert.Contains("Two tastes, by a model that asks nobody", captions["Who disagrees"], StringComparison.Ordinal);
    }

    [Fact]
    public void The_paper_says_what_the_page_says()
    {
        var document = VerdictDocument.Of(MadeUp.Publication(MadeUp.Asked()));
        using var pdf = PdfDocument.Open(PdfPages.Write(document, PaperSize.A4));
        var (paper, page) = (Bare(string.Concat(pdf.GetPages().Select(Text))), Bare(System.Net.WebUtility.HtmlDecode(HtmlPage.Write(document))));
        var words = document.Passages.SelectMany(passage => passage.Blocks).SelectMany(block => block switch
        {
            Paragraph paragraph => [paragraph.Text],
            Listing listing => listing.Items,
            Terms terms => terms.Items.Select(item => item.Text),
            Table table => table.Rows.SelectMany(row => row.Select(cell => cell.Text)).Append(table.Caption),
            _ => Enumerable.Empty<string>(),
        }).Where(text => text.Length > 0).ToList();
        Assert.True(words.Count > 60);
        Assert.All(words, text => Assert.Contains(Bare(text), page, StringComparison.Ordinal));

        // A cell or sentence may be broken over lines or pages; each of its words stands on the paper.
        Assert.All(words.SelectMany(text => text.Split(' ')), word => Assert.Contains(Bare(word), paper, StringComparison.Ordinal));
    }

    private static string Text(Page page) => page.Text;

    private static string Bare(string text) => string.Concat(text.Where(sign => !char.IsWhiteSpace(sign)));
}
