using System.Collections.Immutable;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>Puts the sentences together. Wording rules: docs/methods/verdict-wording.md.</summary>
internal static class Wording
{
    private const int TopDisagreements = 2;

    public static VerdictWords Of(Verdict verdict)
    {
        var bet = BetSentence.Of(verdict);
        var level = LevelSentence.Of(verdict);
        var disagreement = DisagreementSentences.All(verdict);
        var top = ImmutableArray.CreateBuilder<string>();
        top.Add(bet);
        top.Add(PanelSentence.Of(verdict));
        top.Add(level);
        if (ChanceSentence.Of(verdict) is { } chance) top.Add(chance);
        if (ServingSentences.Headline(verdict) is { } sittings) top.Add(sittings);
        if (TipSentences.Headline(verdict) is { } tips) top.Add(tips);
        top.AddRange(disagreement.Take(TopDisagreements));
        if (LimitSentences.Recipes(verdict) is { } recipes) top.Add(recipes);
        return new(
            top.ToImmutable(),
            [bet, level, DisagreementSentences.Headline(verdict)],
            SureSentences.All(verdict),
            SteadySentence.Of(verdict),
            YardstickSentences.All(verdict),
            TipSentences.All(verdict),
            disagreement,
            AnswerSentences.All(verdict),
            ServingSentences.All(verdict),
            NextSentences.All(verdict),
            LimitSentences.All(verdict));
    }
}
