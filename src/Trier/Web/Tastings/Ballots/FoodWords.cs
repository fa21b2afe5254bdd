using System.Text.RegularExpressions;
using Trier.Resources;

namespace Trier.Web.Tastings.Ballots;

/// <summary>
/// What the maker wrote of milk and allergens, in a guest's language: the words this program writes itself and the usual allergens. Any other
/// word stays the maker's own, since a wrong name for an allergen is worse than a foreign one.
/// </summary>
internal static partial class FoodWords
{
    private static readonly Dictionary<string, string> Known = new(StringComparer.OrdinalIgnoreCase)
    {
        ["cow"] = "milk.cow",
        ["goat"] = "milk.goat",
        ["sheep"] = "milk.sheep",
        ["ewe"] = "milk.sheep",
        ["buffalo"] = "milk.buffalo",
        ["raw"] = "heat.raw",
        ["thermised"] = "heat.thermised",
        ["thermized"] = "heat.thermised",
        ["pasteurised"] = "heat.pasteurised",
        ["pasteurized"] = "heat.pasteurised",
        ["egg"] = "food.egg",
        ["eggs"] = "food.egg",
        ["lysozyme"] = "food.lysozyme",
        ["nut"] = "food.nuts",
        ["nuts"] = "food.nuts",
        ["walnut"] = "food.walnut",
        ["walnuts"] = "food.walnut",
        ["almond"] = "food.almond",
        ["almonds"] = "food.almond",
        ["hazelnut"] = "food.hazelnut",
        ["hazelnuts"] = "food.hazelnut",
        ["wheat"] = "food.wheat",
        ["gluten"] = "food.gluten",
        ["soya"] = "food.soya",
        ["soy"] = "food.soya",
        ["mustard"] = "food.mustard",
        ["celery"] = "food.celery",
        ["sesame"] = "food.sesame",
        ["lupin"] = "food.lupin",
        ["lupins"] = "food.lupin",
        ["sulphites"] = "food.sulphites",
        ["sulfites"] = "food.sulphites",
        ["fish"] = "food.fish",
        ["crustaceans"] = "food.crustaceans",
        ["molluscs"] = "food.molluscs",
        ["mollusks"] = "food.molluscs",
        ["peanut"] = "food.peanut",
        ["peanuts"] = "food.peanut",
    };

    /// <summary>A word of the maker's in a language; in English as it was written.</summary>
    /// <param name="word">Such as “egg (lysozyme)” or “sheep’s”.</param>
    /// <param name="talk">The guest's language.</param>
    public static string In(string word, Speech talk)
    {
        if (talk.Name == "en") return word;
        if (Text(word, talk) is { } whole) return whole;
        var parts = Bracketed().Match(word);
        return parts.Success && Text(parts.Groups["what"].Value, talk) is { } what && Text(parts.Groups["of"].Value, talk) is { } of ? $"{what} ({of})" : word;
    }

    private static string? Text(string word, Speech talk) => Known.TryGetValue(Owner().Replace(word.Trim(), ""), out var key) ? talk.Say(key) : null;

    // “lysozyme (from egg)” and “egg (lysozyme)”.
    [GeneratedRegex(@"^(?<what>[^()]+)\((from )?(?<of>[^()]+)\)$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"(['’]s)?( milk)?$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Owner();
}
