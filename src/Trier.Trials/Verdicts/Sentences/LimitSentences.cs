using System.Collections.Immutable;
using System.Globalization;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>What this tasting cannot know.</summary>
internal static class LimitSentences
{
    public static ImmutableArray<string> All(Verdict verdict)
    {
        var sentences = ImmutableArray.CreateBuilder<string>();
        if (verdict.Record.Head.FromFile)
        {
            sentences.Add("A ballot file holds ballots alone: who compared notes, who knew the key and what else differed between the samples it cannot say.");
        }
        else
        {
            if (Recipes(verdict) is { } recipes) sentences.Add(recipes);
            sentences.AddRange(AliasSentences.All(verdict));
        }

        foreach (var gone in verdict.Record.Withdrawals.OrderBy(w => w.At).ThenBy(w => w.Id, StringComparer.Ordinal))
        {
            var had = gone.HadIt.IsEmpty ? "" : $" {Phrase.List(gone.HadIt)} had already tasted it.";
            var when = gone.WhileTasting ? $" at {gone.At.ToString("HH:mm", CultureInfo.InvariantCulture)}, with guests at the table" : $" at {gone.At.ToString("HH:mm", CultureInfo.InvariantCulture)}";
            sentences.Add($"{gone.Name} was withdrawn{when} ({gone.Reason.TrimEnd('.')}), so nothing is said about it.{had}");
        }

        if (verdict.Unclear > 0) sentences.Add($"On {Phrase.Number(verdict.Unclear)} {Phrase.Verb(verdict.Unclear, "ballot", "ballots")} on paper a place could not be read for certain; it counts as a tie.");
        if (verdict.Record.Notes.Any(n => n.Kind is DayNoteKind.KeyOpenedEarly or DayNoteKind.KeyLearned or DayNoteKind.SpokenAloud))
            sentences.Add("The tasting was not fully blind; from when on stands in the day’s notes.");
        if (verdict.Level.Reason == Findings.NothingToTest.None)
            sentences.Add($"It speaks of these {Phrase.Wheels(verdict.Record)} and of people like those who came, on that day.");
        return sentences.ToImmutable();
    }

    /// <summary>The one limit that belongs on the first screen: one wheel a recipe; null for files.</summary>
    public static string? Recipes(Verdict verdict)
    {
        if (verdict.Record.Head.FromFile || verdict.Wheels.Length < 2) return null;
        var wheels = verdict.Wheels.GroupBy(w => w.Facts.Recipe ?? w.Name, StringComparer.OrdinalIgnoreCase).ToList();
        if (wheels.Count < 2)
        {
            return verdict.Wheels.Skip(1).All(wheel => wheel.Facts.SameMake(verdict.Wheels[0].Facts))
                ? "All wheels are of one make, so this compares what was done with each, and the wheels, not recipes."
                : "All wheels are of one recipe, so this compares days and wheels, not recipes.";
        }

        return wheels.All(g => g.Count() == 1)
            ? "One wheel of each recipe cannot tell whether the recipe or the day did it."
            : $"With so few wheels of each recipe nobody can tell whether the recipe or the day did it{Apart(verdict)}.";
    }

    // What one recipe made twice says of the leaders, where it parts further than they do.
    private static string Apart(Verdict verdict)
    {
        if (verdict.Leaders.Length != 1 || verdict.SameRecipe.MaxBy(same => same.Gap) is not { } same) return "";
        if (YardstickSentences.LeadGap(verdict) is not { } gap || !Phrase.Further(same.Gap, gap)) return "";
        return $": two wheels of {same.Recipe} came out {Phrase.Places(same.Gap)} apart, further than {Naming.Of(verdict, verdict.Wheels[0].Id)} and {Naming.Of(verdict, verdict.Wheels[1].Id)} ({Phrase.Tenths(gap)})";
    }
}
