using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Plans;
using Trier.Web.Hosting;

namespace Trier.Web.Plans;

/// <summary>Reads the form of a plan.</summary>
internal static class PlanForm
{
    public static Outcome<TrialPlan> Read(Posted posted, TrialPlan? before = null)
    {
        var problems = new List<Problem>();
        var day = Dates.Parse(posted.Text("day"), "day", problems);
        var rule = Rule(posted, problems);
        var asked = Asked(posted);
        problems.AddRange(asked.Ok ? [] : asked.Problems);
        return problems.Count > 0
            ? Outcome.Fault<TrialPlan>(problems)
            : Outcome.Of(new TrialPlan(posted.Text("title"), posted.Text("question"), posted.Text("host"), day, rule, posted.Ticked("juniors"), before?.Invented ?? false) { Ballot = asked.Value });
    }

    /// <summary>How a rule is called in the form.</summary>
    public static string Name(CountingRule rule) => rule switch
    {
        CountingRule.Firsts => "firsts",
        CountingRule.PlacePoints => "points",
        CountingRule.MeanLiking => "liking",
        _ => "average",
    };

    // A form without the fields of the ballot, as an older page posts it, asks what every ballot asked before.
    private static Outcome<BallotPlan> Asked(Posted posted) =>
        !posted.Ticked("asks") ? Outcome.Of(BallotPlan.Usual) : BallotPlan.Of(
            posted.Ticked("asks-liking"),
            posted.Ticked("asks-remark"),
            [posted.Ticked("asks-salt") ? BallotPlan.Salt : "", posted.Ticked("asks-firmness") ? BallotPlan.Firmness : "", posted.Text("right")],
            posted.Text("words").Split([',', ';', '\n', '\r'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries),
            posted.Ticked("asks-again"));

    private static CountingRule Rule(Posted posted, List<Problem> problems)
    {
        switch (posted.Text("rule"))
        {
            case "firsts": return new CountingRule.Firsts();
            case "liking": return new CountingRule.MeanLiking();
            case "points":
                var weights = ImmutableArray.CreateBuilder<decimal>();
                foreach (var part in posted.Text("weights").Split([' ', ';', '-'], StringSplitOptions.RemoveEmptyEntries))
                {
                    if (decimal.TryParse(part.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var weight)) weights.Add(weight);
                    else problems.Add(new("weights", $"“{part}” is no number: write the points with spaces between, such as 4 3 2 1 0."));
                }

                if (weights.Count < 2) problems.Add(new("weights", "Write the points of the first place, the second and so on, such as 4 3 2 1 0."));
                else if (weights.Zip(weights.Skip(1)).Any(pair => pair.First < pair.Second)) problems.Add(new("weights", "Points fall from the first place to the last."));
                return new CountingRule.PlacePoints(weights.ToImmutable());
            default: return new CountingRule.AveragePlace();
        }
    }
}
