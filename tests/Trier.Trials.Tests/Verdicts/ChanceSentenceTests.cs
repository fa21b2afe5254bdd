using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Tests.Verdicts;

public class ChanceSentenceTests
{
    private static readonly JudgingEffort Quick = new(new Effort(1e6, 999, 999, 4e9), new SamplingEffort(2, 100, 1_000), 1e8, 0, 0, 199);

    private static readonly Verdict Judged = Judge.Of(Panels.Of("ABC", "ABC", "ABC", "ABC", "BAC", "BAC"), new Seed(417), Quick);

    [Theory]
    [InlineData(0.97, "Wheel A is a strong bet, more than 9 in 10, to be the favourite")]
    [InlineData(0.90, "Wheel A is a strong bet, about 9 in 10, to be the favourite")]
    [InlineData(0.75, "Wheel A is a good bet, about 3 in 4, to be the favourite")]
    [InlineData(0.66, "Wheel A is more likely than not, about 7 in 10, to be the favourite")]
    [InlineData(0.55, "Wheel A is more likely than not, about 6 in 10, to be the favourite")]
    [InlineData(0.549, "Wheel A is as likely as not, about 5 in 10, to be the favourite")]
    [InlineData(0.45, "Wheel A is as likely as not, about 5 in 10, to be the favourite")]
    [InlineData(0.449, "Wheel A is the best guess we have, and more likely wrong than right: about 4 in 10 that it is the favourite")]
    public void The_odds_and_the_word_beside_them_never_part(double chance, string begins)
    {
        var found = Judged.Deep!.Chances! with { EffectiveSize = 4_000, RHat = 1 };
        var rest = (1 - chance) / 2;
        var verdict = Judged with { Deep = Judged.Deep with { Chances = found with { Wheels = [.. found.Wheels.Select(wheel => wheel with { Chance = wheel.Id == "WA" ? chance : rest })] } } };
        Assert.Equal($"{begins} of people like these; a blind guess is right 1 time in 3.", ChanceSentence.Of(verdict));
    }
}
