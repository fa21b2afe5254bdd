using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Trier.Publishing.Charts;
using Trier.Publishing.Documents;
using Trier.Publishing.Writing;
using Trier.Trials.Verdicts;

namespace Trier.Publishing.Bundles;

/// <summary>The plain texts of a bundle.</summary>
internal static class BundleWords
{
    public static string Readme(Publication publication, ImmutableArray<VerdictChart> charts)
    {
        var verdict = publication.Verdict;
        var head = verdict.Record.Head;
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"# {head.Title}: the verdict\n\n");
        if (head.Question is { } question) text.Append(question).Append("\n\n");
        if (head.Invented) text.Append("This trial is invented: its people and its numbers are made up.\n\n");
        foreach (var sentence in verdict.Words.Top.Take(3)) text.Append(Numbers.Sentence(sentence)).Append("\n\n");
        text.Append(CultureInfo.InvariantCulture, $"Version {publication.Version}{(publication.Day is { } day ? $" of {day:dd'/'MM'/'yyyy}" : "")}.{(publication.Changes.IsEmpty ? "" : " What was put right or taken out since the first was published:")}\n\n");
        foreach (var correction in publication.Changes) text.Append("- ").Append(correction).Append('\n');
        if (!publication.Changes.IsEmpty) text.Append('\n');
        text.Append("| file | what |\n| --- | --- |\n");
        text.Append("| index.html | the whole verdict as one page; it asks for nothing from anywhere |\n");
        text.Append("| verdict-a4.pdf, verdict-letter.pdf | the same on paper |\n");
        text.Append("| summary-a4.pdf, summary-letter.pdf | one page |\n");
        text.Append("| headlines.md | three headlines, each of them true |\n");
        text.Append(CultureInfo.InvariantCulture, $"| charts/ | {string.Join(", ", charts.Select(chart => chart.Name))}; each as SVG and PNG, wide (1920 by 1080), square (1080 by 1080), tall (1080 by 1920), and overlay (1920 by 1080, nothing but the chart on its own paper, for a film) |\n");
        text.Append("| alternative-texts.md | what each chart says, for those who do not see it |\n");
        text.Append("| ballots.csv, tasters.csv, wheels.csv | every ballot, who is who by number, the wheels; data-dictionary.csv says what each column means |\n");
        text.Append("| method.md | what was done |\n");
        text.Append("| verdict.json, verdict.schema.json | every number and sentence |\n");
        text.Append("| record.json, record.schema.json | what the verdict was drawn from |\n");
        if (publication.Key is not null) text.Append("| key.json, check-the-key.md | that the list of codes was not changed, for anybody to check |\n");
        text.Append("\nTo draw the verdict anew and hold it against this one:\n\n    trier verdict FOLDER-OR-ZIP\n\n");
        text.Append("Tasters are numbers unless they agreed to be named. Remarks and words stand here only where their writer agreed to be quoted; what else was asked is counted by wheel. Nobody under 12 is named.\n");
        return text.ToString();
    }

    public static string Method(Publication publication) => $"# What was done\n\n{string.Join("\n\n", MethodWords.Of(publication))}\n";

    public static string Headlines(Publication publication)
    {
        var kinds = new[] { "From the best bet", "From what is shown", "From the disagreement" };
        var lines = publication.Verdict.Words.Headlines.Select((headline, i) => $"- {kinds[i]}: {Numbers.Sentence(headline)}\n");
        return $"# Three headlines, each of them true\n\n{string.Concat(lines)}\nA headline needs its number of people: {Numbers.Sentence(publication.Verdict.Words.Top[1])}\n";
    }

    public static string AlternativeTexts(Publication publication, ImmutableArray<VerdictChart> charts)
    {
        var text = new StringBuilder("# What each chart says\n\nThe same words stand in every SVG as title and description.\n");
        foreach (var chart in charts)
        {
            var drawn = ChartSheet.Picture(publication.Verdict, chart, ChartFormat.Wide);
            text.Append(CultureInfo.InvariantCulture, $"\n## {chart.Name}: {drawn.Title}\n\n{drawn.Description}\n");
        }

        return text.ToString();
    }

    public static string CheckTheKey(PublishedKey key)
    {
        var text = new StringBuilder("# The key was not changed\n\n");
        if (key.Words is { } words) text.Append(CultureInfo.InvariantCulture, $"When the codes had been drawn, and before anybody tasted, these five words were fixed and could be read aloud: **{words}**.\n\n");
        text.Append("They are worked out from the list of codes and a secret number, so that nobody could read the codes from them, and nobody can now put another list in their place. ");
        text.Append("key.json holds list and number.\n\n`trier check-key key.json` works the words out again.\n\n");
        text.Append("By hand: join the lines of key.json, each with a line feed after it, as UTF-8. Take PBKDF2 with HMAC-SHA-256 (RFC 8018, 5.2) of that text with the salt, 2,000,000 rounds, 7 bytes. ");
        text.Append("Read the first 55 bits as five numbers of 11 bits. Each is a word of the English list of BIP-39, counted from 0. In Python:\n\n```python\n");
        text.Append("""
            import hashlib, json
            for one in json.load(open("key.json"))["commitments"]:
                text = "".join(line + "\n" for line in one["lines"]).encode()
                value = int.from_bytes(hashlib.pbkdf2_hmac("sha256", text, bytes.fromhex(one["salt"]), 2_000_000, 7), "big") >> 1
                print([value >> shift & 2047 for shift in (44, 33, 22, 11, 0)], one["words"])
            """.ReplaceLineEndings("\n"));
        return text.Append("\n```\n").ToString();
    }
}
