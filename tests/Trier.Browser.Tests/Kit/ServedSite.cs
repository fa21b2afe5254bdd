using System.Diagnostics;
using System.Text;
using Trier.TestKit;

namespace Trier.Browser.Tests.Kit;

/// <summary>The built program, serving as a process of its own: it can be killed and started again.</summary>
internal sealed class ServedSite : Site
{
    private const int KilledBySignal9 = 128 + 9;
    private static readonly TimeSpan LongestStart = TimeSpan.FromSeconds(60);

    private readonly DirectoryInfo _folder;
    private readonly StringBuilder _said = new();
    private Process _process = null!;
    private int _port;
    private bool _running;

    private ServedSite(DirectoryInfo folder) => _folder = folder;

    public override IReadOnlyList<string> Failures
    {
        get
        {
            lock (_said) return [.. _said.ToString().Split('\n').Where(line => line.StartsWith("fail:", StringComparison.Ordinal) || line.StartsWith("crit:", StringComparison.Ordinal))];
        }
    }

    public static Task<ServedSite> StartAsync() => StartAsync(NewFolder());

    /// <summary>Starts on a data folder that may hold something already; the folder is the site's from here on.</summary>
    public static async Task<ServedSite> StartAsync(DirectoryInfo folder)
    {
        var site = new ServedSite(folder);
        await site.RunAsync();
        return site;
    }

    /// <summary>Ends the program by signal 9: nothing is said goodbye to, nothing is flushed.</summary>
    public async Task KillAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
        if (!OperatingSystem.IsWindows()) Assert.Equal(KilledBySignal9, _process.ExitCode);
        _process.Dispose();
        _running = false;
    }

    /// <summary>Starts it again on the same port and folder.</summary>
    public Task StartAgainAsync() => RunAsync();

    public override async ValueTask DisposeAsync()
    {
        if (_running)
        {
            _process.Kill();
            await _process.WaitForExitAsync();
            _process.Dispose();
        }

        _folder.Delete(recursive: true);
    }

    private async Task RunAsync()
    {
        // Built beside the tests, in the same configuration as they are.
        var framework = new DirectoryInfo(AppContext.BaseDirectory.TrimEnd(Path.DirectorySeparatorChar));
        var program = Path.Combine(Checkout.Root, "src", "Trier", "bin", framework.Parent!.Name, framework.Name, "trier.dll");
        var host = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } named ? named : "dotnet";
        _process = new Process
        {
            StartInfo = new(host, [program, "serve", "--port", $"{_port}", "--data", _folder.FullName]) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false },
        };
        var signIn = new TaskCompletionSource<string>(TaskCreationOptions.RunContinuationsAsynchronously);
        _process.OutputDataReceived += (_, said) => Hear(said.Data, signIn);
        _process.ErrorDataReceived += (_, said) => Hear(said.Data, signIn);
        _process.EnableRaisingEvents = true;
        _process.Exited += (_, _) => signIn.TrySetException(new InvalidOperationException($"The program ended before it was open. It said: {Said()}"));
        _process.Start();
        _running = true;
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
        SignInLink = await signIn.Task.WaitAsync(LongestStart);
        Address = new Uri(SignInLink).GetLeftPart(UriPartial.Authority);
        _port = new Uri(SignInLink).Port;
    }

    private void Hear(string? line, TaskCompletionSource<string> signIn)
    {
        if (line is null) return;
        lock (_said) _said.Append(line).Append('\n');
        if (line.Trim() is var told && told.StartsWith("http://", StringComparison.Ordinal) && told.Contains("/sign-in/", StringComparison.Ordinal)) signIn.TrySetResult(told);
    }

    private string Said()
    {
        lock (_said) return _said.ToString();
    }
}
