using System.Collections.Immutable;
using Trier.Statistics.RankTests;
using Trier.Trials.Plans;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>How sure, in places and people.</summary>
internal static class SureSentences
{
    // In how large a group the leader's lead is still worth a warning that the best of several is picked for being lucky too (our choice, no source).
    private const int SmallGroup = 100;

    public static ImmutableArray<string> All(Verdict verdict)
    {
        var sentences = ImmutableArray.CreateBuilder<string>();
        sentences.Add(LevelSentence.Of(verdict));
        if (verdict.Gate is null) return sentences.ToImmutable();
        if (verdict.Leaders.Length == 1 && verdict.Gate.LeadLuck is { } lead)
            sentences.Add($"A lead this big over the next turns up by luck {Chance.TimesInTen(lead.Value)}.");
        if (Gap(verdict) is { } gap) sentences.Add(gap);
        var needed = Shaffer.SmallestPanel(verdict.Wheels.Length);
        // A wheel that everybody puts first can be shown ahead of all others by fewer.
        if (verdict.Panel.Voices < needed && verdict.Level.Level < 6)
            sentences.Add($"With {Phrase.Number(verdict.Wheels.Length)} {Phrase.Wheels(verdict.Record)} no pair can be told apart with fewer than {Phrase.Number(needed)} voices, even if all agree.");
        if (NextSentences.Reach(verdict) is { } reach) sentences.Add(reach);
        if (verdict.Pairs.Any(p => !p.Shown)) sentences.Add("What is left open here may still differ: open does not mean alike.");
        return sentences.ToImmutable();
    }

    private static string? Gap(Verdict verdict)
    {
        if (verdict.Leaders.Length != 1 || verdict.Record.Plan.Rule is not CountingRule.AveragePlace) return null;
        var second = verdict.Wheels[1].Id;
        var pair = verdict.Pairs.FirstOrDefault(p => p.Better == verdict.Leaders[0] && p.Worse == second);
        if (pair is null) return null;
        var level = verdict.HeadToHead.Any(h => h.Id == pair.Better && h.Other == second && h.Ties > 0);
        var share = $"{Phrase.Count(pair.Preferring)} of {Phrase.Number(pair.Voices)} voices put {Naming.Of(verdict, pair.Better)} above {Naming.Of(verdict, second)}{(level ? ", a tie counted half for each" : "")}";
        var gap = (verdict.Tally[1].AveragePlace - verdict.Tally[0].AveragePlace) ?? pair.Gap;
        var modesty = verdict.Panel.Voices < SmallGroup ? "; in a small group a lead tends to look larger than it is" : "";
        return $"{share}; by average place it seems {Phrase.Places(gap)} ahead{modesty}.";
    }
}
