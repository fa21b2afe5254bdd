using System.Collections.Immutable;
using Trier.Publishing.Writing;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Documents;

/// <summary>The two answers that are never mixed: the best bet for the next vat, and what is shown; and what is not.</summary>
internal static class TwoAnswers
{
    public static ImmutableArray<(string Term, string Text)> Of(Verdict verdict)
    {
        var answers = ImmutableArray.CreateBuilder<(string, string)>();
        answers.Add(("Best bet for the next vat", Numbers.Sentence(verdict.Words.Next[0])));
        answers.Add(("Shown", Numbers.Sentence(Shown(verdict))));
        answers.Add(("Not shown", Numbers.Sentence(NotShown(verdict))));
        return answers.ToImmutable();
    }

    private static string Shown(Verdict verdict)
    {
        var shown = new List<string>();
        if (verdict.Level.Level is 5) shown.Add($"{Names(verdict, verdict.Leaders)} was placed above {Names(verdict, verdict.Level.ShownOver)}.");
        if (verdict.Level.Level is 6) shown.Add($"{Names(verdict, verdict.Leaders)} was placed above every other.");
        if (verdict.Level.Level is 4) shown.Add("Our tasters did not treat these alike; which is best is not settled.");
        if (verdict.Deep?.Camps is { Parted: true } camps)
        {
            var over = camps.Wheels.Where(wheel => wheel.Shown).Select(wheel => wheel.Id).ToImmutableArray();
            shown.Add($"People who like milder and people who like stronger cheese parted{(over.IsEmpty ? "" : $" over {Names(verdict, over)}")}.");
        }

        return shown.Count == 0 ? "Nothing beyond the ballots themselves." : string.Join(" ", shown);
    }

    private static string NotShown(Verdict verdict)
    {
        if (verdict.Level.Reason != NothingToTest.None) return "Anything: too little can be compared.";
        var rest = verdict.Level.Level switch
        {
            6 => "Any order among the others that no pair below shows.",
            5 => $"{Names(verdict, verdict.Leaders)} against {Names(verdict, verdict.Level.Open)}, and any order among the others that no pair below shows.",
            _ => $"Any order among {Names(verdict, [.. verdict.Wheels.Select(wheel => wheel.Id)])}{(verdict.Pairs.Any(pair => pair.Shown) ? ", but for the pairs shown below" : "")}.",
        };
        var gone = verdict.Record.Withdrawals.IsEmpty ? "" : $" Anything about {string.Join(" and ", verdict.Record.Withdrawals.Select(one => one.Name))}, withdrawn.";
        return rest + gone;
    }

    private static string Names(Verdict verdict, ImmutableArray<string> ids)
    {
        var names = ids.Select(id => verdict.Sample(id).Name).ToList();
        return names.Count < 2 ? string.Concat(names) : $"{string.Join(", ", names.Take(names.Count - 1))} and {names[^1]}";
    }
}
