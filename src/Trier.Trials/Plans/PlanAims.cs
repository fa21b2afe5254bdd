using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Plans;

/// <summary>What the planner of a trial was told, and why the trial is held.</summary>
/// <param name="AgeDays">How old the wheels should be on the day, in days; null while open.</param>
/// <param name="Tasters">How many tasters are expected; null while open.</param>
/// <param name="Preference">The difference worth finding: how many people prefer the favourite to another wheel for each that does not, above 1; null for the usual 2.</param>
/// <param name="Follows">The trial whose open questions this one should settle; null for a trial of its own.</param>
/// <param name="Reasons">Why it is held so, one sentence each.</param>
public sealed record PlanAims(int? AgeDays, int? Tasters, double? Preference, TrialId? Follows, ImmutableArray<string> Reasons)
{
    /// <summary>The difference worth finding where nobody says another: never the one just observed, for that is seen too large.</summary>
    public const double UsualPreference = 2;

    /// <summary>Tasters expected where nobody says.</summary>
    public const int UsualTasters = 14;

    /// <summary>Nothing told yet.</summary>
    public static PlanAims None { get; } = new(null, null, null, null, []);

    /// <summary>Checks what a planner was told.</summary>
    /// <param name="ageDays">1 to 3,650, or null.</param>
    /// <param name="tasters">2 to 200, or null.</param>
    /// <param name="preference">1.1 to 20, or null.</param>
    /// <param name="stands">What stands already: what it follows and why is kept.</param>
    /// <returns>The aims, or every fault; fields "age", "tasters" and "preference".</returns>
    public static Outcome<PlanAims> Create(int? ageDays, int? tasters, double? preference, PlanAims? stands = null)
    {
        var problems = new List<Problem>();
        if (ageDays is < 1 or > 3_650) problems.Add(new("age", "The age on the day is between 1 and 3650 days."));
        if (tasters is < 2 or > 200) problems.Add(new("tasters", "The planner works from 2 to 200 tasters."));
        if (preference is { } ratio && ratio is not (>= 1.1 and <= 20)) problems.Add(new("preference", "The difference worth finding is between 1.1 to 1 and 20 to 1; 2 to 1 is the usual."));
        return problems.Count > 0 ? Outcome.Fault<PlanAims>(problems) : Outcome.Of((stands ?? None) with { AgeDays = ageDays, Tasters = tasters, Preference = preference });
    }
}
