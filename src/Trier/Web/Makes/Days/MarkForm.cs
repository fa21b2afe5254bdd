using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;
using Trier.Trials.Makes.Sheets;
using Trier.Web.Hosting;

namespace Trier.Web.Makes.Days;

/// <summary>What a touch writes down: readings in the maker's units, a note.</summary>
internal static class MarkForm
{
    /// <summary>What the fields are called.</summary>
    public static IReadOnlyDictionary<string, string> Labels { get; } = Target.All.ToDictionary(target => target.Key, target => target.Field.Name, StringComparer.Ordinal);

    /// <summary>What can be read at a step: all of its aims but its time, which is stamped, and flocculation, which is a moment.</summary>
    public static IEnumerable<Target> Asked(Step step) => StepShape.Of(step.Kind).Select(wanted => wanted.Target)
        .Where(target => target != Target.Minutes && target != Target.RestMinutes && target != Target.FlocMinutes && target != Target.Multiplier && target != Target.DiameterCentimetres)
        .Where(target => step[target] is not null || target == Target.Ph || target == Target.Celsius);

    public static StepMark Read(Posted posted, DayStep step, DateTimeOffset when, MakerUnits units, List<Problem> problems)
    {
        var readings = ImmutableArray.CreateBuilder<StepReading>();
        foreach (var target in Asked(step.Step))
        {
            if (MakerUnits.Read(posted.Text(target.Key), target.Key, target.Field.Name, problems) is not { } typed) continue;
            readings.Add(new(target.Key, Math.Round(units.ToCore(target.Field.Unit, typed), 4)));
        }

        return new StepMark(when, readings.ToImmutable(), posted.Text("note"), Used(posted));
    }

    /// <summary>The field beside a reading that says it was asked about already: it holds what was typed then.</summary>
    public static string Sure(string key) => $"sure-{key}";

    /// <summary>Questions about readings that can be but hardly are, unless they were asked and the same was typed again.</summary>
    public static IEnumerable<Problem> Doubts(Posted posted, DayStep step, StepMark mark) =>
        from reading in mark.Readings
        let target = Target.Named(reading.Key)
        where target is not null && target.Field.ProblemWith(reading.Value) is null && posted.Text(Sure(reading.Key)) != posted.Text(reading.Key)
        let doubt = Doubt.Of(step.Step, target).FirstOrDefault(doubt => doubt.Holds(reading.Value))
        where doubt is not null
        select new Problem(reading.Key, doubt.Question.Replace(Doubt.Value, target == Target.Ph ? reading.Value.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture) : $"{Notation.Plain.Number(reading.Value)} {target.Field.Unit}", StringComparison.Ordinal));

    /// <summary>The lot or brine that was named, or null.</summary>
    public static ThingId? Used(Posted posted) => posted.Id("used") is { } id ? new ThingId(id) : null;

    public static string Label(Step step, Target target, MakerUnits units)
    {
        var unit = target == Target.Dose ? Addition.Words(step.Addition!.Per) : units.UnitOf(target.Field.Unit);
        return unit.Length == 0 ? target.Field.Name : $"{target.Field.Name}, {unit}";
    }

    public static string Shown(Target target, double value, MakerUnits units) => units.Number(units.FromCore(target.Field.Unit, value));
}
