using System.Globalization;

namespace Trier.Resources;

/// <summary>
/// Every string a taster sees. English stands in BallotWords.resx; another language is a BallotWords.xx.resx beside it and needs no code: the
/// first page then offers it under its own name.
/// </summary>
internal static class BallotWords
{
    private static readonly Lazy<IReadOnlyList<CultureInfo>> Found = new(Search);

    /// <summary>English, and every language that has a resource file.</summary>
    public static IReadOnlyList<CultureInfo> Languages => Found.Value;

    /// <summary>The language pages are written in now, for the lang attribute.</summary>
    public static string Language => Now.Name;

    private static Speech Now => new(CultureInfo.CurrentUICulture);

    /// <summary>The texts in a language chosen before; in English where there is none, or no file for it.</summary>
    /// <param name="language">Its short name, or null.</param>
    public static Speech In(string? language) => new(Find(language) ?? Languages[0]);

    /// <inheritdoc cref="Speech.Say"/>
    public static string Say(string key, params object[] with) => Now.Say(key, with);

    /// <inheritdoc cref="Speech.OneOf"/>
    public static string OneOf(string key, int index) => Now.OneOf(key, index);

    /// <inheritdoc cref="Speech.Place"/>
    public static string Place(int place) => Now.Place(place);

    /// <summary>The words for a liking.</summary>
    /// <param name="liking">1 to 9.</param>
    public static string Liking(int liking) => Now.LikingOf(liking, junior: false);

    /// <inheritdoc cref="Speech.LikingOf"/>
    public static string LikingOf(int liking, bool junior) => Now.LikingOf(liking, junior);

    /// <inheritdoc cref="Speech.RightOf"/>
    public static string RightOf(string property) => Now.RightOf(property);

    /// <inheritdoc cref="Speech.RightEnds"/>
    public static (string Little, string Much) RightEnds(string property) => Now.RightEnds(property);

    /// <summary>A time of day on the host's clock.</summary>
    /// <param name="at">When.</param>
    public static string Time(DateTimeOffset at) => Say("time", at);

    /// <summary>What a language calls itself.</summary>
    /// <param name="language">One of <see cref="Languages"/>.</param>
    public static string NameOf(CultureInfo language) => new Speech(language).Say("language.name");

    /// <summary>The language of a name such as "fr", or null where there is no resource file for it.</summary>
    /// <param name="name">The name.</param>
    public static CultureInfo? Find(string? name) => Languages.FirstOrDefault(language => language.Name.Equals(name, StringComparison.OrdinalIgnoreCase));

    private static List<CultureInfo> Search()
    {
        var found = new List<CultureInfo>();
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

        return [CultureInfo.GetCultureInfo("en"), .. found.OrderBy(NameOf, StringComparer.Ordinal)];
    }
}
