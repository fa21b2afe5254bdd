namespace Trier.Browser.Tests.Kit;

/// <summary>The program, open on a free port, with a data folder that is gone at the end.</summary>
internal abstract class Site : IAsyncDisposable
{
    /// <summary>Where it is open, without a slash at the end.</summary>
    public string Address { get; protected set; } = "";

    /// <summary>The one-time sign-in link of the last start.</summary>
    public string SignInLink { get; protected set; } = "";

    /// <summary>What the program said of anything that failed.</summary>
    public abstract IReadOnlyList<string> Failures { get; }

    /// <summary>A folder for the data of one site.</summary>
    public static DirectoryInfo NewFolder() => Directory.CreateTempSubdirectory("trier-browser-");

    public abstract ValueTask DisposeAsync();
}
