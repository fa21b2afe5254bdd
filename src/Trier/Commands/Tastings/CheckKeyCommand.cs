using System.CommandLine;
using Trier.Publishing.Keys;
using Trier.Trials.Tastings.Commitments;

namespace Trier.Commands.Tastings;

/// <summary><c>trier check-key FILE</c>: works the words read aloud at the sealing out again.</summary>
internal static class CheckKeyCommand
{
    public static Command Create()
    {
        var file = new Argument<FileInfo>("FILE") { Description = "The key file that the page of the key offers after the reveal." };
        var command = new Command("check-key", "Work out again the five words that were read aloud when a key was sealed.") { file };
        command.SetAction((parsed, cancellation) => RunAsync(parsed.GetValue(file)!, cancellation));
        return command;
    }

    private static async Task<int> RunAsync(FileInfo file, CancellationToken cancellation)
    {
        if (!file.Exists)
        {
            await Console.Error.WriteLineAsync($"There is no file {file.FullName}.");
            return CommandLine.WrongInput;
        }

        var read = KeyFile.Read(await File.ReadAllBytesAsync(file.FullName, cancellation));
        if (!read.TryGet(out var found))
        {
            foreach (var problem in read.Problems) await Console.Error.WriteLineAsync(problem.Sentence);
            return CommandLine.WrongInput;
        }

        var check = CommitmentCheck.Of(found.Tasting, found.Commitments);
        foreach (var (one, wordsHold, chainHolds) in check.Commitments)
        {
            Console.WriteLine($"Key {one.KeyVersion}, commitment {one.Number}: {one.Words}");
            Console.WriteLine(wordsHold ? "  Worked out again from the list below: the same words." : "  NOT the words of the list below.");
            if (!chainHolds) Console.WriteLine("  NOT chained to the one before it, or of another tasting.");
            foreach (var line in one.Lines.Skip(4)) Console.WriteLine($"    {line}");
        }

        Console.WriteLine();
        Console.WriteLine(check.Holds
            ? "All of it holds. Now hold the words against what you heard or wrote down at the sealing: they must be the same."
            : "It does not hold: this file, or the key in it, was changed after the sealing.");
        Console.WriteLine("It shows that the list was not changed. It cannot show that the plates were filled by the list, or that nobody looked.");
        return check.Holds ? CommandLine.Done : CommandLine.WrongInput;
    }
}
