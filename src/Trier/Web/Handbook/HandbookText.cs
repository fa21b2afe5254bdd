using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using Markdig;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Trier.Web.Handbook;

/// <summary>A page of the handbook or of the methods, as it ships inside the program: the site needs no other to explain its figures.</summary>
/// <param name="Title">Its first heading.</param>
/// <param name="Html">The rest, as HTML of our own text.</param>
public sealed partial record HandbookText(string Title, string Html)
{
    /// <summary>The folders that ship.</summary>
    public static readonly IReadOnlyList<string> Folders = ["methods", "handbook"];

    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().UsePipeTables().UseAutoIdentifiers().DisableHtml().Build();
    private static readonly ConcurrentDictionary<string, HandbookText?> Known = new(StringComparer.Ordinal);

    /// <summary>Finds a page; null where there is none of that name.</summary>
    /// <param name="folder">One of <see cref="Folders"/>.</param>
    /// <param name="name">The page's name without its ending.</param>
    public static HandbookText? Find(string folder, string name) =>
        Folders.Contains(folder) && name.All(sign => char.IsAsciiLetterLower(sign) || sign == '-') ? Known.GetOrAdd($"{folder}/{name}", Read) : null;

    /// <summary>Marks for the programs that write tables into a page; no reader's business.</summary>
    [GeneratedRegex("<!--.*?-->\\n?", RegexOptions.Singleline, 1000)]
    private static partial Regex Notes();

    private static HandbookText? Read(string path)
    {
        using var stream = typeof(HandbookText).Assembly.GetManifestResourceStream($"docs/{path}");
        if (stream is null) return null;
        using var reader = new StreamReader(stream);
        var document = Markdown.Parse(Notes().Replace(reader.ReadToEnd(), ""), Pipeline);
        var head = document.OfType<HeadingBlock>().First();
        document.Remove(head);
        foreach (var link in document.Descendants<LinkInline>().ToList()) Point(link, path.Split('/')[0]);
        foreach (var table in document.Descendants<Markdig.Extensions.Tables.Table>()) table.GetAttributes().AddClass("figures");
        return new(string.Concat(head.Inline!.Descendants<LiteralInline>()), document.ToHtml(Pipeline));
    }

    /// <summary>Links between pages that ship keep working; others, to code and pictures beside them, become plain words.</summary>
    private static void Point(LinkInline link, string folder)
    {
        if (link.Url is not { } url || url.StartsWith('#')) return;
        var parts = url.Split('#');
        var to = new Uri(new Uri($"http://docs/{folder}/"), parts[0]).AbsolutePath;
        var target = to.EndsWith(".md", StringComparison.Ordinal) ? to[1..^3].Split('/') : [];
        if (target.Length == 2 && Folders.Contains(target[0])) link.Url = $"/{string.Join('/', target)}{(parts.Length > 1 ? "#" + parts[1] : "")}";
        else link.ReplaceBy(new LiteralInline(string.Concat(link.Descendants<LiteralInline>())));
    }
}
