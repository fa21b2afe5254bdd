using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Makes;
using Trier.Trials.Tastings;

namespace Trier.Trials.Plans;

/// <summary>A wheel as the planner sees it: made, or yet to be made.</summary>
/// <param name="Label">Two signs: W1.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Facts">What is known of it, or intended.</param>
/// <param name="Mark">How it is drawn; null for files.</param>
public sealed record PlannedWheel(string Label, string Name, WheelFacts Facts, WheelMark? Mark)
{
    /// <summary>Its recipe; its own name where none is recorded.</summary>
    public string Recipe => Facts.Recipe ?? Name;
}

/// <summary>All that planning looks at: a draft, or a file, in one shape.</summary>
/// <param name="Title">Short title.</param>
/// <param name="Question">The one question.</param>
/// <param name="Rule">The rule that will name the leader.</param>
/// <param name="JuniorsCount">Whether tasters under 12 will count.</param>
/// <param name="Day">Day of the tasting, or null while open.</param>
/// <param name="Tasters">How many are expected, 2 to 200; once the guests were counted, how many are here.</param>
/// <param name="Preference">The difference worth finding, above 1.</param>
/// <param name="AgeDays">How old the wheels should be on the day, or null while open.</param>
/// <param name="Repeat">Label of the wheel served twice, or null.</param>
/// <param name="Wheels">The wheels, at most 8.</param>
public sealed record TrialOutline(
    string Title,
    string Question,
    CountingRule Rule,
    bool JuniorsCount,
    DateOnly? Day,
    int Tasters,
    double Preference,
    int? AgeDays,
    string? Repeat,
    ImmutableArray<PlannedWheel> Wheels)
{
    /// <summary>Whether all data are an invented example.</summary>
    public bool Invented { get; init; }

    /// <summary>Reads a trial's outline; withdrawn wheels are left out.</summary>
    /// <param name="book">What is known of the trial.</param>
    public static TrialOutline Of(DayBook book)
    {
        var aims = book.Plan.Aims ?? PlanAims.None;
        // Once the guests were counted, who is here says more than how many were expected.
        var listed = book.Present.Count(taster => !taster.KnowsTheKey && (book.Plan.JuniorsCount || !taster.Junior) && (book.IsExpected(taster) || book.Plate(taster.Id) is not null));
        var expected = book.Here is null ? aims.Tasters : null;
        var repeat = book.Repeat is { } wheel ? book.Entry(wheel)?.Label : null;
        return new(
            book.Plan.Title,
            book.Plan.Question,
            book.Plan.Rule,
            book.Plan.JuniorsCount,
            book.Plan.Day ?? (book.OpenedAt is { } opened ? DateOnly.FromDateTime(opened.DateTime) : null),
            Math.Clamp(expected ?? (listed >= 2 ? listed : PlanAims.UsualTasters), 2, 200),
            aims.Preference ?? PlanAims.UsualPreference,
            aims.AgeDays,
            repeat,
            [.. book.Standing.Select(entry => new PlannedWheel(entry.Label, entry.Name, entry.Facts, entry.Mark))])
        {
            Invented = book.Plan.Invented,
        };
    }

    /// <summary>How many wheels there are of each recipe, in the order the recipes first appear.</summary>
    public ImmutableArray<int> WheelsPerRecipe => [.. Wheels.GroupBy(wheel => wheel.Recipe, StringComparer.OrdinalIgnoreCase).Select(group => group.Count())];

    /// <summary>The recipes, in the order they first appear.</summary>
    public ImmutableArray<string> Recipes => [.. Wheels.Select(wheel => wheel.Recipe).Distinct(StringComparer.OrdinalIgnoreCase)];
}
