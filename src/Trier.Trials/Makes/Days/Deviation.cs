using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;

namespace Trier.Trials.Makes.Days;

/// <summary>A step that went otherwise than planned, by more than its tolerance.</summary>
/// <param name="Step">The step.</param>
/// <param name="Target">What was off.</param>
/// <param name="Planned">The aim, in the target's unit; 0 for the moment of a cut.</param>
/// <param name="Actual">What was done.</param>
/// <param name="MayLeadTo">What it may lead to, in one plain sentence; empty where nothing is known.</param>
/// <param name="CutMovesTo">Where the moment of the cut moves with it; else null.</param>
public sealed record Deviation(DayStep Step, Target Target, double Planned, double Actual, string MayLeadTo, DateTimeOffset? CutMovesTo = null)
{
    /// <summary>A cut is due at a moment of its own; some minutes early or late do no harm (common practice, no source).</summary>
    public static Aim CutMoment { get; } = new(Target.Minutes, 0, 3);

    /// <summary>In a few words, for a record: "18 min longer than planned".</summary>
    /// <param name="notation">How numbers are written.</param>
    public string Short(Notation notation)
    {
        var (gap, more) = (Math.Abs(Actual - Planned), Actual > Planned);
        if (Step.Step.Kind == StepKind.Cut && Target == Target.Minutes) return $"{notation.Minutes(gap)} {(more ? "later" : "earlier")} than planned";
        if (Target == Target.Minutes || Target == Target.RestMinutes) return $"{notation.Minutes(gap)} {(more ? "longer" : "shorter")} than planned";
        if (Target == Target.FlocMinutes) return $"flocculation after {notation.Minutes(Math.Round(Actual, 1))}, {notation.Minutes(Math.Round(gap, 1))} {(more ? "later" : "earlier")} than planned";
        var (was, off, aim) = Target == Target.Dose
            ? (Dose(Actual), Dose(gap), Dose(Planned))
            : (AimText.Value(Target, Actual, notation), notation.Gap(Target, gap), Target == Target.Ph ? notation.Ph(Planned) : AimText.Value(Target, Planned, notation));
        return $"{was}, {off} {(more ? "above" : "below")} the aim of {aim}";

        string Dose(double value) => $"{notation.Number(value)} {Addition.Words(Step.Step.Addition!.Per)}";
    }

    /// <summary>The deviation said at once and plainly.</summary>
    /// <param name="notation">How numbers are written.</param>
    public string InWords(Notation notation) => string.Join(" ", new[]
    {
        $"{Step.Step.Heading}: {Short(notation)}.",
        notation.Say(MayLeadTo),
        CutMovesTo is { } cut ? $"The cut moves with it, to {cut.ToString("HH:mm", CultureInfo.InvariantCulture)}." : "",
    }.Where(part => part.Length > 0));

    /// <summary>Everything that went otherwise in one step; empty while it is not done.</summary>
    /// <param name="lane">The way the step belongs to.</param>
    /// <param name="step">One of its steps.</param>
    public static ImmutableArray<Deviation> Of(Lane lane, DayStep step)
    {
        if (step.Done is not { } done) return [];
        var found = ImmutableArray.CreateBuilder<Deviation>();
        var took = (done.When - lane.StartOf(step.Number)).TotalMinutes;
        foreach (var aim in Watched(step.Step))
        {
            var actual = aim.Target == Target.Minutes ? took : aim.Target == Target.FlocMinutes ? step.Flocculation?.TotalMinutes : done[aim.Target];
            if (actual is not { } value || aim.Meets(value)) continue;
            found.Add(new(step, aim.Target, aim.Value, value, LeadsTo(step.Step, aim, value), CutAt(step, aim.Target, value)));
        }

        return found.ToImmutable();
    }

    /// <summary>Everything that went otherwise in a make so far, by step and part.</summary>
    /// <param name="make">The make.</param>
    public static ImmutableArray<Deviation> Of(Make make) => [.. make.AllSteps.SelectMany(step => Of(make.LaneOf(step.Part), step))];

    /// <summary>Everything that went otherwise on the way to the wheels of one part.</summary>
    /// <param name="lane">The part's way, the steps of the whole vat included.</param>
    public static ImmutableArray<Deviation> Of(Lane lane) => [.. lane.Steps.SelectMany(step => Of(lane, step))];

    /// <summary>The aims a step is held to: for a cut its moment stands in for its length.</summary>
    /// <param name="step">The step.</param>
    public static ImmutableArray<Aim> Watched(Step step) => step.Kind == StepKind.Cut ? [.. step.Aims.Where(aim => aim.Target != Target.Minutes), CutMoment] : step.Aims;

    /// <summary>What an aim missed may lead to; a hint from common practice, or empty.</summary>
    /// <param name="step">The step.</param>
    /// <param name="target">What was off.</param>
    /// <param name="above">Whether it was above the aim.</param>
    public static string LeadsTo(Step step, Target target, bool above) =>
        step.Kind == StepKind.Cut && target == Target.Minutes ? Consequences.OfCut(above) : Consequences.Of(step.Kind, target, above);

    /// <summary>From which value on the hint is another one, and that hint; null where one hint holds throughout.</summary>
    /// <param name="step">The step.</param>
    /// <param name="aim">The aim.</param>
    /// <param name="above">Whether the value is above the aim.</param>
    public static (double From, string Sentence)? FarOff(Step step, Aim aim, bool above) => Consequences.Far(step, aim, above);

    private static string LeadsTo(Step step, Aim aim, double value) =>
        FarOff(step, aim, value > aim.Value) is { } far && (value > aim.Value ? value >= far.From : value < far.From) ? far.Sentence : LeadsTo(step, aim.Target, value > aim.Value);

    private static DateTimeOffset? CutAt(DayStep step, Target target, double minutes) =>
        target == Target.FlocMinutes && step is { Started: { } rennet } && step.Step[Target.Multiplier] is { } times ? rennet + TimeSpan.FromMinutes(minutes * times.Value) : null;
}
