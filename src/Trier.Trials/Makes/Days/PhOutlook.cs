using System.Collections.Immutable;
using Trier.Dairy.Acidity;
using Trier.Dairy.Quantities;
using Trier.Trials.Makes.Recipes;

namespace Trier.Trials.Makes.Days;

/// <summary>What the readings of a vat day say of the next pH it aims at.</summary>
/// <param name="Step">The first step not done that aims at a pH.</param>
/// <param name="Aim">The pH it aims at.</param>
/// <param name="Readings">The readings it rests on, in order of time; at least one.</param>
/// <param name="Forecast">When the aim is met, counted from the first reading; or why nothing is foretold.</param>
public sealed record PhOutlook(DayStep Step, Aim Aim, ImmutableArray<MeterPoint> Readings, Trier.Dairy.Workings.Outcome<PhForecast> Forecast)
{
    /// <summary>Readings closer together than this count as one: a fall within it is smaller than what a meter can tell.</summary>
    public static readonly TimeSpan Apart = TimeSpan.FromMinutes(10);

    /// <summary>The last reading.</summary>
    public MeterPoint Last => Readings[^1];

    /// <summary>Whether the last reading is as low as the aim already.</summary>
    public bool Met => Last.Value <= Aim.Value;

    /// <summary>The moment a time of the forecast stands for.</summary>
    /// <param name="after">Time after the first reading.</param>
    public DateTimeOffset At(TimeSpan after) => Readings[0].When + after;

    /// <summary>The outlook of one way through the vat day; null where no step to come aims at a pH or nothing was read.</summary>
    /// <remarks>
    /// Two meters are seldom set alike, so readings typed at the steps and each meter's curve are never mixed: of those with at least three readings the one that
    /// reaches furthest is taken, else the one with more.
    /// </remarks>
    /// <param name="make">The make.</param>
    /// <param name="lane">The whole vat, or one of its parts.</param>
    public static PhOutlook? Of(Make make, Lane lane)
    {
        if (lane.Steps.FirstOrDefault(step => step.Done is null && step.Step[Target.Ph] is not null) is not { } next) return null;
        var typed = lane.Steps.Where(step => step.Done?[Target.Ph] is not null).Select(step => new MeterPoint(step.Done!.When, step.Done[Target.Ph]!.Value));
        var rows = make.Curves.Where(curve => curve.Target == Target.Ph.Key && (curve.Part is null || curve.Part == lane.Part)).Select(curve => curve.Points.AsEnumerable())
            .Prepend(typed).Select(Spaced).Where(row => row.Length > 0).ToList();
        if (rows.Count == 0) return null;
        var readings = rows.OrderByDescending(row => Math.Min(row.Length, 3)).ThenByDescending(row => row[^1].When).First();
        var aim = next.Step[Target.Ph]!;
        return new(next, aim, readings, PhForecasts.When([.. readings.Select(point => new PhReading(point.When - readings[0].When, Ph.FromValue(point.Value)))], Ph.FromValue(aim.Value)));
    }

    // Counted back from the last one, which is worth most.
    private static ImmutableArray<MeterPoint> Spaced(IEnumerable<MeterPoint> points)
    {
        var kept = new List<MeterPoint>();
        foreach (var point in points.OrderByDescending(point => point.When))
        {
            if (kept.Count == 0 || kept[^1].When - point.When >= Apart) kept.Add(point);
        }

        return [.. Enumerable.Reverse(kept)];
    }
}
