using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Makes.Days;
using Trier.Trials.Makes.Recipes;
using Trier.Web.Hosting;

namespace Trier.Web.Makes.Days;

/// <summary>The form that splits a vat into two: a name and a share each, up to two aims that are not the recipe's, and words.</summary>
internal static class SplitForm
{
    public const int Parts = 2;
    public const int Changes = 2;
    private const string LeftOut = "left-out";

    /// <summary>What can be done otherwise: every aim of every step to come, and going without a step.</summary>
    /// <returns>The option's value, the step's heading and the words of the option.</returns>
    public static IEnumerable<(string Value, string Group, string Words)> Options(Make make, MakerUnits units)
    {
        foreach (var step in make.Lanes[0].Steps.Where(step => step.Done is null))
        {
            var group = $"{step.Number}. {step.Step.Heading}";
            foreach (var aim in step.Step.Aims.Where(aim => aim.Target != Target.FlocMinutes))
                yield return ($"{step.Number} {aim.Target.Key}", group, $"{MarkForm.Label(step.Step, aim.Target, units)}; aim {MarkForm.Shown(aim.Target, aim.Value, units)}");
            if (step.Step.Kind is not (StepKind.Renneting or StepKind.Hoop)) yield return ($"{step.Number} {LeftOut}", group, "left out");
        }
    }

    public static Outcome<ImmutableArray<VatPart>> Read(Posted posted, MakerUnits units)
    {
        var problems = new List<Problem>();
        ImmutableArray<VatPart> parts = [.. Enumerable.Range(1, Parts).Select(number => Part(posted, number, units, problems))];
        return problems.Count > 0 ? Outcome.Fault<ImmutableArray<VatPart>>(problems) : Outcome.Of(parts);
    }

    private static VatPart Part(Posted posted, int number, MakerUnits units, List<Problem> problems) => new(
        posted.Text($"name-{number}"),
        MakerUnits.Read(posted.Text($"share-{number}"), $"share-{number}", "Share", problems) ?? (100.0 / Parts),
        posted.Text($"differs-{number}"),
        [.. Enumerable.Range(1, Changes).Select(row => Change(posted, $"{number}-{row}", units, problems)).OfType<PartChange>()]);

    private static PartChange? Change(Posted posted, string place, MakerUnits units, List<Problem> problems)
    {
        var chosen = posted.Text($"what-{place}").Split(' ');
        var typed = MakerUnits.Read(posted.Text($"value-{place}"), $"value-{place}", "The value", problems);
        if (chosen.Length != 2 || !int.TryParse(chosen[0], NumberStyles.None, CultureInfo.InvariantCulture, out var step)) return null;
        if (chosen[1] == LeftOut) return new(step);
        return Target.Named(chosen[1]) is { } target ? new(step, target.Key, typed is { } value ? Math.Round(units.ToCore(target.Field.Unit, value), 4) : null) : null;
    }
}
