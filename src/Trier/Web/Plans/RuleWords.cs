using Trier.Trials.Plans;

namespace Trier.Web.Plans;

/// <summary>Counting rules in words.</summary>
internal static class RuleWords
{
    public static string Of(CountingRule rule) => rule switch
    {
        CountingRule.AveragePlace => "average place",
        CountingRule.Firsts => "most first places",
        CountingRule.PlacePoints points => $"place points {Numbers.Points(points.Weights)}",
        CountingRule.MeanLiking => "average liking",
        _ => throw new NotSupportedException($"No words for {rule.GetType().Name}."),
    };
}
