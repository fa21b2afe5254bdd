using System.Collections.Immutable;
using System.Globalization;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts;

namespace Trier.Benchmarks;

/// <summary>How long a verdict takes: the headline that a page waits for, and all of it.</summary>
internal static class Verdicts
{
    public static void Print()
    {
        Line("headline, 14 ballots of 5 wheels, a tie and a partial ballot", Clock.Processor(() => Judge.Headline(Panel(14, 5), new Seed(7)), 15), 0.3);
        Line("headline, 10,000 ballots of 8 wheels", Clock.Processor(() => Judge.Headline(Panel(10_000, 8), new Seed(7)), 3), 5);
        var headline = Judge.Headline(Panel(14, 5), new Seed(7));
        Line("the rest of it, 14 by 5, in the background", Clock.Wall(() => Judge.Deepen(headline, null, null, CancellationToken.None), 3), null);
        var crowd = Judge.Headline(Panel(40, 5), new Seed(7));
        Line("the rest of it, 40 by 5, two tastes by a model included", Clock.Wall(() => Judge.Deepen(crowd, null, null, CancellationToken.None), 1), null);
    }

    private static void Line(string work, double seconds, double? bar) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {work} | {seconds:G3} s | {(bar is { } most ? $"{most:G3} s" : "none")} | {(bar is { } limit ? seconds < limit ? "met" : "missed" : "")} |"));

    private static TastingRecord Panel(int ballots, int wheels)
    {
        var model = PanelModel.Favourite(wheels, 1.5) with { TieChance = 0.05, PartialChance = ballots > 100 ? 0.1 : 0.07 };
        var set = new PanelDraw(model).Panel(ballots, new Seed(11).Generator());
        var voters = set.Rows.SelectMany(row => Enumerable.Repeat(row, (int)row.Count)).Select((row, i) => new VoterRecord(
            $"T{i:00000}",
            $"Taster {i}",
            VoterRole.Guest,
            VoterMarks.None,
            [],
            i % 2 == 0 ? DeclaredTaste.Milder : DeclaredTaste.Stronger,
            null,
            [],
            [.. row.Ranking.Groups.Select(group => group.Select(item => $"W{item}").ToImmutableArray())],
            [],
            ImmutableSortedDictionary<string, SampleAnswer>.Empty));
        return new(
            new RecordHead("Benchmark", null, null, null, Invented: true, FromFile: false),
            new JudgingPlan(CountingRule.Default, JuniorsCount: true),
            [.. Enumerable.Range(0, wheels).Select(item => new SampleRecord($"W{item}", $"Wheel {item}", null, null, null, WheelFacts.Of([])))],
            [.. voters],
            [],
            []);
    }
}
