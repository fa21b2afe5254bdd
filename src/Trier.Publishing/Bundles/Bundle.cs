using System.Collections.Immutable;
using System.Text;
using Trier.Publishing.BallotFiles;
using Trier.Publishing.Charts;
using Trier.Publishing.Documents;
using Trier.Publishing.Drawings;
using Trier.Publishing.Keys;
using Trier.Publishing.Verdicts;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Publishing;

namespace Trier.Publishing.Bundles;

/// <summary>
/// Everything that is published of a verdict, as files. The same publication gives the same files, byte for byte, but for the PDFs, whose
/// text, pages and geometry are the same.
/// </summary>
public static class Bundle
{
    /// <summary>The record that the verdict can be drawn from again.</summary>
    public const string RecordFile = "record.json";

    /// <summary>The verdict's numbers and sentences.</summary>
    public const string VerdictFile = "verdict.json";

    /// <summary>Every ballot.</summary>
    public const string BallotsFile = "ballots.csv";

    /// <summary>The files, sorted by path.</summary>
    /// <param name="publication">What is published: a verdict of a <see cref="PublishedRecord"/>.</param>
    /// <exception cref="ArgumentException">The verdict was drawn from a record that says more than may be published.</exception>
    public static ImmutableArray<BundleFile> Of(Publication publication)
    {
        ArgumentNullException.ThrowIfNull(publication);
        var verdict = publication.Verdict;
        // A verdict of the whole record would carry names in its sentences: such a mistake must not leave the house.
        if (!PublishedRecordJson.IsPublished(verdict.Record)) throw new ArgumentException("Only a verdict of a published record can be published.", nameof(publication));
        var document = VerdictDocument.Of(publication);
        var summary = VerdictDocument.Summary(publication);
        var charts = ChartSheet.Of(verdict);
        var files = new List<BundleFile>
        {
            Text("README.md", BundleWords.Readme(publication, charts)),
            Text("index.html", HtmlPage.Write(document)),
            Text(BallotsFile, BallotsCsv.Write(verdict.Record)),
            Text("tasters.csv", PeopleCsv.Tasters(verdict)),
            Text("wheels.csv", PeopleCsv.Wheels(verdict)),
            Text("data-dictionary.csv", DataDictionary.Write()),
            Text(VerdictFile, VerdictJson.Write(verdict)),
            Text("verdict.schema.json", Schemas.Verdict),
            Text(RecordFile, PublishedRecordJson.Write(verdict.Record, verdict.Seed)),
            Text("record.schema.json", Schemas.Record),
            Text("method.md", BundleWords.Method(publication)),
            Text("headlines.md", BundleWords.Headlines(publication)),
            Text("alternative-texts.md", BundleWords.AlternativeTexts(publication, charts)),
            Pdf("verdict-a4.pdf", document, PaperSize.A4),
            Pdf("verdict-letter.pdf", document, PaperSize.Letter),
            Pdf("summary-a4.pdf", summary, PaperSize.A4),
            Pdf("summary-letter.pdf", summary, PaperSize.Letter),
        };
        if (publication.Key is { } key)
        {
            files.Add(Text("key.json", KeyFile.Write(key.Tasting, key.Commitments)));
            files.Add(Text("check-the-key.md", BundleWords.CheckTheKey(key)));
        }

        foreach (var chart in charts)
        {
            foreach (var format in Enum.GetValues<ChartFormat>())
            {
                var picture = ChartSheet.Picture(verdict, chart, format);
                var name = $"charts/{chart.Name}-{format.ToString().ToLowerInvariant()}";
                files.Add(Text(name + ".svg", SvgWriter.Write(picture, chart.Name, SvgPlace.File)));
                files.Add(new(name + ".png", [.. PngWriter.Write(picture)]));
            }
        }

        return [.. files.OrderBy(file => file.Path, StringComparer.Ordinal)];
    }

    private static BundleFile Text(string path, string text) => new(path, [.. Encoding.UTF8.GetBytes(text)]);

    private static BundleFile Pdf(string path, Document document, PaperSize paper) => new(path, [.. PdfPages.Write(document, paper)]);
}
