using System.Collections.Immutable;
using System.Diagnostics;
using System.Text;
using Trier.Publishing.Keys;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Commitments;

namespace Trier.Tests.Commands.Tastings;

/// <summary><c>trier check-key</c>, started as a user starts it.</summary>
public sealed class CheckKeyTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("trier-tests-");

    [Fact]
    public async Task A_key_that_holds_is_said_to_hold_and_a_changed_one_is_not()
    {
        var tasting = new TrialId(Guid.NewGuid());
        byte[] salt = [.. Enumerable.Range(1, 16).Select(at => (byte)at)];
        ImmutableArray<string> lines = ["trier key 1", $"tasting {tasting.Value:D}", "key 1", "previous none", "238 W1 counts Amberholt", "417 W2 counts Birkmoor"];
        var one = new Commitment(1, 1, Convert.ToHexStringLower(salt), Commitment.WordsOf(lines, salt), lines);
        var text = KeyFile.Write(tasting, [one]);

        var (code, output, error) = await RunAsync(text);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains($"Key 1, commitment 1: {one.Words}", output, StringComparison.Ordinal);
        Assert.Contains("417 W2 counts Birkmoor", output, StringComparison.Ordinal);
        Assert.Contains("All of it holds.", output, StringComparison.Ordinal);

        (code, output, _) = await RunAsync(text.Replace("238 W1 counts Amberholt", "238 W2 counts Birkmoor", StringComparison.Ordinal).Replace("417 W2 counts Birkmoor", "417 W1 counts Amberholt", StringComparison.Ordinal));
        Assert.Equal(1, code);
        Assert.Contains("NOT the words of the list below.", output, StringComparison.Ordinal);
        Assert.Contains("It does not hold", output, StringComparison.Ordinal);

        (code, _, error) = await RunAsync("{}");
        Assert.Equal(1, code);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private async Task<(int Code, string Output, string Error)> RunAsync(string text)
    {
        var file = Path.Combine(_folder.FullName, "key.json");
        await File.WriteAllTextAsync(file, text, TestContext.Current.CancellationToken);
        using var process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "trier.dll"), "check-key", file])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
        })!;
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, await output, await error);
    }
}
