using System.Collections.Immutable;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;

namespace Trier.Web.Makes.Days;

/// <summary>pH or temperature over time: the aims with their tolerances, what was read at the vat, what a meter wrote.</summary>
/// <param name="Target">What is drawn.</param>
/// <param name="Aims">Time, aim, tolerance.</param>
/// <param name="Read">Readings at the vat, with the step's heading and whether they meet the aim.</param>
/// <param name="Meters">Curves of meters.</param>
public sealed record AimCurve(
    Target Target,
    ImmutableArray<(DateTimeOffset At, double Aim, double Slack)> Aims,
    ImmutableArray<(DateTimeOffset At, double Value, string Step, bool Meets)> Read,
    ImmutableArray<ImmutableArray<MeterPoint>> Meters)
{
    /// <summary>The curve of one way through the vat day, or null where nothing was measured.</summary>
    /// <param name="make">The make.</param>
    /// <param name="lane">The whole vat, or one of its parts.</param>
    /// <param name="target">pH or temperature.</param>
    public static AimCurve? Of(Make make, Lane lane, Target target)
    {
        var aims = lane.Steps.Where(step => step.Step[target] is not null).Select(step => (step.Done?.When ?? lane.DueOf(step), step.Step[target]!.Value, step.Step[target]!.Slack)).OrderBy(aim => aim.Item1).ToImmutableArray();
        var read = lane.Steps.Where(step => step.Done?[target] is not null)
            .Select(step => (step.Done!.When, step.Done[target]!.Value, step.Step.Heading, step.Step[target] is not { } aim || aim.Meets(step.Done[target]!.Value))).OrderBy(point => point.When).ToImmutableArray();
        var meters = make.Curves.Where(curve => curve.Target == target.Key && (curve.Part is null || curve.Part == lane.Part)).Select(curve => curve.Points).ToImmutableArray();
        return read.Length + meters.Length == 0 ? null : new(target, aims, read, meters);
    }
}
