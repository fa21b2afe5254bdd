using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Trier.Publishing.BallotFiles;
using Trier.Publishing.Verdicts;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;
using Trier.Trials.Verdicts;

namespace Trier.Commands.Verdicts;

/// <summary><c>trier verdict FILE</c>: ballots in, the verdict out, as a page of text or as JSON.</summary>
internal static class VerdictCommand
{
    private const string Last = "last";
    private const string NotTasted = "not-tasted";
    private const ulong UsualSeed = 1;

    public static Command Create()
    {
        var file = new Argument<string>("FILE") { Description = "The ballots: CSV, or .soc .soi .toc .toi; - reads standard input. docs/handbook/ballot-files.md shows the layouts." };
        var json = new Option<bool>("--json") { Description = "Write the verdict as JSON." };
        var repeat = new Option<RepeatPair[]>("--repeat")
        {
            Description = "CHECK=CODE: the first code is a second serving of the second and only a check. May be given several times.",
            HelpName = "862=417",
            CustomParser = Repeats,
            Arity = ArgumentArity.OneOrMore,
        };
        var seed = new Option<ulong>("--seed") { Description = "Where chance comes from, where arrangements have to be drawn.", DefaultValueFactory = _ => UsualSeed };
        var unplaced = new Option<string>("--unplaced") { Description = "What an empty place means.", DefaultValueFactory = _ => NotTasted };
        unplaced.AcceptOnlyFromAmong(Last, NotTasted);
        var command = new Command("verdict", "Judge a file of ballots.") { file, json, repeat, seed, unplaced };
        command.SetAction((parsed, cancellation) => RunAsync(
            parsed.GetValue(file)!,
            new BallotFileOptions
            {
                Unplaced = parsed.GetValue(unplaced) == Last ? Unplaced.Last : Unplaced.NotTasted,
                Repeats = [.. parsed.GetValue(repeat) ?? []],
            },
            new Seed(parsed.GetValue(seed)),
            parsed.GetValue(json),
            cancellation));
        return command;
    }

    private static async Task<int> RunAsync(string file, BallotFileOptions options, Seed seed, bool json, CancellationToken cancellation)
    {
        var read = await BallotInput.ReadAsync(file, cancellation);
        var record = read.Then(bytes => BallotFile.Read(bytes, TitleOf(file), options));
        if (!record.TryGet(out var ballots)) return await RefuseAsync(record.Problems);
        var verdict = Judge.Of(ballots, seed);
        try
        {
            await Console.Out.WriteAsync(json ? VerdictJson.Write(verdict) : TerminalPage.Write(verdict));
            await Console.Out.FlushAsync(cancellation);
        }
        catch (IOException)
        {
            // Whoever read the other end of the pipe has seen enough.
        }

        return CommandLine.Done;
    }

    private static async Task<int> RefuseAsync(IEnumerable<Problem> problems)
    {
        foreach (var problem in problems) await Console.Error.WriteLineAsync(problem.Sentence);
        await Console.Error.WriteLineAsync("Nothing was taken in.");
        return CommandLine.WrongInput;
    }

    private static string TitleOf(string file)
    {
        if (file == "-") return "Ballots";
        var name = Path.GetFileName(file);
        var dot = name.IndexOf('.', StringComparison.Ordinal);
        return dot > 0 ? name[..dot] : name;
    }

    private static RepeatPair[]? Repeats(ArgumentResult result)
    {
        var pairs = new List<RepeatPair>();
        foreach (var token in result.Tokens)
        {
            var parts = token.Value.Split('=', StringSplitOptions.TrimEntries);
            if (parts.Length == 2 && parts.All(p => p.Length > 0)) pairs.Add(new(parts[0], parts[1]));
            else result.AddError(string.Create(CultureInfo.InvariantCulture, $"--repeat {token.Value}: write the check, an equals sign and the code that counts, as in --repeat 862=417."));
        }

        return [.. pairs];
    }
}
