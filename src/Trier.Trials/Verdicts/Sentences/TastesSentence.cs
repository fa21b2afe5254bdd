using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>Two tastes by a model: said only where one taste is turned down, and then as what the ballots look like.</summary>
internal static class TastesSentence
{
    public static string? Of(Verdict verdict)
    {
        if (verdict.Deep?.Tastes is not { Parted: true } tastes) return null;
        var classes = tastes.Classes.Select(one =>
        {
            var first = one.Wheels.MaxBy(wheel => wheel.First)!;
            return $"about {Phrase.Number((long)Math.Round(10 * one.Share, MidpointRounding.AwayFromZero))} in 10 who mostly put {Naming.Of(verdict, first.Id)} first";
        });
        return $"Without asking what anybody likes, the ballots look like two tastes rather than one: {string.Join(" and ", classes)}; one taste alone would look so divided {Chance.OneIn(tastes.P.Value)}. Who belongs where no single ballot says.";
    }
}
