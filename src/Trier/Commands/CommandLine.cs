using System.CommandLine;
using Trier.Commands.Makes;
using Trier.Commands.Plans;
using Trier.Commands.Tastings;
using Trier.Commands.Verdicts;

namespace Trier.Commands;

/// <summary>The command line: what there is, and its exit codes: 0 done, 1 the input is wrong, 2 the command is wrong.</summary>
internal static class CommandLine
{
    public const int Done = 0;
    public const int WrongInput = 1;
    public const int WrongCommand = 2;

    public static async Task<int> RunAsync(string[] args)
    {
        var root = new RootCommand("Trier: make, age, cut and taste cheese fairly, and say what was learned.");
        root.Subcommands.Add(DemoCommand.Create());
        root.Subcommands.Add(ServeCommand.Create());
        root.Subcommands.Add(LinkCommand.Create());
        root.Subcommands.Add(BackupCommand.Create());
        root.Subcommands.Add(PlanCommand.Create());
        root.Subcommands.Add(VerdictCommand.Create());
        root.Subcommands.Add(BundleCommand.Create());
        root.Subcommands.Add(MakeSheetCommand.Create());
        root.Subcommands.Add(RennetCommand.Create());
        root.Subcommands.Add(StandardiseCommand.Create());
        root.Subcommands.Add(PressCommand.Create());
        root.Subcommands.Add(BrineCommand.Create());
        root.Subcommands.Add(EyesPossibleCommand.Create());
        root.Subcommands.Add(CheckKeyCommand.Create());
        var help = new Command("help", "Say what there is.");
        help.SetAction(async (_, cancellation) => await root.Parse("--help").InvokeAsync(cancellationToken: cancellation));
        root.Subcommands.Add(help);

        if (args.Length == 0) args = ["--help"];
        var parsed = root.Parse(args);
        foreach (var error in parsed.Errors) await Console.Error.WriteLineAsync(error.Message);
        var code = parsed.Errors.Count > 0 ? WrongCommand : await parsed.InvokeAsync();
        var meant = parsed.CommandResult.Command;
        if (code == WrongCommand) await Console.Error.WriteLineAsync(meant == root ? "“trier help” says what there is." : $"“trier {meant.Name} --help” says what it takes.");
        return code;
    }
}
