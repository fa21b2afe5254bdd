using System.Collections.Immutable;
using Trier.Statistics.Power;
using Trier.Trials.Verdicts.Sentences;

namespace Trier.Trials.Plans.Panels;

/// <summary>What panels could show, in words.</summary>
public static class PanelWords
{
    /// <summary>What is known without simulation: the smallest panel that can show anything.</summary>
    /// <param name="outline">2 wheels or more.</param>
    public static string Smallest(TrialOutline outline)
    {
        var smallest = PanelPlanning.SmallestPanel(outline.Wheels.Length);
        var short_ = outline.Tasters < smallest ? $" {Phrase.Number(outline.Tasters)} are too few for that." : "";
        var first = PanelPlanning.SmallestPanel(2);
        var favourite = smallest > first ? $" Only a wheel that everybody puts first can be shown with {Phrase.Number(first)}." : "";
        return $"With {Phrase.Number(outline.Wheels.Length)} wheels no two can be told apart by fewer than {Phrase.Number(smallest)} tasters, even if all agree.{short_}{favourite}";
    }

    /// <summary>What the expected panel can do, in people and tenths.</summary>
    /// <param name="outline">The outline.</param>
    /// <param name="findings">What was worked out for it.</param>
    public static ImmutableArray<string> All(TrialOutline outline, PanelFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        var points = findings.Options[0].Points;
        var here = points.First(point => point.Tasters == outline.Tasters);
        var sentences = ImmutableArray.CreateBuilder<string>();
        sentences.Add($"If one {Favourite(outline)} is liked {Ratio(outline.Preference)} over each other, {Phrase.Number(outline.Tasters)} tasters have it alone in the lead {Times(here.Right.Share)}; that it is ahead can be shown {Times(here.Shown.Share)}.");
        var enough = points.FirstOrDefault(point => point.Shown.Share >= 0.5);
        sentences.Add(enough is null
            ? $"Not even {Phrase.Number(points[^1].Tasters)} tasters would show it more often than not."
            : $"Of the numbers tried, {Phrase.Number(enough.Tasters)} tasters are the fewest that would show it more often than not.");
        if (findings.SmallestPreference is { } ratio)
            sentences.Add($"{Phrase.Number(outline.Tasters)} tasters would show a favourite 8 times in 10 only where it is liked {Ratio(ratio)} over each other; weaker preferences mostly stay open.");
        sentences.Add("A dozen friends are a good guide for the next vat and a poor proof: both answers are worth having.");
        if (PanelPlanning.StandsIn(outline.Rule)) sentences.Add("The rule is average liking, which places say nothing about: these figures are for average place.");
        return sentences.ToImmutable();
    }

    /// <summary>How the figures were found.</summary>
    /// <param name="findings">What was worked out.</param>
    public static string Method(PanelFindings findings) =>
        $"Each figure comes from {Phrase.Number(findings.Panels)} simulated panels, every one put through the verdict’s own rule; chance in the drawing moves a figure by {Phrase.Tenths(100 * findings.LargestError)} in 100 at most (one standard error). Tasters are taken to be of one taste, each a voice of their own; with camps, or where people compare notes, it takes more.";

    /// <summary>"2 to 1".</summary>
    /// <param name="preference">A ratio.</param>
    public static string Ratio(double preference) => $"{Phrase.Tenths(preference)} to 1";

    /// <summary>A share of 100 with its error: "78.2 ± 0.9".</summary>
    /// <param name="found">A share.</param>
    public static string Share(Simulated found)
    {
        ArgumentNullException.ThrowIfNull(found);
        // All panels or none: that the error is 0 would not be true.
        if (found.Error == 0) return found.Share > 0.5 ? "over 99" : "under 1";
        return $"{Phrase.Tenths(100 * found.Share)} ± {Phrase.Tenths(100 * found.Error)}";
    }

    private static string Favourite(TrialOutline outline) =>
        outline.WheelsPerRecipe.Length == 1 || outline.WheelsPerRecipe.Min() == 1 ? "wheel" : "recipe, made alike each time,";

    private static string Times(double share) => Math.Round(10 * share, MidpointRounding.AwayFromZero) switch
    {
        >= 10 => "nearly always",
        <= 0 => "hardly ever",
        var tenths => $"about {Phrase.Number((long)tenths)} times in 10",
    };
}
