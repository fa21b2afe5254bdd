using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Plans;
using Trier.Web.Hosting;

namespace Trier.Web.Plans;

/// <summary>Reads the form of a plan.</summary>
internal static class PlanForm
{
    private const int LongestWeight = 8;

    /// <summary>What the fields are called on the page.</summary>
    public static IReadOnlyDictionary<string, string> Labels { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["question"] = "The one question",
        ["host"] = "Who holds the tasting",
        ["day"] = "Day of the tasting",
        ["rule"] = "The rule",
        ["weights"] = "Place points",
        ["samplesEach"] = "Samples a taster gets",
        ["warmUp"] = "A warm-up sample",
        ["asks"] = "What else the ballot asks",
        ["right"] = "Another property, asked like salt",
        ["words"] = "Words to tick",
    };

    public static Outcome<TrialPlan> Read(Posted posted, TrialPlan? before = null)
    {
        var problems = new List<Problem>();
        var day = Dates.Parse(posted.Text("day"), "day", problems);
        var rule = Rule(posted, problems);
        var asked = Asked(posted);
        problems.AddRange(asked.Ok ? [] : asked.Problems);
        return problems.Count > 0
            ? Outcome.Fault<TrialPlan>(problems)
            : Outcome.Of(new TrialPlan(posted.Text("title"), posted.Text("question"), posted.Text("host"), day, rule, posted.Ticked("juniors"), before?.Invented ?? false) { Serving = Serving(posted), Aims = before?.Aims, Ballot = asked.Value });
    }

    // The usual way is written down as nothing at all, as plans always were.
    private static ServingRules? Serving(Posted posted)
    {
        int? each = posted.Text("samplesEach").Length == 0 ? null : posted.Number("samplesEach") ?? 0;
        var rules = new ServingRules(each, posted.Text("codes") == "own", posted.Text("handing") == "numbers", posted.Optional("warmUp"));
        return rules == ServingRules.Usual ? null : rules;
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
                var weights = Weights(posted.Text("weights"), "weights", problems);
                return CountingRule.PlacePoints.Fault(weights) is null ? new CountingRule.PlacePoints(weights) : CountingRule.Default;
            default: return new CountingRule.AveragePlace();
        }
    }

    /// <summary>Reads place points such as "4 3 2 1 0".</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="field">The field it was typed in.</param>
    /// <param name="problems">Takes what is wrong.</param>
    public static ImmutableArray<decimal> Weights(string text, string field, List<Problem> problems)
    {
        var weights = ImmutableArray.CreateBuilder<decimal>();
        var wrong = false;
        foreach (var part in text.Split([' ', ';', '-'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (part.Length <= LongestWeight && decimal.TryParse(part.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var weight))
            {
                weights.Add(weight);
                continue;
            }

            wrong = true;
            problems.Add(new(field, $"“{part}” is no number of points: write them with spaces between, such as 4 3 2 1 0."));
        }

        if (wrong) return weights.ToImmutable();
        if (weights.Count < 2) problems.Add(new(field, "Write the points of the first place, the second and so on, such as 4 3 2 1 0."));
        else if (CountingRule.PlacePoints.Fault(weights.ToImmutable()) is { } fault) problems.Add(new(field, fault));
        else if (!CountingRule.PlacePoints.Fall(weights.ToImmutable())) problems.Add(new(field, "Points fall from the first place to the last."));
        return weights.ToImmutable();
    }
}
