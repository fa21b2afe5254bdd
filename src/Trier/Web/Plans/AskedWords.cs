using System.Globalization;
using Trier.Trials.Plans;

namespace Trier.Web.Plans;

/// <summary>What a ballot asks, in words, and how long it takes to write.</summary>
internal static class AskedWords
{
    /// <summary>Seconds to put one sample in its place: a rough count for planning, common practice, no source.</summary>
    private const int SecondsAPlace = 5;

    /// <summary>What is asked: "a liking and a free line for each sample, then places".</summary>
    public static string Of(BallotPlan asked)
    {
        List<string> first = [.. asked.Liking ? ["a liking"] : Array.Empty<string>(), .. asked.Remark ? ["a free line"] : Array.Empty<string>()];
        List<string> after = [.. asked.Right.Select(property => $"the {property}"), .. asked.Words.Length > 0 ? [$"{asked.Words.Length} words to tick"] : Array.Empty<string>(), .. asked.Again ? ["would you serve it again"] : Array.Empty<string>()];
        var before = first.Count > 0 ? $"{string.Join(" and ", first)} for each sample, then places" : "places";
        return after.Count > 0 ? $"{before}, then {string.Join(", ", after)}" : before;
    }

    /// <summary>Minutes of writing, rounded up: "3 minutes".</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="samples">How many samples.</param>
    public static string Minutes(BallotPlan asked, int samples)
    {
        var minutes = (((asked.SecondsASample + SecondsAPlace) * samples) + 59) / 60;
        return minutes == 1 ? "one minute" : string.Create(CultureInfo.InvariantCulture, $"{minutes} minutes");
    }
}
