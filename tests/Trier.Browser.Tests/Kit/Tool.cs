using System.ComponentModel;
using System.Diagnostics;

namespace Trier.Browser.Tests.Kit;

/// <summary>A program of the machine, such as a decoder that knows nothing of how a sheet was drawn.</summary>
internal static class Tool
{
    /// <summary>Whether it is there.</summary>
    public static bool Runs(string program)
    {
        try
        {
            using var tried = Process.Start(new ProcessStartInfo(program, ["--help"]) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false })!;
            tried.WaitForExit();
            return true;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }

    /// <summary>Runs it and gives what it says.</summary>
    public static async Task<string> RunAsync(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false })!;
        var complained = process.StandardError.ReadToEndAsync();
        var said = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}: {await complained}");
        return said;
    }
}
