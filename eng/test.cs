// Passes every test on a machine that has only git and the .NET 10 SDK:
//
//     dotnet run eng/test.cs [--no-skips]
//
// Sees to a Chromium and a QR reader for the browser tests, builds the solution once, runs each test project, sums the results and ends with one
// line, "N passed, N failed, N skipped" (the last part only where something was skipped). With --no-skips a skipped test is a failure.
// A build or a test project that breaks counts as one failure. Exit code: 0 all passed, 1 something failed, 2 the command is wrong.

using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;

const string Configuration = "Release";
var longest = TimeSpan.FromMinutes(10);

if (args.FirstOrDefault(argument => argument != "--no-skips") is { } unknown)
{
    Console.Error.WriteLine($"There is no option {unknown}: the command is dotnet run eng/test.cs [--no-skips].");
    return 2;
}

var noSkips = args.Contains("--no-skips");
var root = Path.GetDirectoryName(AppContext.GetData("EntryPointFileDirectoryPath") as string)
    ?? throw new InvalidOperationException("Run this as a file: dotnet run eng/test.cs.");
var dotnet = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } host ? host : "dotnet";
// A build node that outlives this run would hold on to its output, and whoever reads that would wait for it.
Environment.SetEnvironmentVariable("MSBUILDDISABLENODEREUSE", "1");
// Compilers that live for one build never get back what watching themselves costs: a fifth of the build.
Environment.SetEnvironmentVariable("DOTNET_TieredPGO", "0");

await SeeToChromiumAsync();

var watch = Stopwatch.StartNew();
if (await RunAsync(dotnet, ["build", "Trier.slnx", "--configuration", Configuration, "--nologo", "--verbosity", "quiet"], root) != 0)
{
    Console.WriteLine("The build failed, so no test was run.");
    Console.WriteLine(new Count(0, 1, 0));
    return 1;
}

Console.WriteLine($"Built in {Seconds(watch.Elapsed)}.");

var results = Path.Combine(root, "artifacts", "tests");
if (Directory.Exists(results)) Directory.Delete(results, recursive: true);
Directory.CreateDirectory(results);

var sum = new Count(0, 0, 0);
// One project at a time: each already uses all cores, and tests that measure time are not disturbed by another project.
foreach (var name in TestProjects())
{
    watch.Restart();
    var (count, trouble) = await TestAsync(name);
    if (count.All == 0 && trouble is null)
    {
        Console.WriteLine($"{name}: no tests yet.");
        continue;
    }

    Console.WriteLine($"{name}: {count} in {Seconds(watch.Elapsed)}.");
    if (trouble is not null) Console.WriteLine($"{name}: {trouble}");
    sum += trouble is null || count.Failed > 0 ? count : count with { Failed = 1 };
}

if (sum.All == 0)
{
    Console.WriteLine("No test was run at all.");
    sum = sum with { Failed = 1 };
}

if (noSkips && sum.Skipped > 0)
{
    Console.WriteLine($"{sum.Skipped} skipped, and with --no-skips nothing may be: they count as failed.");
    sum = new Count(sum.Passed, sum.Failed + sum.Skipped, 0);
}

Console.WriteLine(sum);
return sum.Failed == 0 ? 0 : 1;

