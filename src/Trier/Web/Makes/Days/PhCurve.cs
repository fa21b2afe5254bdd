using System.Collections.Immutable;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;

namespace Trier.Web.Makes.Days;

/// <summary>pH over time: the aims with their tolerances, what was read at the vat, what a meter wrote.</summary>
/// <param name="Aims">Time, aim, tolerance.</param>
/// <param name="Read">Readings at the vat, with the step's heading and whether they meet the aim.</param>
/// <param name="Meters">Curves of meters.</param>
public sealed record PhCurve(ImmutableArray<(DateTimeOffset At, double Aim, double Slack)> Aims, ImmutableArray<(DateTimeOffset At, double Value, string Step, bool Meets)> Read, ImmutableArray<ImmutableArray<MeterPoint>> Meters)
{
    /// <summary>The curve of a make, or null where there is nothing to draw.</summary>
    public static PhCurve? Of(Make make)
    {
        var aims = make.Steps.Where(step => step.Step[Target.Ph] is not null).Select(step => (step.Done?.When ?? make.DueOf(step.Number), step.Step[Target.Ph]!.Value, step.Step[Target.Ph]!.Slack)).ToImmutableArray();
        var read = make.Steps.Where(step => step.Done?[Target.Ph] is not null)
            .Select(step => (step.Done!.When, step.Done[Target.Ph]!.Value, step.Step.Heading, step.Step[Target.Ph] is not { } aim || aim.Meets(step.Done[Target.Ph]!.Value))).ToImmutableArray();
        var meters = make.Curves.Where(curve => curve.Target == Target.Ph.Key).Select(curve => curve.Points).ToImmutableArray();
        return read.Length + meters.Length == 0 ? null : new(aims, read, meters);
    }
}
