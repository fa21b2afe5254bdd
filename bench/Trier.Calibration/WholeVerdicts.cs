using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Power;
using Trier.Statistics.Randomness;
using Trier.Statistics.Rankings;
using Trier.Statistics.RankTests;
using Trier.Trials.Makes;
using Trier.Trials.Plans;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts;

namespace Trier.Calibration;

/// <summary>
/// The whole verdict, read as a person reads it: simulated tastings are judged from their record to their sentences, and what the sentences assert is held against what the crowd was drawn from.
/// </summary>
internal static partial class WholeVerdicts
{
    private const string Wheels = "ABCDE";

    // The chance, the reach and the redraws assert nothing; the level of every variant would cost most of the time and asserts nothing either.
    private static readonly JudgingEffort Effort = new(new Effort(2e4, 999, 999, double.MaxValue), SamplingEffort.Usual, 0, 0, 0, 0);

    public static string Make(Run run)
    {
        var panels = run.Fewer(20_000);
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"{panels} tastings a row, judged from record to sentences; what the sentences assert is read from their words. Ties between neighbours on 1 in 10, partial ballots 1 in 10, one pair that compared notes; declared tastes, serving orders and sittings have nothing to do with the ballots. In percent; budget: wheels 5, camps 1, order 1, sittings 1. 999 shuffles where not exact, so errors of the shuffle are within the figures. False: a wheel named as placed above one that the crowd likes as well or better.")
            .AppendLine().AppendLine("| k | n | truth | wheels not alike, or one above another | of these false | camps parted | order of serving | sittings parted | any of these | leader right where one is shown above all or some |")
            .AppendLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (var (k, n, ratio) in new[] { (3, 12, 1.0), (5, 14, 1.0), (5, 24, 1.0), (3, 12, 2.0), (5, 14, 2.0), (5, 24, 2.0) })
        {
            var model = PanelModel.Favourite(k, ratio) with { TieChance = 0.1, PartialChance = 0.1, JoinedPairs = 1 };
            var draw = new PanelDraw(model);
            var parts = Streams.Run(32, run.For("verdicts", k, n, (int)ratio), (part, generator) =>
            {
                var count = new Asserted();
                for (var panel = Streams.Share(panels, 32, part); panel > 0; panel--) count.Add(Judge.Of(Record(draw.Panel(n, generator), k, generator), new Seed(generator.NextUInt64()), Effort), ratio > 1);
                return count;
            });
            var all = parts.Aggregate((one, other) => one.With(other));
            string Share(int count) => Run.Percent(Simulated.Of(count, panels));
            text.AppendLine(CultureInfo.InvariantCulture, $"| {k} | {n} | {(ratio > 1 ? "2 : 1" : "none")} | {Share(all.Wheels)} | {Share(all.False)} | {Share(all.Camps)} | {Share(all.Order)} | {Share(all.Sittings)} | {Share(all.Any)} | {(ratio > 1 ? $"{all.Right} of {all.Shown}" : "")} |");
            Console.Error.WriteLine($"verdicts {k} {n} {ratio}");
        }

        return text.ToString();
    }

    private static TastingRecord Record(RankingSet set, int k, Generator generator)
    {
        var voters = ImmutableArray.CreateBuilder<VoterRecord>();
        foreach (var row in set.Rows)
        {
            for (var copy = 0; copy < row.Count; copy++)
            {
                var number = voters.Count;
                var order = Enumerable.Range(0, k).ToArray();
                generator.Shuffle<int>(order);
                voters.Add(new VoterRecord(
                    $"T{number:00}",
                    $"Taster {number}",
                    VoterRole.Guest,
                    row.Voice is null ? VoterMarks.None : VoterMarks.ComparedNotes,
                    [],
                    number % 2 == 0 ? DeclaredTaste.Milder : DeclaredTaste.Stronger,
                    row.Voice,
                    [.. order.Select(Id)],
                    [.. row.Ranking.Groups.Select(group => group.Select(Id).ToImmutableArray())],
                    [],
                    row.Ranking.Groups.SelectMany((group, place) => group.Select(item => (Id: Id(item), Place: place))).ToImmutableSortedDictionary(
                        said => said.Id, said => new SampleAnswer { Liking = Math.Clamp(7 - said.Place + generator.NextInt(3), 1, 9) }, StringComparer.Ordinal))
                {
                    Sitting = 1 + (number / 2 % 2),
                });
            }
        }

        return new(
            new RecordHead("Simulated", "Which?", null, null, Invented: true, FromFile: false),
            new JudgingPlan(CountingRule.Default, JuniorsCount: true),
            [.. Enumerable.Range(0, k).Select(item => new SampleRecord(Id(item), $"Wheel {Id(item)}", null, null, null, WheelFacts.Of([])))],
            voters.DrainToImmutable(),
            [],
            []);
    }

    private static string Id(int item) => Wheels.Substring(item, 1);

    [GeneratedRegex(@"Wheel (?<better>[A-E]) was placed above (?<worse>Wheel [A-E](, Wheel [A-E])*( and Wheel [A-E])?)", RegexOptions.ExplicitCapture, 60_000)]
    private static partial Regex Above();

    [GeneratedRegex("placed Wheel (?<better>[A-E]) above every other", RegexOptions.ExplicitCapture, 60_000)]
    private static partial Regex AboveAll();

    private sealed class Asserted
    {
        public int Wheels { get; private set; }

        public int False { get; private set; }

        public int Camps { get; private set; }

        public int Order { get; private set; }

        public int Sittings { get; private set; }

        public int Any { get; private set; }

        public int Shown { get; private set; }

        public int Right { get; private set; }

        public void Add(Verdict verdict, bool favourite)
        {
            var words = verdict.Words;
            var all = string.Join('\n', words.Top.Concat(words.Headlines).Concat(words.HowSure).Concat(words.Yardsticks).Concat(words.Tips).Concat(words.Disagreement).Concat(words.Answers).Concat(words.Serving).Concat(words.Next).Concat(words.Limits));
            var over = AboveAll().Match(all);
            var above = Above().Matches(all);
            var wheels = over.Success || above.Count > 0 || all.Contains("did not treat these wheels alike", StringComparison.Ordinal);
            // With a favourite only what is put under A is so; where nobody prefers anything nothing is.
            var wrong = (over.Success && !(favourite && over.Groups["better"].Value == "A")) || above.Any(match => !(favourite && match.Groups["better"].Value == "A"));
            var camps = all.Contains("Shown: people who like", StringComparison.Ordinal);
            var order = all.Contains("the order of serving mattered", StringComparison.Ordinal);
            var sittings = all.Contains("The sittings parted", StringComparison.Ordinal);
            var shown = words.Top[2].StartsWith("Shown: ", StringComparison.Ordinal);
            Wheels += wheels ? 1 : 0;
            False += wrong ? 1 : 0;
            Camps += camps ? 1 : 0;
            Order += order ? 1 : 0;
            Sittings += sittings ? 1 : 0;
            Any += wheels || camps || order || sittings ? 1 : 0;
            Shown += shown ? 1 : 0;
            Right += shown && verdict.Leaders is ["A"] ? 1 : 0;
        }

        public Asserted With(Asserted other) => new()
        {
            Wheels = Wheels + other.Wheels,
            False = False + other.False,
            Camps = Camps + other.Camps,
            Order = Order + other.Order,
            Sittings = Sittings + other.Sittings,
            Any = Any + other.Any,
            Shown = Shown + other.Shown,
            Right = Right + other.Right,
        };
    }
}
