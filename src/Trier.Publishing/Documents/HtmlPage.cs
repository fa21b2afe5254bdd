using System.Globalization;
using System.Net;
using System.Text;
using Trier.Publishing.Drawings;

namespace Trier.Publishing.Documents;

/// <summary>Writes a document as one page of HTML that asks for nothing: fonts, style and pictures lie within it, and there is no script.</summary>
public static class HtmlPage
{
    private const double WideFigure = 800;
    private const double NarrowFigure = 350;

    /// <summary>The page, lines ended by LF.</summary>
    /// <param name="document">The document.</param>
    public static string Write(Document document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var page = new StringBuilder();
        page.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        page.Append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:\">\n");
        page.Append(CultureInfo.InvariantCulture, $"<title>{E(document.Title)}: the verdict</title>\n<style>\n{string.Concat(Enum.GetValues<Face>().Select(face => FontFace.Css(face) + "\n"))}{Css}</style>\n</head>\n<body>\n<main>\n");
        page.Append("<section class=\"passage first\">\n");
        Margin(page, "Verdict", document.Where.Length > 0 ? document.Where : null, "h2");
        page.Append("<div class=\"text\">\n");
        if (document.Stamp is { } stamp) page.Append(SvgWriter.Write(stamp, "stamp", SvgPlace.Page, "stamp"));
        page.Append(CultureInfo.InvariantCulture, $"<h1>{E(document.Title)}</h1>\n");
        if (document.Question is { } question) page.Append(CultureInfo.InvariantCulture, $"<p class=\"question\">{E(question)}</p>\n");
        page.Append("<div class=\"say\">\n");
        foreach (var sentence in document.Say) page.Append(CultureInfo.InvariantCulture, $"<p>{E(sentence)}</p>\n");
        page.Append("</div>\n</div>\n</section>\n");
        foreach (var passage in document.Passages)
        {
            page.Append(passage.NewPage ? "<section class=\"passage new-page\">\n" : "<section class=\"passage\">\n");
            Margin(page, passage.Word, passage.Note, "h2");
            page.Append("<div class=\"text\">\n");
            foreach (var block in passage.Blocks) Write(page, block);
            page.Append("</div>\n</section>\n");
        }

        return page.Append(CultureInfo.InvariantCulture, $"</main>\n<footer>{E(document.Foot)}</footer>\n</body>\n</html>\n").ToString();
    }

    private static readonly string Css = ReadCss();

    private static void Margin(StringBuilder page, string word, string? note, string heading)
    {
        page.Append(CultureInfo.InvariantCulture, $"<div class=\"margin\"><{heading}>{E(word)}</{heading}>");
        if (note is not null) page.Append(CultureInfo.InvariantCulture, $"<p>{E(note)}</p>");
        page.Append("</div>\n");
    }

    private static void Write(StringBuilder page, Block block)
    {
        switch (block)
        {
            case Paragraph paragraph:
                page.Append(paragraph.Strong ? $"<p><b>{E(paragraph.Text)}</b></p>\n" : $"<p>{E(paragraph.Text)}</p>\n");
                break;
            case Listing listing:
                page.Append("<ul>\n").AppendJoin("", listing.Items.Select(item => $"<li>{E(item)}</li>\n")).Append("</ul>\n");
                break;
            case Terms terms:
                page.Append("<dl>\n").AppendJoin("", terms.Items.Select(item => $"<dt>{E(item.Term)}</dt><dd>{E(item.Text)}</dd>\n")).Append("</dl>\n");
                break;
            case Figure figure:
                page.Append(SvgWriter.Write(figure.Chart.Natural(WideFigure, 1), figure.Chart.Name + "-wide", SvgPlace.Page, "chart wide"));
                page.Append(SvgWriter.Write(figure.Chart.Natural(NarrowFigure, 1), figure.Chart.Name + "-narrow", SvgPlace.Page, "chart narrow"));
                break;
            case Table table:
                Write(page, table);
                break;
            default:
                throw new NotSupportedException($"A page cannot write {block.GetType().Name}.");
        }
    }

    private static void Write(StringBuilder page, Table table)
    {
        if (table.Rows.IsEmpty) return;
        page.Append(CultureInfo.InvariantCulture, $"<div class=\"scroll\" role=\"region\" tabindex=\"0\" aria-label=\"{E(table.Caption)}\"><table>\n<caption>{E(table.Caption)}</caption>\n<thead><tr>");
        foreach (var head in table.Heads) page.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\"{(head.Number ? " class=\"n\"" : "")}>{E(head.Text)}</th>");
        page.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in table.Rows)
        {
            page.Append("<tr>");
            for (var i = 0; i < row.Length; i++)
            {
                var mark = row[i].Look is { } look ? $"<svg class=\"mark\" viewBox=\"0 0 16 16\" aria-hidden=\"true\">{MarkSvg.Of(look)}</svg>" : "";
                var text = row[i].Best ? $"<b class=\"best\">{E(row[i].Text)}</b>" : E(row[i].Text);
                var kind = row[i].Look is not null ? " class=\"m\"" : table.Heads[i].Number && i > 0 ? " class=\"n\"" : "";
                page.Append(i == 0 ? $"<th scope=\"row\"{kind}>{mark}{text}</th>" : $"<td{kind}>{mark}{text}</td>");
            }

            page.Append("</tr>\n");
        }

        page.Append("</tbody>\n</table></div>\n");
    }

    private static string E(string text) => WebUtility.HtmlEncode(text).Replace("&#39;", "'", StringComparison.Ordinal);

    private static string ReadCss()
    {
        using var stream = typeof(HtmlPage).Assembly.GetManifestResourceStream("Trier.page.css")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
