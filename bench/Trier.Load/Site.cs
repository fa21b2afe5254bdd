using System.Diagnostics;
using Trier.Web.Hosting;

namespace Trier.Load;

/// <summary>A site in a process of its own, stopped at the end.</summary>
internal sealed class Site : IAsyncDisposable
{
    private const string Opened = "Trier is open at ";

    private readonly Process _process;

    private Site(Process process, Uri address, Uri signIn)
    {
        _process = process;
        Address = address;
        SignIn = signIn;
    }

    public Uri Address { get; }

    /// <summary>The link that signs the maker in, once.</summary>
    public Uri SignIn { get; }

    /// <summary>Processor time the site has used: unlike a waiting time, it does not depend on what else the machine does.</summary>
    public TimeSpan Worked
    {
        get
        {
            _process.Refresh();
            return _process.TotalProcessorTime;
        }
    }

    public static async Task<Site> StartAsync(string folder)
    {
        var program = typeof(HostSettings).Assembly.Location;
        var process = Process.Start(new ProcessStartInfo("dotnet", [program, "serve", "--data", folder, "--port", "0"]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        Uri? address = null;
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.StartsWith(Opened, StringComparison.Ordinal)) address = new Uri(line[Opened.Length..]);
            if (address is null || !line.Contains("/sign-in/", StringComparison.Ordinal)) continue;
            _ = process.StandardOutput.ReadToEndAsync();
            return new Site(process, address, new Uri(line.Trim()));
        }

        throw new InvalidOperationException("The site did not open.");
    }

    public async ValueTask DisposeAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
    }
}
