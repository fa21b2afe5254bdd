using Trier.Publishing.BallotFiles;
using Trier.Trials.Common;

namespace Trier.Commands.Verdicts;

/// <summary>Reads a ballot file or standard input, no further than a ballot file may be long.</summary>
internal static class BallotInput
{
    public static async Task<Outcome<byte[]>> ReadAsync(string file, CancellationToken cancellation)
    {
        try
        {
            await using var input = file == "-" ? Console.OpenStandardInput() : File.OpenRead(file);
            using var kept = new MemoryStream();
            var buffer = new byte[81920];
            int read;
            while ((read = await input.ReadAsync(buffer, cancellation)) > 0)
            {
                kept.Write(buffer, 0, read);
                if (kept.Length > BallotFile.LargestBytes) return Outcome.Fault<byte[]>(BallotFile.TooLarge.Problems);
            }

            return Outcome.Of(kept.ToArray());
        }
        catch (Exception failure) when (failure is FileNotFoundException or DirectoryNotFoundException)
        {
            return Outcome.Fault<byte[]>("file", $"There is no file {file}; look at the name and the folder.");
        }
        catch (Exception failure) when (failure is UnauthorizedAccessException or IOException or ArgumentException or NotSupportedException)
        {
            return Outcome.Fault<byte[]>("file", Directory.Exists(file) ? $"{file} is a folder; name the file in it." : $"{file} cannot be read; look whether it is a file and you may open it.");
        }
    }
}
