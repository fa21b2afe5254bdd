using System.Collections.Immutable;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Makes.Shelf;

/// <summary>Which readings of a make were taken with an instrument that no written check covers.</summary>
public static class CheckRemarks
{
    /// <summary>The steps whose reading of a target no check covers.</summary>
    /// <param name="make">The make.</param>
    /// <param name="target">pH or temperature.</param>
    /// <param name="shelf">The things on the shelf; any checked instrument of the kind covers a reading.</param>
    public static ImmutableArray<int> Unchecked(Make make, Target target, ImmutableArray<Thing> shelf)
    {
        var kind = target == Target.Ph ? ThingKind.PhMeter : ThingKind.Thermometer;
        var instruments = shelf.Where(thing => thing.Kind == kind).ToList();
        return [.. make.Steps.Where(step => step.Done?[target] is not null && !instruments.Any(thing => thing.WasChecked(step.Done.When))).Select(step => step.Number)];
    }

    /// <summary>The remarks in sentences; none where nothing was read or every reading is covered.</summary>
    /// <param name="make">The make.</param>
    /// <param name="shelf">The things on the shelf.</param>
    public static ImmutableArray<string> InWords(Make make, ImmutableArray<Thing> shelf)
    {
        var said = ImmutableArray.CreateBuilder<string>();
        if (Unchecked(make, Target.Ph, shelf) is { Length: > 0 } ph) said.Add($"pH of {Steps(ph)}: no check of a pH meter is written within a day before. Take it as a hint.");
        if (Unchecked(make, Target.Celsius, shelf) is { Length: > 0 } heat) said.Add($"Temperature of {Steps(heat)}: no check of a thermometer is written within 90 days before.");
        return said.ToImmutable();
    }

    private static string Steps(ImmutableArray<int> numbers)
    {
        var words = numbers.Select(number => number.ToString(System.Globalization.CultureInfo.InvariantCulture)).ToList();
        return words.Count == 1 ? $"step {words[0]}" : $"steps {string.Join(", ", words.Take(words.Count - 1))} and {words[^1]}";
    }
}
