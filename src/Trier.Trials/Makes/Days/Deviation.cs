using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Makes.Days;

/// <summary>A step that went otherwise than planned, by more than its tolerance.</summary>
/// <param name="Step">The step.</param>
/// <param name="Target">What was off.</param>
/// <param name="Planned">The aim, in the target's unit.</param>
/// <param name="Actual">What was done.</param>
/// <param name="Short">In a few words, for a record: "18 min longer than planned".</param>
/// <param name="MayLeadTo">What it may lead to, in one plain sentence; empty where nothing is known.</param>
/// <param name="WhatNow">What to do about it now, or empty.</param>
public sealed record Deviation(DayStep Step, Target Target, double Planned, double Actual, string Short, string MayLeadTo, string WhatNow = "")
{
    /// <summary>The deviation said at once and plainly.</summary>
    public string InWords() => string.Join(" ", new[] { $"{Step.Step.Heading}: {Short}.", MayLeadTo, WhatNow }.Where(part => part.Length > 0));

    /// <summary>Everything that went otherwise in one step; empty while it is not done.</summary>
    /// <param name="make">The make.</param>
    /// <param name="step">One of its steps.</param>
    public static ImmutableArray<Deviation> Of(Make make, DayStep step)
    {
        if (step.Done is not { } done) return [];
        var found = ImmutableArray.CreateBuilder<Deviation>();
        foreach (var aim in step.Step.Aims)
        {
            var actual = aim.Target == Target.Minutes && step.Step.Kind != StepKind.Cut ? (done.When - make.StartOf(step.Number)).TotalMinutes
                : aim.Target == Target.FlocMinutes ? Make.Flocculation(step)?.TotalMinutes
                : done[aim.Target];
            if (actual is not { } value || aim.Meets(value)) continue;
            found.Add(new(step, aim.Target, aim.Value, value, Told(aim, value), Consequences.Of(step.Step.Kind, aim.Target, value > aim.Value), WhatNowFor(step, aim, value)));
        }

        if (step.Step.Kind == StepKind.Cut && LateCut(make, step, done) is { } cut) found.Add(cut);
        return found.ToImmutable();
    }

    /// <summary>Everything that went otherwise in a make so far.</summary>
    /// <param name="make">The make.</param>
    public static ImmutableArray<Deviation> Of(Make make) => [.. make.Steps.SelectMany(step => Of(make, step))];

    private static Deviation? LateCut(Make make, DayStep step, StepMark done)
    {
        var aim = new Aim(Target.Minutes, 0, 3);
        var late = (done.When - make.StartOf(step.Number)).TotalMinutes;
        if (aim.Meets(late)) return null;
        var words = $"{Write.Duration(TimeSpan.FromMinutes(Math.Abs(late)))} {(late > 0 ? "later" : "earlier")} than planned";
        return new(step, Target.Minutes, 0, late, words, Consequences.OfCut(late > 0));
    }

    private static string Told(Aim aim, double value)
    {
        var gap = Math.Abs(value - aim.Value);
        var more = value > aim.Value;
        if (aim.Target == Target.Minutes || aim.Target == Target.RestMinutes) return $"{Write.Duration(TimeSpan.FromMinutes(gap))} {(more ? "longer" : "shorter")} than planned";
        if (aim.Target == Target.FlocMinutes) return $"flocculation after {Write.Number(Math.Round(value, 1))} min, {Write.Number(Math.Round(gap, 1))} min {(more ? "later" : "earlier")} than planned";
        if (aim.Target == Target.Ph) return string.Create(CultureInfo.InvariantCulture, $"pH {value:0.00}, {gap:0.00} {(more ? "above" : "below")} the aim of {aim.Value:0.00}");
        return $"{Write.Quantity(value, aim.Target)}, {Write.Quantity(gap, aim.Target)} {(more ? "above" : "below")} the aim of {Write.Quantity(aim.Value, aim.Target)}";
    }

    private static string WhatNowFor(DayStep step, Aim aim, double value) =>
        aim.Target == Target.FlocMinutes && step is { Started: { } rennet } && step.Step[Target.Multiplier] is { } times
            ? $"The cut moves with it, to {(rennet + TimeSpan.FromMinutes(value * times.Value)).ToString("HH:mm", CultureInfo.InvariantCulture)}."
            : "";
}
