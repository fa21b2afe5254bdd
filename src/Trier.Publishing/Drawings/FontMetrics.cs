using System.Buffers.Binary;
using System.Text;

namespace Trier.Publishing.Drawings;

/// <summary>
/// How wide each letter of a TrueType font is, read from its tables (OpenType specification, tables head, hhea, hmtx and cmap format 4 or
/// 12), so that where a text ends is known without any drawing library and is the same for every writer.
/// </summary>
internal sealed class FontMetrics
{
    private readonly byte[] _font;
    private readonly int _advances;
    private readonly int _advanceCount;
    private readonly int _map;
    private readonly double _unitsPerEm;

    private FontMetrics(byte[] font)
    {
        _font = font;
        _unitsPerEm = U16(Table("head") + 18);
        _advanceCount = U16(Table("hhea") + 34);
        _advances = Table("hmtx");
        _map = BestMap();
    }

    public static FontMetrics Read(byte[] font) => new(font);

    /// <summary>Width of a line of text, without kerning.</summary>
    /// <param name="text">The text.</param>
    /// <param name="size">Type size; the width is in the same unit.</param>
    public double Width(string text, double size)
    {
        long units = 0;
        foreach (var rune in text.EnumerateRunes()) units += U16(_advances + (4 * Math.Min(Glyph(rune.Value), _advanceCount - 1)));
        return units / _unitsPerEm * size;
    }

    /// <summary>Whether every letter of a text is in the font.</summary>
    public bool Has(Rune rune) => Glyph(rune.Value) != 0;

    private int Glyph(int letter) => U16(_map) == 12 ? InGroups(letter) : letter > 0xFFFF ? 0 : InSegments(letter);

    private int InGroups(int letter)
    {
        var (low, high) = (0, (int)U32(_map + 12) - 1);
        while (low <= high)
        {
            var middle = (low + high) / 2;
            var group = _map + 16 + (12 * middle);
            if (letter < U32(group)) high = middle - 1;
            else if (letter > U32(group + 4)) low = middle + 1;
            else return (int)(U32(group + 8) + (letter - U32(group)));
        }

        return 0;
    }

    private int InSegments(int letter)
    {
        var twice = U16(_map + 6);
        var (ends, starts) = (_map + 14, _map + 16 + twice);
        var (deltas, offsets) = (starts + twice, starts + (2 * twice));
        for (var i = 0; i < twice; i += 2)
        {
            if (letter > U16(ends + i)) continue;
            if (letter < U16(starts + i)) return 0;
            var offset = U16(offsets + i);
            if (offset == 0) return (letter + U16(deltas + i)) & 0xFFFF;
            var glyph = U16(offsets + i + offset + (2 * (letter - U16(starts + i))));
            return glyph == 0 ? 0 : (glyph + U16(deltas + i)) & 0xFFFF;
        }

        return 0;
    }

    private int BestMap()
    {
        var table = Table("cmap");
        var found = Enumerable.Range(0, U16(table + 2)).Select(i => table + (int)U32(table + 4 + (8 * i) + 4)).ToList();
        return found.Find(map => U16(map) == 12) is var wide and > 0 ? wide : found.First(map => U16(map) == 4);
    }

    private int Table(string name)
    {
        for (var i = 0; i < U16(4); i++)
        {
            var entry = 12 + (16 * i);
            if (Encoding.ASCII.GetString(_font, entry, 4) == name) return (int)U32(entry + 8);
        }

        throw new InvalidOperationException($"The font has no table {name}.");
    }

    private int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(_font.AsSpan(at));

    private uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(_font.AsSpan(at));
}
