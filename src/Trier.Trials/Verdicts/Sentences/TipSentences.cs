using System.Collections.Immutable;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>What tips the answer: every variant that changes leader or level, and how many ballots the lead hangs on.</summary>
internal static class TipSentences
{
    private const int NamedBallots = 4;
    private const int TopChanges = 3;

    /// <summary>The clause for the top of the page; null where nothing tips.</summary>
    public static string? Headline(Verdict verdict)
    {
        var changes = Changed(verdict)
            .Where(v => v.Kind is not (VariantKind.OtherRule or VariantKind.WithoutOne))
            .Select(v => (v.Label, Outcome: Outcome(verdict, v)))
            .Concat(SingleBallots(verdict))
            .ToList();
        if (changes.Count == 0) return null;
        var told = changes.Take(TopChanges).GroupBy(change => change.Outcome, change => change.Label, StringComparer.Ordinal).Select(group => $"{group.Key} {string.Join(", or ", group)}");
        var more = changes.Count > TopChanges ? "; the rest is told below" : "";
        var stays = verdict.Leaders.Length == 1 && !Changed(verdict).Any(v => v.Kind != VariantKind.OtherRule && v.Effect == VariantEffect.LeaderChanges);
        var hangs = stays ? $"Counted in each of these ways {Naming.Of(verdict, verdict.Leaders)} leads, but how clearly hangs on the way: as planned, {Reached(verdict, verdict.Level.Level)}" : $"The answer hangs on what is counted: as planned, {Naming.Leading(verdict, verdict.Leaders)}";
        return $"{hangs}; {string.Join("; ", told)}{more}.";
    }

    public static ImmutableArray<string> All(Verdict verdict)
    {
        if (verdict.Variants.IsEmpty) return [];
        var sentences = ImmutableArray.CreateBuilder<string>();
        foreach (var variant in verdict.Variants.Where(v => v.Kind is not (VariantKind.OtherRule or VariantKind.WithoutOne)))
            sentences.Add($"{Phrase.Capital(Clause(verdict, variant))}.");
        var single = SingleBallots(verdict).ToList();
        if (single.Count > 0) sentences.AddRange(single.Select(s => $"{Phrase.Capital(s.Label)}, {s.Outcome}."));
        else if (verdict.Level.Reason == NothingToTest.None && verdict.Variants.Any(v => v.Kind == VariantKind.WithoutOne)) sentences.Add("No single ballot changes leader or level.");
        if (Fewest(verdict) is { } fewest) sentences.Add(fewest);
        return sentences.ToImmutable();
    }

    private static IEnumerable<Variant> Changed(Verdict verdict) => verdict.Variants.Where(v => v.Effect != VariantEffect.Same);

    private static string Clause(Verdict verdict, Variant variant)
    {
        var clause = Change(verdict, variant);
        return MostFirstsChange(verdict, variant) is { } firsts ? $"{clause} and {firsts}" : clause;
    }

    private static string Change(Verdict verdict, Variant variant) => $"{variant.Label}, {Outcome(verdict, variant)}";

    private static string Outcome(Verdict verdict, Variant variant) =>
        variant.Effect switch
        {
            VariantEffect.LeaderChanges => Naming.Leading(verdict, variant.Leaders),
            VariantEffect.LevelChanges => Reached(verdict, variant.Level ?? 0),
            _ when verdict.Leaders.IsEmpty => "still nobody leads",
            _ => $"{Naming.Of(verdict, verdict.Leaders)} still {Phrase.Verb(verdict.Leaders.Length, "leads", "share the lead")}",
        };

    /// <summary>A level in words that claim nothing, for it is not the planned count's.</summary>
    private static string Reached(Verdict verdict, int level) => level switch
    {
        0 => "there are too few answers to judge",
        1 => "the lead is shared",
        2 => "luck explains the lead",
        3 => "the lead is a hint",
        4 => $"the {Phrase.Wheels(verdict.Record)} count as not treated alike, and which is best is not settled",
        _ when verdict.Leaders.IsEmpty => $"the {Phrase.Wheels(verdict.Record)} can be compared",
        5 => $"{Naming.Of(verdict, verdict.Leaders)} stands clear of one {Phrase.Wheel(verdict.Record)} or more",
        _ => $"{Naming.Of(verdict, verdict.Leaders)} stands clear of every other",
    };

    private static string? MostFirstsChange(Verdict verdict, Variant variant)
    {
        var now = Most(verdict.Tally.Select(t => t.Firsts));
        if (variant.Kind == VariantKind.OtherRule || variant.MostFirsts.IsEmpty || now == Most(variant.Firsts)) return null;
        var most = variant.MostFirsts.ToHashSet(StringComparer.Ordinal);
        var names = Naming.Of(verdict, variant.MostFirsts);
        var top = variant.Firsts.Max();
        var next = variant.Firsts.Where((_, i) => !most.Contains(verdict.Wheels[i].Id)).DefaultIfEmpty(0).Max();
        if (variant.MostFirsts.Length == 1 && next < top && variant.MostFirsts.SequenceEqual(variant.Leaders))
            return $"has the most firsts too, {Phrase.Number(top)} to {Phrase.Number(next)}";
        return variant.MostFirsts.Length == 1 && next < top
            ? $"{names} has the most firsts, {Phrase.Number(top)} to {Phrase.Number(next)}"
            : $"{names} {Phrase.Verb(variant.MostFirsts.Length, "has", "tie for")} the most firsts";
    }

    private static string Most(IEnumerable<long> firsts)
    {
        var all = firsts.ToList();
        return string.Join(",", Enumerable.Range(0, all.Count).Where(i => all[i] == all.Max()));
    }

    private static IEnumerable<(string Label, string Outcome)> SingleBallots(Verdict verdict)
    {
        var groups = Changed(verdict)
            .Where(v => v.Kind == VariantKind.WithoutOne)
            .GroupBy(v => v.Effect == VariantEffect.LevelChanges ? Reached(verdict, v.Level ?? 0) : Naming.Leading(verdict, v.Leaders), StringComparer.Ordinal);
        foreach (var group in groups)
        {
            var names = group.Select(v => verdict.Ballots.First(b => b.Id == v.Subject).Name).ToList();
            var without = names.Count switch
            {
                <= NamedBallots => $"without {Phrase.List(names.Select(name => Phrase.Possessive([name])), "or")} ballot",
                _ => $"without any one of {Phrase.Number(names.Count)} ballots",
            };
            yield return (without, group.Key);
        }
    }

    private static string? Fewest(Verdict verdict)
    {
        if (verdict.Fewest is not { ToPass: { } pass } fewest) return null;
        if (fewest.AtLeast) return $"At least {Phrase.Number(pass)} ballots would have to go before another {Phrase.Wheel(verdict.Record)} leads.";
        var rivals = Phrase.List(fewest.Rivals.Select(id => Naming.Of(verdict, id)), "or");
        return pass == 1
            ? $"The loss of one ballot can put {rivals} ahead."
            : $"At least {Phrase.Number(pass)} ballots would have to go before {rivals} passes {Naming.Of(verdict, verdict.Leaders)}.";
    }
}
