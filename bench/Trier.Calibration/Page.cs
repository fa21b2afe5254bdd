namespace Trier.Calibration;

/// <summary>The page of calibration tables: each section stands between two marks and is replaced as a whole.</summary>
internal static class Page
{
    public static void Write(string section, string text)
    {
        var path = Path.Combine(Root(), "docs", "methods", "calibration.md");
        var page = File.ReadAllText(path);
        var begin = $"<!-- {section}: begin -->";
        var from = page.IndexOf(begin, StringComparison.Ordinal);
        var to = page.IndexOf($"<!-- {section}: end -->", StringComparison.Ordinal);
        if (from < 0 || to < from) throw new InvalidOperationException($"{path} has no marks for {section}.");
        File.WriteAllText(path, string.Concat(page.AsSpan(0, from + begin.Length), "\n", text, page.AsSpan(to)));
    }

    public static string Root()
    {
        for (var folder = new DirectoryInfo(Directory.GetCurrentDirectory()); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Trier.slnx"))) return folder.FullName;
        }

        throw new InvalidOperationException("Run this from a checkout.");
    }
}
