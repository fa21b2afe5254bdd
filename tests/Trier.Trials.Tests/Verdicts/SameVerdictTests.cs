using System.Collections.Immutable;
using Trier.Statistics.ChoiceModels;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Tests.Verdicts;

/// <summary>What must not change a verdict: other names for wheels or tasters, ballots that tie everything, the order in which rows arrived.</summary>
public sealed class SameVerdictTests
{
    private static readonly Seed Seed = new(417);

    // Complete ballots are counted exactly and partial ones drawn; the level is wanted here, so few draws do.
    private static readonly JudgingEffort Quick = new(new Effort(1e7, 999, 999, 4e9), new SamplingEffort(2, 100, 1_000), 1e8, 0, 0, 0);

    [Fact]
    public void The_order_of_samples_and_tasters_in_the_record_changes_nothing() => Each(record =>
    {
        var turned = record with { Samples = [.. record.Samples.Reverse()], Voters = [.. record.Voters.Reverse()] };
        Same(Judge.Of(record, Seed, Quick), Judge.Of(turned, Seed, Quick), id => id);
    });

    [Fact]
    public void Other_names_for_the_wheels_change_only_names() => Each(record =>
    {
        string Turn(string id) => $"W{(char)('Z' - (id[1] - 'A'))}";
        ImmutableArray<string> Turned(ImmutableArray<string> ids) => [.. ids.Select(Turn)];
        var renamed = record with
        {
            Samples = [.. record.Samples.Select(sample => sample with { Id = Turn(sample.Id) })],
            Voters = [.. record.Voters.Select(voter => voter with { Places = [.. voter.Places.Select(Turned)], Below = Turned(voter.Below) })],
        };
        Same(Judge.Of(record, Seed, Quick), Judge.Of(renamed, Seed, Quick), Turn);
    });

    [Fact]
    public void Other_names_for_the_tasters_change_nothing() => Each(record =>
    {
        var renamed = record with { Voters = [.. record.Voters.Select((voter, i) => voter with { Id = $"U{99 - i}" })] };
        Same(Judge.Of(record, Seed, Quick), Judge.Of(renamed, Seed, Quick), id => id);
    });

    [Fact]
    public void Ballots_that_tie_everything_do_not_change_what_is_shown() => Each(record =>
    {
        var tied = string.Join('=', record.Samples.Select(sample => sample.Id[1]));
        var once = Judge.Of(record with { Voters = record.Voters.Add(Panels.Voter("V1", tied)) }, Seed, Quick);
        var twice = Judge.Of(record with { Voters = record.Voters.Add(Panels.Voter("V1", tied)).Add(Panels.Voter("V2", tied)) }, Seed, Quick);
        Same(once, twice, id => id);
    });

    private static void Each(Action<TastingRecord> check)
    {
        // Worked over many panels, so that every level from 1 to 6 comes up; the last asserts that they did.
        var generator = new Seed(99).Generator();
        var levels = new HashSet<int>();
        for (var round = 0; round < 40; round++)
        {
            var wheels = "ABCD"[..(3 + (round % 2))];
            var pull = round % 5 / 4.0;
            var ballots = Enumerable.Range(0, 7 + (round % 4)).Select(_ =>
            {
                var letters = wheels.ToCharArray();
                generator.Shuffle<char>(letters);
                var text = new string(letters);
                if (generator.NextDouble() < pull) text = "A" + text.Replace("A", "", StringComparison.Ordinal);
                return generator.NextInt(4) == 0 ? text.Insert(1, "=") : text;
            });
            var record = Panels.Of(wheels, [.. ballots]);
            levels.Add(Judge.Of(record, Seed, Quick).Level.Level);
            check(record);
        }

        Assert.Superset(new HashSet<int> { 2, 3, 5, 6 }, levels);
    }

    private static void Same(Verdict one, Verdict other, Func<string, string> name)
    {
        Assert.Equal(one.Level.Level, other.Level.Level);
        Assert.Equal(Sorted(one.Level.ShownOver.Select(name)), Sorted(other.Level.ShownOver));
        Assert.Equal(Sorted(one.Leaders.Select(name)), Sorted(other.Leaders));
        Assert.Equal(one.Gate!.P.Method == TestMethod.Exact, other.Gate!.P.Method == TestMethod.Exact);
        if (one.Gate.P.Method == TestMethod.Exact) Assert.Equal(one.Gate.P.Value, other.Gate.P.Value, 1e-12);
        Assert.Equal(Pairs(one, name), Pairs(other, id => id));
    }

    /// <summary>Which pairs are shown, and each pair's p whichever way round it is written.</summary>
    private static IEnumerable<string> Pairs(Verdict verdict, Func<string, string> name) =>
        Sorted(verdict.Pairs.Select(pair => pair.Shown
            ? $"{name(pair.Better)} over {name(pair.Worse)} {pair.P:F9}"
            : $"{string.Join(" and ", Sorted([name(pair.Better), name(pair.Worse)]))} {pair.P:F9}"));

    private static IEnumerable<string> Sorted(IEnumerable<string> names) => names.Order(StringComparer.Ordinal);
}
