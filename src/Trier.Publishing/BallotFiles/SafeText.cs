namespace Trier.Publishing.BallotFiles;

/// <summary>
/// Keeps free text from being taken for a formula when a spreadsheet opens a written file: text that begins like one gets an
/// apostrophe before it, and reading takes the apostrophe off again.
/// </summary>
internal static class SafeText
{
    private static bool LooksLikeFormula(ReadOnlySpan<char> text) => text is ['=' or '+' or '-' or '@', ..];

    public static string Guard(string text) => LooksLikeFormula(text.AsSpan().TrimStart('\'')) ? "'" + text : text;

    public static string Unguard(string text) => text is ['\'', ..] && LooksLikeFormula(text.AsSpan().TrimStart('\'')) ? text[1..] : text;
}
