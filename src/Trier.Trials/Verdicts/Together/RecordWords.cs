using System.Collections.Immutable;
using Trier.Trials.Plans;
using Trier.Trials.Plans.Factors;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Verdicts.Together;

/// <summary>A recipe's record in words.</summary>
public static class RecordWords
{
    /// <summary>How many wheels, how many came to the table, how many people liked: counts, no test.</summary>
    /// <param name="record">The record.</param>
    public static ImmutableArray<string> All(RecipeRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        var sentences = ImmutableArray.CreateBuilder<string>();
        var all = record.Wheels.Length;
        var gone = all - record.Tasted;
        sentences.Add($"{Phrase.Number(all)} {(all == 1 ? "wheel" : "wheels")} of {record.Recipe} {Phrase.Verb(all, "was", "were")} entered{(gone == 0 ? "" : $", {Phrase.Number(gone)} withdrawn")}; {(record.Tasted == 0 ? "none came to the table" : $"{Phrase.Number(record.GoodOnes)} of the {Phrase.Number(record.Tasted)} tasted came out in the upper half of a tasting")}.");
        sentences.Add(record.Makes == 1
            ? $"That is one make so far: it says what {(all == 1 ? "this wheel" : "these wheels")} did, and not yet what the recipe does."
            : $"Withdrawn ones counted, {Phrase.Number(record.GoodOnes)} of {Phrase.Number(all)} turned out well by that measure. A count, no test: the tastings had other wheels beside them.");
        return sentences.ToImmutable();
    }

    /// <summary>What the good wheels shared and the others did not: hints to try, no findings. Empty with fewer than two good ones or no other.</summary>
    /// <param name="record">The record.</param>
    public static ImmutableArray<string> Hints(RecipeRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        var good = record.Wheels.Where(wheel => wheel.Good).ToList();
        var others = record.Wheels.Where(wheel => !wheel.Good).ToList();
        if (good.Count < 2 || others.Count == 0) return [];
        ImmutableArray<PlannedWheel> wheels = [.. good.Concat(others).Select(wheel => new PlannedWheel("", wheel.Name, wheel.Facts, wheel.Mark))];
        var hints = ImmutableArray.CreateBuilder<string>();
        foreach (var factor in WheelFactors.Of(wheels, null).Where(factor => factor.Varies && factor.Kind is not (FactorKind.Recipe or FactorKind.Age)))
        {
            var level = factor.Levels[0];
            if (level is null || factor.Levels.Take(good.Count).Any(other => other != level)) continue;
            var same = factor.Levels.Skip(good.Count).Count(other => other == level);
            if (same == others.Count) continue;
            var value = factor.Numbers.IsEmpty ? $" ({factor.Values[0]})" : "";
            hints.Add($"The {Phrase.Number(good.Count)} good ones had the same {factor.Name}{value}; of the {Phrase.Number(others.Count)} {(others.Count == 1 ? "other" : "others")}, {Phrase.Number(same)} had it.");
        }

        return hints.ToImmutable();
    }
}
