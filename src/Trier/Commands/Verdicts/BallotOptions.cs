using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Trier.Publishing.BallotFiles;
using Trier.Statistics.Randomness;

namespace Trier.Commands.Verdicts;

/// <summary>What a person can say about a ballot file on the command line; the same for every command that reads one.</summary>
internal sealed class BallotOptions
{
    private const string Last = "last";
    private const string NotTasted = "not-tasted";
    private const ulong UsualSeed = 1;

    private readonly Option<RepeatPair[]> _repeat = new("--repeat")
    {
        Description = "CHECK=CODE: the first code is a second serving of the second and only a check. May be given several times.",
        HelpName = "862=417",
        CustomParser = Repeats,
        Arity = ArgumentArity.OneOrMore,
    };

    private readonly Option<ulong> _seed = new("--seed") { Description = "Where chance comes from, where arrangements have to be drawn.", DefaultValueFactory = _ => UsualSeed };
    private readonly Option<string> _unplaced = new("--unplaced") { Description = "What an empty place means.", DefaultValueFactory = _ => NotTasted };

    public BallotOptions() => _unplaced.AcceptOnlyFromAmong(Last, NotTasted);

    public void AddTo(Command command)
    {
        command.Options.Add(_repeat);
        command.Options.Add(_seed);
        command.Options.Add(_unplaced);
    }

    public BallotFileOptions Of(ParseResult parsed) => new()
    {
        Unplaced = parsed.GetValue(_unplaced) == Last ? Unplaced.Last : Unplaced.NotTasted,
        Repeats = [.. parsed.GetValue(_repeat) ?? []],
    };

    public Seed SeedOf(ParseResult parsed) => new(parsed.GetValue(_seed));

    /// <summary>What to call the tasting of a file: its name without ending.</summary>
    public static string TitleOf(string file)
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
