using System.Collections.Immutable;
using System.CommandLine;
using Trier.Publishing.BallotFiles;
using Trier.Publishing.Bundles;
using Trier.Publishing.Verdicts;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;
using Trier.Trials.Verdicts;

namespace Trier.Commands.Verdicts;

/// <summary><c>trier verdict FILE</c>: ballots in, the verdict out, as a page of text or as JSON; or a published bundle in, its verdict drawn anew and held against it.</summary>
internal static class VerdictCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "The ballots: CSV, or .soc .soi .toc .toi; - reads standard input. docs/handbook/ballot-files.md shows the layouts. Or a published bundle, zip or folder: its verdict is drawn anew and held against it." };
        var json = new Option<bool>("--json") { Description = "Write the verdict as JSON." };
        var options = new BallotOptions();
        var command = new Command("verdict", "Judge a file of ballots, or draw the verdict of a bundle anew.") { file, json };
        options.AddTo(command);
        command.SetAction(async (parsed, cancellation) =>
        {
            var named = parsed.GetValue(file)!;
            return await BundleInput.ReadAsync(named, cancellation) is { } bundle
                ? await AnewAsync(bundle, parsed.GetValue(json), cancellation)
                : await RunAsync(named, options.Of(parsed), options.SeedOf(parsed), parsed.GetValue(json), cancellation);
        });
        return command;
    }

    internal static async Task<int> RefuseAsync(IEnumerable<Problem> problems)
    {
        foreach (var problem in problems) await Console.Error.WriteLineAsync(problem.Sentence);
        await Console.Error.WriteLineAsync("Nothing was taken in.");
        return CommandLine.WrongInput;
    }

    private static async Task<int> RunAsync(string file, BallotFileOptions options, Seed seed, bool json, CancellationToken cancellation)
    {
        var read = await BallotInput.ReadAsync(file, cancellation);
        var record = read.Then(bytes => BallotFile.Read(bytes, BallotOptions.TitleOf(file), options));
        if (!record.TryGet(out var ballots)) return await RefuseAsync(record.Problems);
        await WriteAsync(Judge.Of(ballots, seed), json, cancellation);
        return CommandLine.Done;
    }

    private static async Task<int> AnewAsync(Outcome<ImmutableDictionary<string, byte[]>> bundle, bool json, CancellationToken cancellation)
    {
        var checkedBundle = bundle.Then(BundleCheck.Of);
        if (!checkedBundle.TryGet(out var found)) return await RefuseAsync(checkedBundle.Problems);
        await WriteAsync(found.Verdict, json, cancellation);
        // With --json the standard output is the verdict alone.
        var told = json ? Console.Error : Console.Out;
        if (found.Differences.IsEmpty)
        {
            await told.WriteLineAsync("Equal: drawn anew from the bundle's record, the verdict is the one the bundle holds.");
            return CommandLine.Done;
        }

        await told.WriteLineAsync("Not equal:");
        foreach (var difference in found.Differences) await told.WriteLineAsync($"- {difference}");
        return CommandLine.WrongInput;
    }

    private static async Task WriteAsync(Verdict verdict, bool json, CancellationToken cancellation)
    {
        try
        {
            await Console.Out.WriteAsync(json ? VerdictJson.Write(verdict) : TerminalPage.Write(verdict));
            await Console.Out.FlushAsync(cancellation);
        }
        catch (IOException)
        {
            // Whoever read the other end of the pipe has seen enough.
        }
    }
}
