using System.Text;

namespace Trier.Commands.Verdicts;

/// <summary>Lines of text that stay within the width.</summary>
internal sealed class TerminalText
{
    private const int Column = 25;

    private readonly StringBuilder _text = new();
    private bool _atGap = true;

    public void Line(string text)
    {
        var cut = Cut(text, TerminalPage.Width).TrimEnd();
        _text.Append(cut).Append('\n');
        _atGap = cut.Length == 0;
    }

    public void Gap()
    {
        if (!_atGap) Line("");
    }

    public void Paragraph(string text, int indent = 2)
    {
        foreach (var line in Wrap(text, TerminalPage.Width - indent - 4)) Line(new string(' ', indent) + line);
        Gap();
    }

    /// <summary>A word in the margin and sentences beside it; nothing where there are none.</summary>
    public void Section(string word, IEnumerable<string> sentences)
    {
        var first = true;
        foreach (var sentence in sentences)
        {
            foreach (var line in Wrap(sentence, TerminalPage.Width - Column))
            {
                Line((first ? word : "").PadRight(Column) + line);
                first = false;
            }
        }

        Gap();
    }

    public override string ToString() => _text.ToString();

    /// <summary>A text cut to a width, the cut marked.</summary>
    public static string Cut(string text, int width)
    {
        var signs = new System.Globalization.StringInfo(text);
        return signs.LengthInTextElements <= width ? text : signs.SubstringByTextElements(0, Math.Max(0, width - 1)) + "…";
    }

    /// <summary>A text cut or filled to a width.</summary>
    public static string Fit(string text, int width)
    {
        var cut = Cut(text, width);
        return cut + new string(' ', Math.Max(0, width - new System.Globalization.StringInfo(cut).LengthInTextElements));
    }

    private static IEnumerable<string> Wrap(string text, int width)
    {
        var line = new StringBuilder();
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line.ToString();
                line.Clear();
            }

            if (line.Length > 0) line.Append(' ');
            line.Append(word);
        }

        if (line.Length > 0) yield return line.ToString();
    }
}
