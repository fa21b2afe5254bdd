using System.Globalization;
using System.Resources;
using Trier.Trials.Plans;

namespace Trier.Resources;

/// <summary>The ballot's texts in one language.</summary>
/// <param name="language">One of <see cref="BallotWords.Languages"/>.</param>
public sealed class Speech(CultureInfo language)
{
    private static readonly ResourceManager Texts = new("Trier.Resources.BallotWords", typeof(Speech).Assembly);

    /// <summary>The language, for a lang attribute.</summary>
    public string Name => language.Name is { Length: > 0 } name ? name : "en";

    /// <summary>A text.</summary>
    /// <param name="key">Its name in the resource file.</param>
    /// <param name="with">Values for its gaps.</param>
    /// <exception cref="InvalidOperationException">There is no such text: a slip of the program.</exception>
    public string Say(string key, params object[] with)
    {
        var text = Texts.GetString(key, language) ?? throw new InvalidOperationException($"There is no text called {key}.");
        return with.Length == 0 ? text : string.Format(language, text, with);
    }

    /// <summary>One of several texts that stand in one row of the file, parted by strokes.</summary>
    /// <param name="key">The row's name.</param>
    /// <param name="index">Which, from 0; beyond the end, the last.</param>
    public string OneOf(string key, int index)
    {
        var texts = Say(key).Split('|');
        return texts[Math.Min(index, texts.Length - 1)];
    }

    /// <summary>1st, 2nd, 3rd.</summary>
    /// <param name="place">From 1.</param>
    public string Place(int place) => OneOf("ordinals", place - 1);

    /// <summary>The words for a liking, in a junior's words where asked.</summary>
    /// <param name="liking">1 to 9.</param>
    /// <param name="junior">Whether the taster is under 12.</param>
    public string LikingOf(int liking, bool junior) =>
        Say(string.Create(CultureInfo.InvariantCulture, $"{(junior && liking % 2 == 1 ? "junior." : "")}liking.{liking}"));

    /// <summary>The question about a property: salt and firmness in this language, any other in the host's own word.</summary>
    /// <param name="property">The property.</param>
    public string RightOf(string property) => property switch
    {
        BallotPlan.Salt => Say("right.salt"),
        BallotPlan.Firmness => Say("right.firmness"),
        _ => Say("right.own", property),
    };

    /// <summary>The two ends of a property: too little and too much.</summary>
    /// <param name="property">The property.</param>
    public (string Little, string Much) RightEnds(string property) =>
        property == BallotPlan.Firmness ? (Say("right.soft"), Say("right.firm")) : (Say("right.little"), Say("right.much"));
}
