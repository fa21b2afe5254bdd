namespace Trier.TestKit;

/// <summary>Where the tests find the repository and the material that lies beside it.</summary>
public static class Checkout
{
    /// <summary>The root of this checkout: the folder that holds Trier.slnx.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>
    /// The folder <c>shared/checks</c> beside the checkout, or null where there is none. Files named in its
    /// <c>only-in-shared.txt</c> carry licences of their own and are read from there, never copied.
    /// </summary>
    public static string? SharedChecks { get; } = FindShared();

    /// <summary>The sentence a test gives when it skips for want of a file that lies only beside the checkout.</summary>
    public const string SharedAbsent = "Needs shared/checks beside the checkout: its files may not be copied into this repository.";

    /// <summary>A file under <c>shared/checks</c>, or null where that folder is absent.</summary>
    public static string? Shared(string relative) =>
        SharedChecks is null ? null : Path.Combine(SharedChecks, relative);

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Trier.slnx"))) return folder.FullName;
        }

        throw new InvalidOperationException($"No Trier.slnx above {AppContext.BaseDirectory}: run the tests from a checkout.");
    }

    private static string? FindShared()
    {
        var named = Environment.GetEnvironmentVariable("TRIER_SHARED_CHECKS");
        if (!string.IsNullOrEmpty(named)) return Directory.Exists(named) ? named : null;
        var beside = Path.GetFullPath(Path.Combine(Root, "..", "shared", "checks"));
        return Directory.Exists(beside) ? beside : null;
    }
}
