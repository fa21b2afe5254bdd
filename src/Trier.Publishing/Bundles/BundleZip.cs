using System.Collections.Immutable;
using System.IO.Compression;
using Trier.Trials.Common;

namespace Trier.Publishing.Bundles;

/// <summary>A bundle as one file.</summary>
public static class BundleZip
{
    /// <summary>Largest file taken out of a bundle, in bytes (64 MB).</summary>
    public const int LargestFile = 64_000_000;

    // A zip cannot hold an earlier time; a fixed one keeps the same bundle the same.
    private static readonly DateTimeOffset Fixed = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Packs the files in their order, all with the same fixed time.</summary>
    public static byte[] Pack(ImmutableArray<BundleFile> files)
    {
        using var kept = new MemoryStream();
        using (var zip = new ZipArchive(kept, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var file in files)
            {
                var entry = zip.CreateEntry(file.Path, CompressionLevel.Optimal);
                entry.LastWriteTime = Fixed;
                using var stream = entry.Open();
                stream.Write(file.Bytes.AsSpan());
            }
        }

        return kept.ToArray();
    }

    /// <summary>Whether bytes begin as a zip does.</summary>
    public static bool Looks(ReadOnlySpan<byte> bytes) => bytes.StartsWith("PK\u0003\u0004"u8);

    /// <summary>Takes the named files out of a zip, wherever in it the folder of the bundle lies.</summary>
    /// <param name="bytes">The zip.</param>
    /// <param name="names">Names of files at the bundle's top.</param>
    /// <returns>Those that are there, by name; or one sentence on what is wrong.</returns>
    public static Outcome<ImmutableDictionary<string, byte[]>> Take(byte[] bytes, IEnumerable<string> names)
    {
        try
        {
            using var zip = new ZipArchive(new MemoryStream(bytes, writable: false), ZipArchiveMode.Read);
            var record = zip.Entries.Where(entry => entry.Name == Bundle.RecordFile).MinBy(entry => entry.FullName.Length);
            if (record is null) return Fault("The zip holds no record.json, so it is no bundle of a verdict.");
            var folder = record.FullName[..^Bundle.RecordFile.Length];
            var taken = ImmutableDictionary.CreateBuilder<string, byte[]>(StringComparer.Ordinal);
            foreach (var name in names)
            {
                if (zip.GetEntry(folder + name) is not { } entry) continue;
                if (entry.Length > LargestFile) return Fault($"{name} in the zip is larger than {LargestFile / 1_000_000} MB, which no bundle is.");
                using var stream = entry.Open();
                var content = new byte[entry.Length];
                stream.ReadExactly(content);
                taken[name] = content;
            }

            return Outcome.Of(taken.ToImmutable());
        }
        catch (Exception fault) when (fault is InvalidDataException or EndOfStreamException or IOException)
        {
            return Fault("The zip is damaged: take the bundle anew.");
        }
    }

    private static Outcome<ImmutableDictionary<string, byte[]>> Fault(string sentence) => Outcome.Fault<ImmutableDictionary<string, byte[]>>("bundle", sentence);
}
