namespace Trier.Publishing.Drawings;

/// <summary>Measures text and breaks it into lines.</summary>
public static class TextRuler
{
    /// <summary>Width of a line, in the unit of its size.</summary>
    public static double Width(string text, double size, Face face = Face.Sans) => FontFiles.Metrics(face).Width(text, size);

    /// <summary>A text cut to a width, the cut marked by an ellipsis.</summary>
    public static string Fit(string text, double width, double size, Face face = Face.Sans)
    {
        if (text.Length == 0 || Width(text, size, face) <= width) return text;
        var signs = new System.Globalization.StringInfo(text);
        for (var length = signs.LengthInTextElements - 1; length > 0; length--)
        {
            var cut = signs.SubstringByTextElements(0, length).TrimEnd() + "…";
            if (Width(cut, size, face) <= width) return cut;
        }

        return "…";
    }

    /// <summary>Lines no wider than a width; a word that is wider by itself is cut where it must be.</summary>
    public static IEnumerable<string> Wrap(string text, double width, double size, Face face = Face.Sans)
    {
        var line = "";
        foreach (var word in text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries).SelectMany(word => Pieces(word, width, size, face)))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Width(longer, size, face) > width)
            {
                yield return line;
                longer = word;
            }

            line = longer;
        }

        if (line.Length > 0) yield return line;
    }

    private static IEnumerable<string> Pieces(string word, double width, double size, Face face)
    {
        while (Width(word, size, face) > width && word.Length > 1)
        {
            var length = word.Length - 1;
            while (length > 1 && (Width(word[..length], size, face) > width || char.IsLowSurrogate(word[length]))) length--;
            yield return word[..length];
            word = word[length..];
        }

        yield return word;
    }
}
