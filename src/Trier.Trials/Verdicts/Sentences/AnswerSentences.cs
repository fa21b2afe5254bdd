using System.Collections.Immutable;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>What was said of the salt. Counts, never tests.</summary>
internal static class AnswerSentences
{
    private const int FewestToTell = 3;

    public static ImmutableArray<string> All(Verdict verdict) =>
        [.. verdict.Salt.SelectMany(salt => new[] { Of(verdict, salt, salt.TooMuch, "too salty"), Of(verdict, salt, salt.TooLittle, "not salty enough") }).OfType<string>()];

    private static string? Of(Verdict verdict, SaltFinding salt, SaltGroup group, string found)
    {
        if (group.Count < FewestToTell || group.Count * 3 < salt.Answers) return null;
        var liking = group.Drop is { } drop && salt.LikingWhereRight is { } right
            ? $" and liked it {Phrase.Tenths(drop.MeanLiking)} on average; those who found it just right liked it {Phrase.Tenths(right)}"
            : "";
        return $"{Phrase.Number(group.Count)} of {Phrase.Number(salt.Answers)} found {Naming.Of(verdict, salt.Id)} {found}{liking}. A count, not a test.";
    }
}
