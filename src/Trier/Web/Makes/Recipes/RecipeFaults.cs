using System.Text.RegularExpressions;
using Trier.Trials.Common;
using Trier.Web.Shared;

namespace Trier.Web.Makes.Recipes;

/// <summary>Puts a recipe's problems beside the fields of its form, which is metric: "steps[3].celsius" is the field s3-celsius of step 3.</summary>
internal static partial class RecipeFaults
{
    public static IReadOnlyList<FieldFault> Of(IEnumerable<Problem> problems) => [.. problems.Select(problem => new FieldFault(Id(problem.Field), Name(problem.Field), MakerUnits.Metric.Say(problem.Sentence)))];

    public static string Name(string field)
    {
        var step = Step().Match(field);
        return step.Success ? $"Step {step.Groups["n"].Value}" : field.StartsWith("cheese.", StringComparison.Ordinal) ? "The cheese" : char.ToUpperInvariant(field[0]) + field[1..];
    }

    private static string Id(string field)
    {
        var tolerance = field.EndsWith("Tolerance", StringComparison.Ordinal) ? field[..^9] + "-tol" : field;
        var step = Step().Match(tolerance);
        if (step.Success) return $"s{step.Groups["n"].Value}-{(step.Groups["key"].Success ? step.Groups["key"].Value : "title")}";
        return tolerance.Replace('.', '-');
    }

    [GeneratedRegex(@"^steps\[(?<n>\d+)\](\.(?<key>.+))?$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Step();
}
