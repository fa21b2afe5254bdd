using System.Collections.Immutable;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>Where the rules and the tasters part company. Facts and counts only: what is more than luck is said elsewhere.</summary>
internal static class DisagreementSentences
{
    public static ImmutableArray<string> All(Verdict verdict)
    {
        if (verdict.Variants.IsEmpty) return [];
        var sentences = ImmutableArray.CreateBuilder<string>();
        if (CampSentences.Parted(verdict) is { } camps) sentences.Add(camps);
        var firsts = Firsts(verdict);
        if (firsts is not null) sentences.Add(firsts);
        foreach (var rule in verdict.Variants.Where(v => v.Kind == VariantKind.OtherRule && v.Effect == VariantEffect.LeaderChanges && !(v.Subject == "firsts" && firsts is not null)))
            sentences.Add(Rule(verdict, rule));
        if (firsts is null && !verdict.Variants.Any(v => v.Kind == VariantKind.OtherRule && v.Effect == VariantEffect.LeaderChanges) && verdict.Leaders.Length > 0) sentences.Add(Agreed(verdict));
        if (Why(verdict) is { } why) sentences.Add(why);
        if (Parted(verdict) is { } parted) sentences.Add(parted);
        if (TastesSentence.Of(verdict) is { } tastes) sentences.Add(tastes);
        if (CampSentences.NotParted(verdict) is { } together) sentences.Add(together);
        return sentences.ToImmutable();
    }

    /// <summary>The headline of the disagreement, or of its absence.</summary>
    public static string Headline(Verdict verdict) =>
        CampSentences.Headline(verdict) ?? Firsts(verdict) ?? Parted(verdict) ?? (verdict.Variants.IsEmpty || verdict.Leaders.IsEmpty
            ? $"{Phrase.Number(verdict.Panel.Tasters)} {(verdict.Panel.Tasters == 1 ? "taster has" : "tasters have")} a ballot in this count, and every one is listed below."
            : verdict.Variants.FirstOrDefault(v => v.Kind == VariantKind.OtherRule && v.Effect == VariantEffect.LeaderChanges) is { } rule ? Rule(verdict, rule) : Agreed(verdict));

    private static string Agreed(Verdict verdict)
    {
        var count = verdict.Variants.FirstOrDefault(v => v is { Kind: VariantKind.OtherCount, Effect: VariantEffect.LeaderChanges });
        var weights = verdict.OtherWeights.FirstOrDefault(other => other.ChangesTheLeader(verdict));
        var tried = count is null && weights is null ? "way of counting" : "rule";
        var but = count is not null ? $"; {count.Label}, {Naming.Leading(verdict, count.Leaders)}"
            : weights is not null ? $"; with other weights for the places {Naming.Leading(verdict, weights.Leaders)}"
            : "";
        return verdict.Leaders.Length == 1
            ? $"Every {tried} we tried puts {Naming.Of(verdict, verdict.Leaders)} first{but}."
            : $"Every {tried} we tried leaves {Naming.Of(verdict, verdict.Leaders)} level{but}.";
    }

    private static string Rule(Verdict verdict, Variant rule) =>
        rule.Leaders.IsEmpty ? $"By {rule.Subject} nobody leads." : $"By {rule.Subject} {Naming.Leading(verdict, rule.Leaders)}, not by {Phrase.Name(verdict.Record.Plan.Rule)}.";

    private static string? Firsts(Verdict verdict)
    {
        var rule = verdict.Variants.FirstOrDefault(v => v is { Kind: VariantKind.OtherRule, Subject: "firsts", Effect: VariantEffect.LeaderChanges });
        if (rule is null || rule.Leaders.IsEmpty || verdict.Leaders.IsEmpty) return null;
        var most = verdict.Tally.First(t => t.Id == rule.Leaders[0]);
        var shared = verdict.Tally.Any(t => t.FirstsShared > 0);
        var count = shared ? "" : rule.Leaders.Length > 1 ? $", {Phrase.Number(most.Firsts)} each" : $", {Phrase.Number(most.Firsts)}";
        var names = Naming.Of(verdict, rule.Leaders);
        var head = rule.Leaders.Length > 1 ? $"{names} tie for the most firsts{count}" : $"{names} has the most firsts{count}";
        return $"{head}, but {Naming.Of(verdict, verdict.Leaders)} {Phrase.Verb(verdict.Leaders.Length, "has", "have")} {Phrase.Lead(verdict.Record.Plan.Rule)}.";
    }

    /// <summary>Why most firsts and the best average place part: firsts see the top of a ballot alone.</summary>
    private static string? Why(Verdict verdict)
    {
        var rule = verdict.Variants.FirstOrDefault(v => v is { Kind: VariantKind.OtherRule, Subject: "firsts", Effect: VariantEffect.LeaderChanges });
        if (rule is null || verdict.Leaders.Length != 1) return null;
        var own = verdict.Tally.First(line => line.Id == verdict.Leaders[0]);
        var low = rule.Leaders.Where(id => id != own.Id).Select(id => verdict.Tally.First(line => line.Id == id)).Where(line => line.Lasts > own.Lasts).ToList();
        return low.Count == 0 ? null
            : $"The two ways of counting part because firsts look at the top of each ballot alone: {Phrase.List(low.Select(line => $"{Naming.Of(verdict, line.Id)} was put last by {Phrase.Number(line.Lasts)}"))}, {Naming.Of(verdict, own.Id)} by {(own.Lasts == 0 ? "nobody" : Phrase.Number(own.Lasts))}.";
    }

    /// <summary>The wheel with most of both ends, where a quarter or more put it at each.</summary>
    private static string? Parted(Verdict verdict)
    {
        if (verdict.Wheels.Length < 3) return null;
        var line = verdict.Tally.OrderByDescending(t => Math.Min(t.Firsts, t.Lasts)).ThenBy(t => t.Id, StringComparer.Ordinal).First();
        var both = Math.Min(line.Firsts, line.Lasts);
        if (both < 2 || both * 4 < verdict.Panel.Ballots) return null;
        var luck = verdict.Deep?.Loved is { Marked: true } loved && loved.Ids.Contains(line.Id) ? $"; so many at both ends turn up by luck {Chance.OneIn(loved.P.Value)}" : "";
        return $"Opinions part over {Naming.Of(verdict, line.Id)}: {Phrase.Number(line.Firsts)} put it first and {Phrase.Number(line.Lasts)} last, of {Phrase.Number(line.Ballots)}{luck}.";
    }
}
