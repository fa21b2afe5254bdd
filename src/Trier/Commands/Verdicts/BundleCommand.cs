using System.CommandLine;
using Trier.Publishing.BallotFiles;
using Trier.Publishing.Bundles;
using Trier.Statistics.Randomness;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Publishing;

namespace Trier.Commands.Verdicts;

/// <summary><c>trier bundle FILE OUT</c>: ballots in, all that is published out, as a zip or a folder.</summary>
internal static class BundleCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "The ballots; - reads standard input. docs/handbook/ballot-files.md shows the layouts." };
        var output = new Argument<string>("OUT") { Description = "Where to: a new file that ends in .zip, or a new folder." };
        var options = new BallotOptions();
        var command = new Command("bundle", "Judge a file of ballots and make of it all that is published: page, PDF, charts, tables, JSON. Tasters become numbers; words and remarks stay out.") { file, output };
        options.AddTo(command);
        command.SetAction((parsed, cancellation) => RunAsync(parsed.GetValue(file)!, parsed.GetValue(output)!, options.Of(parsed), options.SeedOf(parsed), cancellation));
        return command;
    }

    private static async Task<int> RunAsync(string file, string output, BallotFileOptions options, Seed seed, CancellationToken cancellation)
    {
        var read = await BallotInput.ReadAsync(file, cancellation);
        var record = read.Then(bytes => BallotFile.Read(bytes, BallotOptions.TitleOf(file), options));
        if (!record.TryGet(out var ballots)) return await VerdictCommand.RefuseAsync(record.Problems);
        if (File.Exists(output) || Directory.Exists(output)) return await FailAsync($"{output} is there already; name a new one.");
        var files = Bundle.Of(new Publication { Verdict = Judge.Of(PublishedRecord.Of(ballots), seed) });
        try
        {
            if (output.EndsWith(".zip", StringComparison.OrdinalIgnoreCase)) await File.WriteAllBytesAsync(output, BundleZip.Pack(files), cancellation);
            else await WriteFolderAsync(output, files, cancellation);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return await FailAsync($"{output} cannot be written; look whether the folder above it is there and you may write in it.");
        }

        await Console.Out.WriteLineAsync($"{files.Length} files are in {output}. To hold them against the ballots: trier verdict {output}");
        return CommandLine.Done;
    }

    private static async Task WriteFolderAsync(string folder, IEnumerable<BundleFile> files, CancellationToken cancellation)
    {
        foreach (var one in files)
        {
            var path = Path.Combine(folder, Path.Combine(one.Path.Split('/')));
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            await File.WriteAllBytesAsync(path, [.. one.Bytes], cancellation);
        }
    }

    private static async Task<int> FailAsync(string sentence)
    {
        await Console.Error.WriteLineAsync(sentence);
        return CommandLine.WrongInput;
    }
}
