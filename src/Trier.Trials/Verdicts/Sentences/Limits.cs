using System.Collections.Immutable;
using Trier.Trials.Plans;
using Trier.Trials.Plans.Differences;
using Trier.Trials.Plans.Factors;

namespace Trier.Trials.Verdicts.Sentences;

/// <summary>One thing that parts two wheels beside their recipe.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Kind">What kind of thing.</param>
/// <param name="One">Its value at the one, in words.</param>
/// <param name="Other">Its value at the other.</param>
/// <param name="Tied">Whether no other wheel ties the two, so that it cannot be told from the recipe between them.</param>
internal sealed record Difference(string Name, FactorKind Kind, string One, string Other, bool Tied);

/// <summary>What else differed between the wheels of a verdict, as far as it is recorded.</summary>
internal static class Limits
{
    // A wheel half as old again as every other, and by two weeks or more, is told by itself.
    private const double FarOlderRatio = 1.5;

    /// <summary>The table of what differs; null where nothing is known of the wheels.</summary>
    public static DifferenceTable? Table(Verdict verdict) =>
        verdict.Record.Head.FromFile || verdict.Wheels.IsEmpty
            ? null
            : DifferenceTable.Of([.. verdict.Wheels.OrderBy(wheel => wheel.Id, StringComparer.Ordinal).Select(wheel => new PlannedWheel(wheel.Id, wheel.Name, wheel.Facts, wheel.Mark))], verdict.Record.Head.Day);

    /// <summary>What parts two wheels beside their recipe, ranked for a conclusion about them: first what no other wheel takes apart from the recipe, then by what changes a cheese most.</summary>
    public static ImmutableArray<Difference> Between(Verdict verdict, SampleRecord one, SampleRecord other)
    {
        if (Table(verdict) is not { } table) return [];
        var (a, b) = (At(table, one), At(table, other));
        var found = new List<Difference>();
        for (var column = 0; column < table.Columns.Length; column++)
        {
            var factor = table.Columns[column];
            if (factor.Kind == FactorKind.Recipe || !factor.Differ(a, b)) continue;
            var told = table.Told.FirstOrDefault(told => told.Column == column);
            var tied = told is not null && (told.Nearly || !told.Groups.Any(group => group.Contains(a) && group.Contains(b)));
            found.Add(new(factor.Name, factor.Kind, factor.Values[a]!, factor.Values[b]!, tied));
        }

        return [.. found.OrderByDescending(difference => difference.Tied).ThenBy(difference => difference.Kind)];
    }

    /// <summary>Wheels far older than every other, with their age and that of the next oldest, in days.</summary>
    public static ImmutableArray<SampleRecord> FarOlder(Verdict verdict) => [.. Aged(verdict).Select(aged => aged.Wheel)];

    /// <summary>The same with their age and that of the next oldest, in days.</summary>
    public static ImmutableArray<(SampleRecord Wheel, int Days, int Next)> Aged(Verdict verdict)
    {
        if (verdict.Record.Head.Day is not { } day || verdict.Wheels.Length < 2) return [];
        var ages = verdict.Wheels.Where(wheel => wheel.Facts.MadeOn is not null).Select(wheel => (Wheel: wheel, Days: day.DayNumber - wheel.Facts.MadeOn!.Value.DayNumber)).OrderByDescending(aged => aged.Days).ToList();
        if (ages.Count < 2 || ages[^1].Days < 1) return [];
        var (oldest, next) = (ages[0], ages[1]);
        return oldest.Days >= FarOlderRatio * next.Days && oldest.Days - next.Days >= WheelFactors.AgeBandDays ? [(oldest.Wheel, oldest.Days, next.Days)] : [];
    }

    public static int At(DifferenceTable table, SampleRecord wheel) => table.Wheels.Select((planned, i) => (planned, i)).First(pair => pair.planned.Label == wheel.Id).i;
}
