using System.Globalization;
using Trier.Dairy.Workings;

namespace Trier.Commands.Makes;

/// <summary>Tells an answer: one line, and below it how it came about.</summary>
internal static class Telling
{
    /// <summary>Prints the answer made of an outcome, or its problems.</summary>
    /// <returns>The exit code.</returns>
    public static async Task<int> TellAsync<T>(Outcome<T> outcome, Func<T, string> line)
    {
        if (!outcome.TryAnswer(out var answer, out var problems)) return await RefuseAsync(problems.Select(problem => problem.Sentence));
        await WriteAsync([line(answer.Value), .. answer.Questions.Select(question => question.Sentence), "", .. Lines(answer.Working)]);
        return CommandLine.Done;
    }

    public static async Task<int> RefuseAsync(IEnumerable<string> sentences)
    {
        foreach (var sentence in sentences.Distinct()) await Console.Error.WriteLineAsync(sentence);
        return CommandLine.WrongInput;
    }

    public static async Task<int> WrongAsync(string sentence)
    {
        await Console.Error.WriteLineAsync(sentence);
        return CommandLine.WrongCommand;
    }

    public static async Task WriteAsync(IEnumerable<string> lines)
    {
        try
        {
            foreach (var line in lines) await Console.Out.WriteLineAsync(line);
            await Console.Out.FlushAsync();
        }
        catch (IOException)
        {
            // Whoever read the other end of the pipe has seen enough.
        }
    }

    /// <summary>A working in lines: formula, inputs, results, where it holds, how far off, source and status.</summary>
    public static IEnumerable<string> Lines(Working working, string indent = "  ")
    {
        yield return $"{indent}{working.Title}: {working.Formula}";
        yield return $"{indent}from     {string.Join(", ", working.Inputs.Select(Given))}";
        yield return $"{indent}gives    {string.Join(", ", working.Results.Select(Given))}";
        if (working.Domain is { } domain) yield return $"{indent}holds    {domain}";
        if (working.LikelyError is { } error) yield return $"{indent}off by   {error}";
        foreach (var source in working.AlsoFrom.Prepend(working.Source))
            yield return $"{indent}source   {source.Text} ({source.Status.InWords()}){(source.Remark is { } remark ? " " + remark : "")}";
        foreach (var line in working.Parts.SelectMany(part => Lines(part, indent + "  "))) yield return line;
    }

    public static string Number(double value) => Math.Abs(value) switch
    {
        >= 1000 => Math.Round(value).ToString("0", CultureInfo.InvariantCulture),
        >= 100 => value.ToString("0.#", CultureInfo.InvariantCulture),
        >= 1 => value.ToString("0.##", CultureInfo.InvariantCulture),
        _ => value.ToString("0.####", CultureInfo.InvariantCulture),
    };

    private static string Given(Given given) => given.Unit.Length == 0 ? $"{given.Name} {Number(given.Value)}" : $"{given.Name} {Number(given.Value)} {given.Unit}";
}
