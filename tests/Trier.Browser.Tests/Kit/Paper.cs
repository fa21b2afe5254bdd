using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace Trier.Browser.Tests.Kit;

/// <summary>Printed pages, read back by programs that know nothing of how they were drawn.</summary>
internal static class Paper
{
    /// <summary>What a test says when it skips.</summary>
    public const string NoReader = "Needs zbarimg and pdftoppm on the path (Debian: zbar-tools, poppler-utils) to read printed pages back.";

    /// <summary>Whether the programs are there.</summary>
    public static bool CanBeRead => Runs("zbarimg") && Runs("pdftoppm") && Runs("pdfinfo");

    /// <summary>Pages of a printed file.</summary>
    /// <param name="pdf">The file.</param>
    public static async Task<int> PagesAsync(string pdf)
    {
        var line = (await RunAsync("pdfinfo", [pdf])).Split('\n').Single(line => line.StartsWith("Pages:", StringComparison.Ordinal));
        return int.Parse(line["Pages:".Length..], CultureInfo.InvariantCulture);
    }

    /// <summary>The text of every QR code on the pages as a plain printer puts them on paper: 150 dots an inch, grey. In order of the alphabet.</summary>
    /// <param name="pdf">The file.</param>
    public static async Task<(IReadOnlyList<string> Codes, int Sheets)> CodesAsync(string pdf)
    {
        var folder = Directory.CreateTempSubdirectory("trier-paper-");
        try
        {
            await RunAsync("pdftoppm", ["-r", "150", "-gray", "-png", pdf, Path.Combine(folder.FullName, "sheet")]);
            var sheets = folder.GetFiles("sheet*.png").Select(file => file.FullName).Order(StringComparer.Ordinal).ToList();
            var read = await RunAsync("zbarimg", ["--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", .. sheets]);
            return ([.. read.Split('\n', StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal)], sheets.Count);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static bool Runs(string program)
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

    private static async Task<string> RunAsync(string program, string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false })!;
        var complained = process.StandardError.ReadToEndAsync();
        var said = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}: {await complained}");
        return said;
    }
}