IEnumerable<string> TestProjects() =>
    XDocument.Load(Path.Combine(root, "Trier.slnx")).Descendants("Project")
        .Select(project => Path.GetFileNameWithoutExtension((string)project.Attribute("Path")!))
        .Where(name => name.EndsWith(".Tests", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal);

async Task<(Count Count, string? Trouble)> TestAsync(string name)
{
    var program = Path.Combine(root, "tests", name, "bin", Configuration, "net10.0", $"{name}.dll");
    var report = Path.Combine(results, $"{name}.trx");
    var start = new ProcessStartInfo(dotnet, [program, "--report-trx", "--report-trx-filename", $"{name}.trx", "--results-directory", results, "--progress", "off", "--no-ansi"])
    {
        WorkingDirectory = root,
        RedirectStandardOutput = true,
        RedirectStandardError = true,
    };
    using var process = Process.Start(start)!;
    var said = process.StandardOutput.ReadToEndAsync();
    var complained = process.StandardError.ReadToEndAsync();
    using var patience = new CancellationTokenSource(longest);
    try
    {
        await process.WaitForExitAsync(patience.Token);
    }
    catch (OperationCanceledException)
    {
        process.Kill(entireProcessTree: true);
        return (new Count(0, 0, 0), $"did not end within {longest.TotalMinutes:0} minutes and was stopped.");
    }

    var output = await said;
    // 0: all passed. 2: a test failed. 8: there was no test. Anything else: the project itself broke.
    const int AllPassed = 0, SomeFailed = 2, NothingRun = 8;
    if (process.ExitCode != AllPassed && process.ExitCode != NothingRun)
    {
        Console.WriteLine(output);
        Console.WriteLine(await complained);
    }

    var ended = process.ExitCode is AllPassed or SomeFailed or NothingRun ? null : $"ended with exit code {process.ExitCode}.";
    if (!File.Exists(report)) return (new Count(0, 0, 0), ended ?? (process.ExitCode == NothingRun ? null : "left no report."));
    var (counted, listed) = Read(report);
    ShowSkips(report);
    if (ended is null && counted != listed) ended = $"the report counts {counted} and lists {listed}.";
    return (listed, ended ?? Mismatch(output, listed, process.ExitCode == SomeFailed));
}

// What the report counts, what it lists and what the project printed have to agree, or one of them has lost a test.
static string? Mismatch(string output, Count count, bool failed)
{
    if (failed != count.Failed > 0) return $"the exit code says that {(failed ? "something" : "nothing")} failed, the report counts {count.Failed}.";
    foreach (var (word, expected) in new[] { ("total", count.All), ("succeeded", count.Passed), ("failed", count.Failed), ("skipped", count.Skipped) })
    {
        if (Regex.Match(output, $@"^\s*{word}: (\d+)\s*$", RegexOptions.Multiline | RegexOptions.RightToLeft) is not { Success: true } printed) return $"the summary has no line “{word}”.";
        if (int.Parse(printed.Groups[1].Value, CultureInfo.InvariantCulture) != expected) return $"the summary says {printed.Value.Trim()}, the report {expected}.";
    }

    return null;
}

static (Count Counted, Count Listed) Read(string report)
{
    var document = XDocument.Load(report);
    var ns = document.Root!.Name.Namespace;
    var counters = document.Descendants(ns + "Counters").Single();
    int Counter(string name) => (int?)counters.Attribute(name) ?? 0;
    var outcomes = document.Descendants(ns + "UnitTestResult").Select(result => (string?)result.Attribute("outcome")).ToList();
    var counted = new Count(Counter("passed"), Counter("failed") + Counter("error") + Counter("timeout") + Counter("aborted"), Counter("notExecuted"));
    var listed = new Count(
        outcomes.Count(outcome => outcome == "Passed"),
        outcomes.Count(outcome => outcome is not ("Passed" or "NotExecuted")),
        outcomes.Count(outcome => outcome == "NotExecuted"));
    return (counted, listed);
}

static void ShowSkips(string report)
{
    var document = XDocument.Load(report);
    var ns = document.Root!.Name.Namespace;
    var skipped = document.Descendants(ns + "UnitTestResult").Where(result => (string?)result.Attribute("outcome") == "NotExecuted");
    foreach (var group in skipped.GroupBy(result => string.Concat(result.Descendants().Where(part => part.Name.LocalName is "Message" or "StdOut").Select(part => part.Value.Trim()))))
        Console.WriteLine($"  {group.Count()} skipped: {group.Key}");
}

// The browser tests read TRIER_CHROMIUM and skip, saying so, where it is not there. They read printed QR codes back with zbarimg and pdftoppm.
async Task SeeToChromiumAsync()
{
    // Somebody who names a browser means that one: no other is looked for, and none is installed.
    var named = Environment.GetEnvironmentVariable("TRIER_CHROMIUM") is { Length: > 0 };
    var missing = new List<string>();
    // The shell has no window to draw and ends a run sooner.
    if (!named && Chromium() is null) missing.Add("chromium-headless-shell");
    if (Found("zbarimg") is null) missing.Add("zbar-tools");
    if (Found("pdftoppm") is null) missing.Add("poppler-utils");
    if (missing.Count > 0 && OperatingSystem.IsLinux() && File.Exists("/etc/debian_version") && Environment.UserName == "root")
    {
        Console.WriteLine($"Installing for the browser tests, from Debian: {string.Join(", ", missing)}.");
        Environment.SetEnvironmentVariable("DEBIAN_FRONTEND", "noninteractive");
        if (await RunAsync("apt-get", ["update", "-qq"], root) == 0)
            await RunAsync("apt-get", ["install", "-y", "-qq", "--no-install-recommends", .. missing], root);
    }

    var found = Chromium();
    if (!named) Environment.SetEnvironmentVariable("TRIER_CHROMIUM", found);
    Console.WriteLine(found is null
        ? "No Chromium: the browser tests will skip. Install it, or name one in TRIER_CHROMIUM."
        : $"Browser tests use {found}.");
}

static string? Chromium()
{
    if (Environment.GetEnvironmentVariable("TRIER_CHROMIUM") is { Length: > 0 } named) return File.Exists(named) ? named : null;
    return OperatingSystem.IsWindows() ? Found("chrome.exe", "chromium.exe") : Found("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome");
}

static string? Found(params string[] names)
{
    var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries).Prepend("/usr/bin");
    return names.SelectMany(name => folders.Select(folder => Path.Combine(folder, name))).FirstOrDefault(File.Exists);
}

static async Task<int> RunAsync(string program, string[] arguments, string folder)
{
    using var process = Process.Start(new ProcessStartInfo(program, arguments) { WorkingDirectory = folder })!;
    await process.WaitForExitAsync();
    return process.ExitCode;
}

static string Seconds(TimeSpan time) => $"{time.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture)} s";

internal readonly record struct Count(int Passed, int Failed, int Skipped)
{
    public int All => Passed + Failed + Skipped;

    public static Count operator +(Count left, Count right) => new(left.Passed + right.Passed, left.Failed + right.Failed, left.Skipped + right.Skipped);

    public override string ToString() => Skipped == 0 ? $"{Passed} passed, {Failed} failed" : $"{Passed} passed, {Failed} failed, {Skipped} skipped";
}
