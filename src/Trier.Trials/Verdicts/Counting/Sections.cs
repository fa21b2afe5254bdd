using System.Collections.Immutable;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Plans;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>The sections about who counts and what is shown, in ids instead of columns.</summary>
internal static class Sections
{
    public static Panel Panel(Electorate electorate, Judged judged)
    {
        var headline = electorate.Ballots(electorate.Headline);
        var blind = electorate.Voters.Where(v => v.Role == VoterRole.Guest).ToList();
        return new(
            blind.Count,
            electorate.Placing,
            electorate.Complete,
            electorate.Main,
            electorate.ByLiking ? judged.Scores.Ballots : headline.Ballots,
            electorate.ByLiking ? Ladder.Voices(judged.Scores) : headline.Voices,
            headline.Rows.Where(r => r.Ranking.HasTies).Sum(r => r.Count),
            [.. electorate.Voters.Where(v => v.Role == VoterRole.KnewTheKey && electorate.Placed(v) >= 2).Select(v => v.Name)],
            [.. blind.Where(v => electorate.IsJuniorApart(v) && electorate.Placed(v) >= 2).Select(v => v.Name)],
            [.. blind.Where(v => electorate.Placed(v) < 2).Select(v => v.Name)]);
    }

    public static Count WithTheKey(Electorate electorate) =>
        electorate.Headline with { Who = v => v.Role == VoterRole.KnewTheKey || electorate.CountsByPlan(v) };

    public static LevelFinding Level(Electorate electorate, Judged judged, ImmutableArray<SampleRecord> wheels)
    {
        var over = judged.Level >= 5 ? Ids(electorate, wheels, judged.ShownOver) : [];
        var leaders = judged.Leaders.Select(i => electorate.Wheels[i].Id).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<string> open = judged.Level == 5 ? [.. wheels.Select(w => w.Id).Where(id => !leaders.Contains(id) && !over.Contains(id))] : [];
        ImmutableArray<ImmutableArray<string>> pieces = judged.Reason == NothingToTest.Pieces
            ? [.. judged.Standing.Pieces.Select(p => p.Select(i => electorate.Wheels[i].Id).ToImmutableArray())]
            : [];
        return new(judged.Level, over, open, judged.Reason, pieces);
    }

    public static GateFinding? Gate(Judged judged, FriedmanResult? friedman, Seed seed)
    {
        if (judged.Gate is not { } gate) return null;
        return new(
            gate.Statistic,
            gate.P,
            gate.LeadLuck,
            friedman?.MeanRankCorrelation,
            judged.Level == 1 ? TieLuck.Of(judged.Scores, seed) : null);
    }

    /// <summary>Friedman on the complete ballots, each by itself; null where it is refused.</summary>
    public static FriedmanResult? FriedmanOf(Electorate electorate, Judged judged, Seed seed, Effort effort)
    {
        var complete = electorate.Ballots(new Count(electorate.CountsByPlan, CompleteOnly: true, Joined: false));
        var same = judged.Gate is not null
            && electorate.Record.Plan.Rule is CountingRule.AveragePlace
            && judged.Scores.IsComplete
            && judged.Scores.Rows.All(r => r.Voice is null)
            && judged.Scores.Ballots == complete.Ballots;

        // Where the gate has just tested the very same ballots its p is taken over: counting every arrangement twice would double the wait.
        var test = Trier.Statistics.RankTests.Friedman.Test(complete, seed.Child("gate"), same ? effort with { ExactWork = 0, Draws = 1, CloseDraws = 1 } : effort);
        return !test.Stands ? null : same ? test.Value with { P = judged.Gate!.P } : test.Value;
    }

    public static FriedmanFinding? Friedman(FriedmanResult? test) =>
        test is null ? null : new(test.Statistic, test.DegreesOfFreedom, test.P, test.ChiSquareP, test.KendallW, test.Judges);

    public static ImmutableArray<PairFinding> Pairs(Electorate electorate, Judged judged) =>
        [.. judged.Pairs.Select(p => new PairFinding(
            electorate.Wheels[p.Better].Id, electorate.Wheels[p.Worse].Id, p.P, p.Divisor, p.Shown, p.MeanGap, p.GapInterval, p.Preferring, p.Voices))];

    public static BallotStrip Strip(Electorate electorate, VoterRecord voter)
    {
        var ids = electorate.OwnColumns;
        ImmutableArray<ImmutableArray<string>> groups =
            [.. voter.Places.Select(g => g.Where(ids.ContainsKey).Order(StringComparer.Ordinal).ToImmutableArray()).Where(g => g.Length > 0)];
        ImmutableArray<string> below = [.. voter.Below.Where(ids.ContainsKey).Order(StringComparer.Ordinal)];
        var placed = groups.SelectMany(g => g).Concat(below).ToHashSet(StringComparer.Ordinal);
        return new(
            voter.Id,
            voter.Name,
            electorate.StandingOf(voter),
            voter.Role,
            voter.Marks,
            voter.Remarks,
            voter.Taste,
            voter.Voice,
            groups,
            below,
            [.. electorate.Ids.Where(id => !placed.Contains(id))]);
    }

    private static ImmutableArray<string> Ids(Electorate electorate, ImmutableArray<SampleRecord> wheels, ImmutableArray<int> columns)
    {
        var ids = columns.Select(i => electorate.Wheels[i].Id).ToHashSet(StringComparer.Ordinal);
        return [.. wheels.Select(w => w.Id).Where(ids.Contains)];
    }
}
