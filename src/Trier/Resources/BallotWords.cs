using System.Globalization;
using System.Resources;

namespace Trier.Resources;

/// <summary>
/// Every string a taster sees. English stands in BallotWords.resx; another language is a BallotWords.xx.resx beside it and needs no code: the
/// page then follows what the taster's browser asks for.
/// </summary>
internal static class BallotWords
{
    private static readonly ResourceManager Texts = new("Trier.Resources.BallotWords", typeof(BallotWords).Assembly);

    private static readonly Lazy<IReadOnlyList<CultureInfo>> Found = new(Find);

    /// <summary>English, and every language that has a resource file.</summary>
    public static IReadOnlyList<CultureInfo> Languages => Found.Value;

    /// <summary>The language pages are written in now, for the lang attribute.</summary>
    public static string Language => CultureInfo.CurrentUICulture.Name is { Length: > 0 } name ? name : "en";

    /// <summary>A text in the taster's language.</summary>
    /// <param name="key">Its name in the resource file.</param>
    /// <param name="with">Values for its gaps.</param>
    /// <exception cref="InvalidOperationException">There is no such text: a slip of the program.</exception>
    public static string Say(string key, params object[] with)
    {
        var text = Texts.GetString(key, CultureInfo.CurrentUICulture) ?? throw new InvalidOperationException($"There is no text called {key}.");
        return with.Length == 0 ? text : string.Format(CultureInfo.CurrentCulture, text, with);
    }

    /// <summary>One of several texts that stand in one row of the file, parted by strokes.</summary>
    /// <param name="key">The row's name.</param>
    /// <param name="index">Which, from 0; beyond the end, the last.</param>
    public static string OneOf(string key, int index)
    {
        var texts = Say(key).Split('|');
        return texts[Math.Min(index, texts.Length - 1)];
    }

    /// <summary>1st, 2nd, 3rd in the taster's language.</summary>
    /// <param name="place">From 1.</param>
    public static string Place(int place) => OneOf("ordinals", place - 1);

    /// <summary>The words for a liking.</summary>
    /// <param name="liking">1 to 9.</param>
    public static string Liking(int liking) => Say($"liking.{liking.ToString(CultureInfo.InvariantCulture)}");

    /// <summary>A time of day on the host's clock.</summary>
    /// <param name="at">When.</param>
    public static string Time(DateTimeOffset at) => Say("time", at);

    private static List<CultureInfo> Find()
    {
        var english = CultureInfo.GetCultureInfo("en");
        var found = new List<CultureInfo> { english };
        foreach (var folder in Directory.EnumerateDirectories(AppContext.BaseDirectory))
        {
            if (!File.Exists(Path.Combine(folder, "trier.resources.dll"))) continue;
            try
            {
                found.Add(CultureInfo.GetCultureInfo(Path.GetFileName(folder)));
            }
            catch (CultureNotFoundException)
            {
                // A folder that only looks like a language.
            }
        }

        return found;
    }
}
