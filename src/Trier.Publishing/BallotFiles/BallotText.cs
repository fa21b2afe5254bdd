using System.Globalization;
using System.Text;
using Trier.Trials.Common;

namespace Trier.Publishing.BallotFiles;

/// <summary>Turns the bytes of a ballot file into text, or says why they are none.</summary>
internal static class BallotText
{
    /// <summary>Largest file read, in bytes. A ballot is some hundred bytes; more than this is another kind of file.</summary>
    public const int LargestBytes = 32 * 1024 * 1024;

    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    public static Outcome<string> Decode(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length > LargestBytes) return TooLarge<string>();
        var (encoding, skip) = Recognise(bytes);
        string text;
        try
        {
            text = encoding.GetString(bytes[skip..]);
        }
        catch (DecoderFallbackException)
        {
            return NotText(ReferenceEquals(encoding, StrictUtf8) ? LineOfFirstBadByte(bytes) : null);
        }

        if (string.IsNullOrWhiteSpace(text))
            return Outcome.Fault<string>("file", "The file is empty; it needs a header line and at least one ballot.");
        var line = 1;
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (c == '\n') line++;
            else if ((char.IsControl(c) && c is not ('\r' or '\t')) || c is '\uFFFE' or '\uFFFF') return NotText(line);
        }

        return Outcome.Of(text.ReplaceLineEndings("\n"));
    }

    public static Outcome<T> TooLarge<T>() =>
        Outcome.Fault<T>("file", "The file is larger than 32 MB, so it is no ballot file; hand in the ballots alone.");

    private static (Encoding Encoding, int Skip) Recognise(ReadOnlySpan<byte> bytes)
    {
        var little = new UnicodeEncoding(bigEndian: false, byteOrderMark: false, throwOnInvalidBytes: true);
        var big = new UnicodeEncoding(bigEndian: true, byteOrderMark: false, throwOnInvalidBytes: true);
        return bytes switch
        {
            [0xEF, 0xBB, 0xBF, ..] => (StrictUtf8, 3),
            [0xFF, 0xFE, ..] => (little, 2),
            [0xFE, 0xFF, ..] => (big, 2),
            // Without a mark, every layout begins with a character of plain ASCII, and half of such a character is zero in UTF-16.
            [not 0, 0, ..] => (little, 0),
            [0, not 0, ..] => (big, 0),
            _ => (StrictUtf8, 0),
        };
    }

    private static Outcome<string> NotText(int? line) => Outcome.Fault<string>(
        "file",
        line is null
            ? "The file is no text; save the ballots as CSV in UTF-8."
            : string.Create(CultureInfo.InvariantCulture, $"Line {line} holds bytes that are no UTF-8 or UTF-16 text; save the ballots as CSV in UTF-8."));

    private static int LineOfFirstBadByte(ReadOnlySpan<byte> bytes)
    {
        var line = 1;
        while (!bytes.IsEmpty)
        {
            var status = Rune.DecodeFromUtf8(bytes, out var rune, out var used);
            if (status != System.Buffers.OperationStatus.Done) return line;
            if (rune.Value == '\n') line++;
            bytes = bytes[used..];
        }

        return line;
    }
}
