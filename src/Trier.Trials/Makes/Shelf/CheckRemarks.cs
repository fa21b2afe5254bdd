using System.Collections.Immutable;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Trials.Makes.Shelf;

/// <summary>What stands behind a make's record that should be minded: instruments that no written check covers, lots past their date.</summary>
public static class CheckRemarks
{
    /// <summary>Whether a reading was taken with an instrument that no written check covers; any checked instrument of the kind covers it.</summary>
    /// <param name="step">The step.</param>
    /// <param name="target">What was read; only pH and temperature have an instrument.</param>
    /// <param name="shelf">The things on the shelf.</param>
    public static bool IsUnchecked(DayStep step, Target target, ImmutableArray<Thing> shelf)
    {
        ThingKind? kind = target == Target.Ph ? ThingKind.PhMeter : target == Target.Celsius ? ThingKind.Thermometer : null;
        return kind is { } instrument && step.Done is { } done && done[target] is not null && !shelf.Any(thing => thing.Kind == instrument && thing.WasChecked(done.When));
    }

    /// <summary>What should be minded about one step's mark, each in a few words to stand beside it.</summary>
    /// <param name="step">The step.</param>
    /// <param name="shelf">The things on the shelf.</param>
    public static ImmutableArray<string> Beside(DayStep step, ImmutableArray<Thing> shelf)
    {
        var said = ImmutableArray.CreateBuilder<string>();
        if (IsUnchecked(step, Target.Ph, shelf)) said.Add("pH meter not checked within a day");
        if (IsUnchecked(step, Target.Celsius, shelf)) said.Add("thermometer not checked within 90 days");
        if (step.Done is { } done && shelf.FirstOrDefault(thing => thing.Id == done.Used) is { } lot && lot.PastDate(done.When)) said.Add("past its date");
        return said.ToImmutable();
    }

    /// <summary>The remarks in sentences; none where nothing was read or every reading is covered.</summary>
    /// <param name="make">The make.</param>
    /// <param name="shelf">The things on the shelf.</param>
    public static ImmutableArray<string> InWords(Make make, ImmutableArray<Thing> shelf)
    {
        var said = ImmutableArray.CreateBuilder<string>();
        if (Unchecked(Target.Ph) is { Count: > 0 } ph) said.Add($"pH of {Steps(ph)}: no check of a pH meter is written within a day before. Take it as a hint.");
        if (Unchecked(Target.Celsius) is { Count: > 0 } heat) said.Add($"Temperature of {Steps(heat)}: no check of a thermometer is written within 90 days before.");
        foreach (var group in make.AllSteps.Select(step => (Step: step, Lot: shelf.FirstOrDefault(thing => thing.Id == step.Done?.Used))).Where(pair => pair.Lot?.PastDate(pair.Step.Done!.When) == true).GroupBy(pair => pair.Lot!.Id))
            said.Add($"“{group.First().Lot!.Name}”, used at {Steps([.. group.Select(pair => pair.Step.Number)])}, was past its date.");
        return said.ToImmutable();

        List<int> Unchecked(Target target) => [.. make.AllSteps.Where(step => IsUnchecked(step, target, shelf)).Select(step => step.Number).Distinct()];
    }

    private static string Steps(List<int> numbers)
    {
        var words = numbers.ConvertAll(FigureText.Whole);
        return words.Count == 1 ? $"step {words[0]}" : $"steps {string.Join(", ", words.Take(words.Count - 1))} and {words[^1]}";
    }
}
