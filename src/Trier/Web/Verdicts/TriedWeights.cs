using Trier.Trials.Common;
using Trier.Trials.Plans;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;
using Trier.Web.Hosting;
using Trier.Web.Plans;
using Trier.Web.Shared;

namespace Trier.Web.Verdicts;

/// <summary>Weights that somebody tries on the verdict page, read from its address.</summary>
/// <param name="Asked">What was typed; the weights in use where nothing was.</param>
/// <param name="Count">The count with them, or null.</param>
/// <param name="Faults">What is wrong with them.</param>
public sealed record TriedWeights(string Asked, Reweighed? Count, IReadOnlyList<FieldFault> Faults)
{
    private static readonly Dictionary<string, string> Labels = new(StringComparer.Ordinal) { ["weights-asked"] = "Points" };

    public static TriedWeights Read(string? typed, Verdict verdict)
    {
        if (string.IsNullOrWhiteSpace(typed)) return new(verdict.Tally.IsEmpty ? "" : Numbers.Points(verdict.Tally[0].Weights, ' '), null, []);
        var problems = new List<Problem>();
        var weights = PlanForm.Weights(typed, "weights-asked", problems);
        if (problems.Count == 0 && weights.Length != verdict.Wheels.Length) problems.Add(new("weights-asked", $"{verdict.Wheels.Length} wheels need {verdict.Wheels.Length} numbers; there are {weights.Length}."));
        return problems.Count > 0 ? new(typed, null, Page.Faults(problems, Labels)) : new(typed, Judge.Reweigh(verdict, new CountingRule.PlacePoints(weights)), []);
    }
}
