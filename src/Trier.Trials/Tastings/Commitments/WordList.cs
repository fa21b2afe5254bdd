using System.Collections.Immutable;

namespace Trier.Trials.Tastings.Commitments;

/// <summary>The 2,048 words a commitment is read out in: the English list of BIP-39. README.md beside it names source and licence.</summary>
public static class WordList
{
    /// <summary>How many words there are; one word says 11 bits.</summary>
    public const int Size = 2048;

    private const int BitsOfAWord = 11;

    /// <summary>The words, in their order.</summary>
    public static ImmutableArray<string> Words { get; } = Read();

    /// <summary>The first bits of some bytes, read out as words, most significant bit first.</summary>
    /// <param name="bytes">At least 11 bits for each word.</param>
    /// <param name="count">How many words.</param>
    /// <exception cref="ArgumentException">There are too few bytes.</exception>
    public static string Say(ReadOnlySpan<byte> bytes, int count)
    {
        if (bytes.Length * 8 < count * BitsOfAWord) throw new ArgumentException($"{count} words take {count * BitsOfAWord} bits.", nameof(bytes));
        var said = new string[count];
        for (var word = 0; word < count; word++)
        {
            var number = 0;
            for (var bit = word * BitsOfAWord; bit < (word + 1) * BitsOfAWord; bit++) number = (number << 1) | ((bytes[bit / 8] >> (7 - (bit % 8))) & 1);
            said[word] = Words[number];
        }

        return string.Join(' ', said);
    }

    private static ImmutableArray<string> Read()
    {
        using var stream = typeof(WordList).Assembly.GetManifestResourceStream("Trier.Trials.Tastings.Commitments.words") ?? throw new InvalidOperationException("The word list is not in the program.");
        using var reader = new StreamReader(stream);
        return [.. reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
    }
}
