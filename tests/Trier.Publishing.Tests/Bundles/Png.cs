using System.Buffers.Binary;
using System.Text;

namespace Trier.Publishing.Tests.Bundles;

/// <summary>Looks into a PNG (W3C PNG specification, section 5: signature, then chunks of length, type, data, checksum).</summary>
internal static class Png
{
    public static (int Width, int Height) Size(ReadOnlySpan<byte> bytes) => (BinaryPrimitives.ReadInt32BigEndian(bytes[16..]), BinaryPrimitives.ReadInt32BigEndian(bytes[20..]));

    public static IReadOnlyList<string> Chunks(ReadOnlySpan<byte> bytes)
    {
        var found = new List<string>();
        for (var at = 8; at < bytes.Length; at += 12 + BinaryPrimitives.ReadInt32BigEndian(bytes[at..])) found.Add(Encoding.ASCII.GetString(bytes.Slice(at + 4, 4)));
        return found;
    }
}
