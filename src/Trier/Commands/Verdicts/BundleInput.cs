using System.Collections.Immutable;
using Trier.Publishing.Bundles;
using Trier.Trials.Common;

namespace Trier.Commands.Verdicts;

/// <summary>Finds a published bundle where one was named: its folder, or its zip.</summary>
internal static class BundleInput
{
    private const int LargestZip = 256_000_000;

    /// <summary>The files that are looked at, by name; null where what was named is no bundle.</summary>
    public static async Task<Outcome<ImmutableDictionary<string, byte[]>>?> ReadAsync(string path, CancellationToken cancellation)
    {
        try
        {
            if (Directory.Exists(path)) return await FolderAsync(path, cancellation);
            if (path == "-" || !File.Exists(path)) return null;
            await using var file = File.OpenRead(path);
            var start = new byte[4];
            if (await file.ReadAtLeastAsync(start, start.Length, throwOnEndOfStream: false, cancellation) < start.Length || !BundleZip.Looks(start)) return null;
            if (file.Length > LargestZip) return Outcome.Fault<ImmutableDictionary<string, byte[]>>("bundle", $"{path} is larger than {LargestZip / 1_000_000} MB, which no bundle is.");
            return BundleZip.Take(await File.ReadAllBytesAsync(path, cancellation), BundleCheck.Files);
        }
        catch (Exception fault) when (fault is UnauthorizedAccessException or IOException)
        {
            return Outcome.Fault<ImmutableDictionary<string, byte[]>>("bundle", $"{path} cannot be read; look whether you may open it.");
        }
    }

    private static async Task<Outcome<ImmutableDictionary<string, byte[]>>> FolderAsync(string folder, CancellationToken cancellation)
    {
        var files = ImmutableDictionary.CreateBuilder<string, byte[]>(StringComparer.Ordinal);
        foreach (var name in BundleCheck.Files)
        {
            var file = new FileInfo(Path.Combine(folder, name));
            if (!file.Exists) continue;
            if (file.Length > BundleZip.LargestFile) return Outcome.Fault<ImmutableDictionary<string, byte[]>>("bundle", $"{file.Name} is larger than {BundleZip.LargestFile / 1_000_000} MB, which no bundle is.");
            files[name] = await File.ReadAllBytesAsync(file.FullName, cancellation);
        }

        return files.ContainsKey(Bundle.RecordFile)
            ? Outcome.Of(files.ToImmutable())
            : Outcome.Fault<ImmutableDictionary<string, byte[]>>("bundle", $"{folder} is a folder without record.json: name a ballot file, or the folder of a bundle.");
    }
}
