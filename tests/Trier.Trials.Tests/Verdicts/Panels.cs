using System.Collections.Immutable;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tests.Verdicts;

/// <summary>Records made of short words, for tests.</summary>
internal static class Panels
{
    /// <summary>One ballot a word such as "ABC", "A=BC", "AB|C" (C left below), "AB" (C not tasted), "" (no places).</summary>
    public static TastingRecord Of(string wheels, params string[] ballots) =>
        new(
            new RecordHead("Test", "Which?", "Club", new DateOnly(2025, 8, 30), Invented: true, FromFile: false),
            new JudgingPlan(CountingRule.Default, JuniorsCount: true),
            [.. wheels.Select(w => new SampleRecord($"W{w}", $"Wheel {w}", null, null, null, Facts($"recipe {w}")))],
            [.. ballots.Select((b, i) => Voter($"T{i + 1:00}", b))],
            [],
            []);

    public static VoterRecord Voter(string id, string ballot)
    {
        var parts = ballot.Split('|');
        var groups = new List<List<string>>();
        var tie = false;
        foreach (var sign in parts[0])
        {
            if (sign == '=')
            {
                tie = true;
                continue;
            }

            if (tie) groups[^1].Add($"W{sign}");
            else groups.Add([$"W{sign}"]);
            tie = false;
        }

        return new(
            id,
            $"Taster {id}",
            VoterRole.Guest,
            VoterMarks.None,
            [],
            Taste: null,
            Voice: null,
            [],
            [.. groups.Select(g => g.ToImmutableArray())],
            parts.Length > 1 ? [.. parts[1].Select(s => $"W{s}")] : [],
            ImmutableSortedDictionary<string, SampleAnswer>.Empty);
    }

    public static WheelFacts Facts(string recipe) => WheelFacts.Of([new(WheelFacts.RecipeFact, recipe)]);

    public static TastingRecord With(this TastingRecord record, string taster, Func<VoterRecord, VoterRecord> change) =>
        record with { Voters = [.. record.Voters.Select(v => v.Id == taster ? change(v) : v)] };

    public static TastingRecord By(this TastingRecord record, CountingRule rule, bool juniors = true) =>
        record with { Plan = new JudgingPlan(rule, juniors) };
}
