using System.Collections.Immutable;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>The verdict in sentences. docs/methods/verdict-wording.md maps evidence to wording.</summary>
/// <param name="Top">For the top of the page: the best bet; who counts and by what rule; what is shown; then, where there is one, how good a bet it is, what tips it and where opinions part.</param>
/// <param name="Headlines">Three true headlines: from the bet, from the level, from the disagreement.</param>
/// <param name="HowSure">How sure, in places and people.</param>
/// <param name="Steady">How steady the lead is among these same ballots, which belongs into a fold; null where that is not worked out.</param>
/// <param name="Yardsticks">The hidden repeat, two wheels of one recipe.</param>
/// <param name="Tips">What tips it.</param>
/// <param name="Disagreement">Where counting rules and tasters part.</param>
/// <param name="Answers">What was said of the salt, as counts.</param>
/// <param name="Serving">What the order of serving and the sittings did.</param>
/// <param name="Next">What to make next, and what it takes to settle what is open.</param>
/// <param name="Limits">What this tasting cannot know.</param>
public sealed record VerdictWords(
    ImmutableArray<string> Top,
    ImmutableArray<string> Headlines,
    ImmutableArray<string> HowSure,
    string? Steady,
    ImmutableArray<string> Yardsticks,
    ImmutableArray<string> Tips,
    ImmutableArray<string> Disagreement,
    ImmutableArray<string> Answers,
    ImmutableArray<string> Serving,
    ImmutableArray<string> Next,
    ImmutableArray<string> Limits)
{
    /// <summary>How sure, where there is no fold.</summary>
    public ImmutableArray<string> HowSureUnfolded => Steady is null ? HowSure : HowSure.Add(Steady);
}
