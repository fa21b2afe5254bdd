using Trier.Trials.Plans;
using Trier.Web.Hosting;

namespace Trier.Web.Tastings.Ballots;

/// <summary>Reads answers about properties and about serving again, from the phone and from a sheet typed in.</summary>
internal static class MoreForm
{
    /// <summary>Answers by property: -1, 0 or 1; null where open. A number that is none of these stays, to be refused.</summary>
    /// <param name="posted">The form.</param>
    /// <param name="asked">What the ballot asks.</param>
    /// <param name="sample">What ends the fields' names where several samples share a form: "-417"; else empty.</param>
    public static Dictionary<string, int?> Amounts(Posted posted, BallotPlan asked, string sample) =>
        asked.Right.Select((property, index) => (property, Amount: posted.Number(FormattableString.Invariant($"right-{index}{sample}")))).ToDictionary(pair => pair.property, pair => pair.Amount, StringComparer.Ordinal);

    /// <summary>Yes, no, or null where open.</summary>
    /// <param name="posted">The form.</param>
    /// <param name="sample">As above.</param>
    public static bool? Again(Posted posted, string sample) => posted.Text($"again{sample}") switch { "yes" => true, "no" => false, _ => null };
}
