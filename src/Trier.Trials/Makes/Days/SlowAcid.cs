using System.Collections.Immutable;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Trials.Makes.Days;

/// <summary>
/// A pH that was read too high too long after the start: the acidification failed. The rule is that of the sheet (common practice, no source); it holds wheels back and
/// calls none that keeps it harmless.
/// </summary>
/// <param name="Step">The step it was read at.</param>
/// <param name="After">Time since the make began.</param>
/// <param name="Ph">The pH that was read.</param>
/// <param name="Limit">The pH it must not be above by then.</param>
public sealed record SlowAcid(DayStep Step, TimeSpan After, double Ph, double Limit)
{
    /// <summary>Hours after the start, and the pH that a reading from then on must not be above; the latest first.</summary>
    public static ImmutableArray<(double Hours, double Ph)> Limits { get; } = [(24, 5.5), (8, 5.8)];

    /// <summary>Every reading on a way to the wheels that breaks the rule, in the order of the steps. A later reading does not heal an earlier one.</summary>
    /// <param name="lane">The way, the steps of the whole vat included.</param>
    public static ImmutableArray<SlowAcid> Of(Lane lane) => [.. lane.Steps.Select(step => Of(lane, step)).OfType<SlowAcid>()];

    /// <summary>The sentence with its numbers as words, so that the page of a phone without a host can say it, too.</summary>
    /// <param name="hours">Whole hours since the start.</param>
    /// <param name="ph">The pH.</param>
    /// <param name="limit">The limit.</param>
    public static string Words(string hours, string ph, string limit) =>
        $"{hours} hours after the start the pH is {ph}, above {limit}: hold these wheels back, do not serve them (common practice, no source). Poison formed in slow, warm curd outlives ageing.";

    /// <summary>Said plainly.</summary>
    /// <param name="notation">How numbers are written.</param>
    public string InWords(Notation notation) => Words(Hours, notation.Ph(Ph), notation.Number(Limit));

    /// <summary>In a few words, for a record.</summary>
    /// <param name="notation">How numbers are written.</param>
    public string Short(Notation notation) => $"pH {notation.Ph(Ph)} {Hours} hours after the start, above {notation.Number(Limit)}";

    private string Hours => FigureText.Whole((int)After.TotalHours);

    private static SlowAcid? Of(Lane lane, DayStep step)
    {
        if (step.Done is not { } done || done[Target.Ph] is not { } ph) return null;
        var after = done.When - lane.Begins;
        var broken = Limits.Where(limit => after.TotalHours >= limit.Hours && ph > limit.Ph).ToList();
        return broken.Count > 0 ? new(step, after, ph, broken[0].Ph) : null;
    }
}
