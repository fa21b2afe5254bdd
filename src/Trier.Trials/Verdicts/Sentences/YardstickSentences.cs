using System.Collections.Immutable;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>The yardsticks: one cheese served twice, one recipe made twice.</summary>
internal static class YardstickSentences
{
    public static ImmutableArray<string> All(Verdict verdict)
    {
        var sentences = ImmutableArray.CreateBuilder<string>();
        foreach (var repeat in verdict.Repeats)
        {
            var name = Naming.Of(verdict, repeat.Counts);
            sentences.Add($"{name} was served twice, and tasters put its two servings {Phrase.Places(repeat.MeanDistance)} apart on average ({Phrase.Tenths(repeat.MeanByLuck)} by luck), next to each other on {Phrase.Number(repeat.NextToEachOther)} of {Phrase.Number(repeat.Ballots)} ballots; that is one taster’s noise.");
            if (repeat.Yardstick is { } y)
                sentences.Add($"Averages are steadier: two servings of one cheese would land within {Phrase.Tenths(y)} average places of each other in 9 panels of 10.{Within(verdict, y)}");
        }

        foreach (var same in verdict.SameRecipe.OrderByDescending(same => same.Gap))
            sentences.Add($"{Naming.Of(verdict, same.Better)} and {Naming.Of(verdict, same.Worse)} are {(same.OneMake ? $"of one make of {same.Recipe}" : $"one recipe ({same.Recipe}) made twice")}, and came out {Phrase.Places(same.Gap)} apart{Against(verdict, same)}.");
        return sentences.ToImmutable();
    }

    private static string Within(Verdict verdict, double yardstick)
    {
        if (LeadGap(verdict) is not { } gap) return "";
        var (leader, second) = (Naming.Of(verdict, verdict.Wheels[0].Id), Naming.Of(verdict, verdict.Wheels[1].Id));
        return gap < yardstick
            ? $" {leader} and {second} are nearer than that: not separated."
            : $" {leader} and {second} are {Phrase.Tenths(gap)} apart.";
    }

    private static string Against(Verdict verdict, SameRecipeFinding same)
    {
        if (LeadGap(verdict) is not { } gap || verdict.Leaders.Length != 1) return "";
        var (leader, second) = (Naming.Of(verdict, verdict.Wheels[0].Id), Naming.Of(verdict, verdict.Wheels[1].Id));
        if (IsTheLead(verdict, same)) return "; they are the first two here";
        if (!Phrase.Further(same.Gap, gap)) return $"; {leader} and {second} are {Phrase.Tenths(gap)} apart";
        return $", further than {leader} and {second} ({Phrase.Tenths(gap)}){(same.OneMake ? "" : ": a good wheel is not yet a good recipe")}";
    }

    /// <summary>Whether the two are the first two themselves, whose gap says nothing beside itself.</summary>
    public static bool IsTheLead(Verdict verdict, SameRecipeFinding same) =>
        verdict.Wheels.Take(2).All(wheel => wheel.Id == same.Better || wheel.Id == same.Worse);

    /// <summary>How far the first two lie apart by average place, whatever the rule; null where there is no average.</summary>
    public static double? LeadGap(Verdict verdict) =>
        verdict.Wheels.Length >= 2 && verdict.Tally[0].AveragePlace is { } first && verdict.Tally[1].AveragePlace is { } second
            ? Math.Abs(second - first)
            : null;
}
