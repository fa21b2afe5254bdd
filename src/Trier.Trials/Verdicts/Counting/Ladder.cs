using System.Collections.Immutable;
using Trier.Statistics.Counting;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>One count of ballots judged: leader, gate, pairs and the level on the ladder.</summary>
/// <param name="Scores">The scores by the rule.</param>
/// <param name="Standing">Where the wheels stand.</param>
/// <param name="Gate">The gate; null where nothing can be tested.</param>
/// <param name="Pairs">All pairs; empty where nothing can be tested.</param>
/// <param name="Level">0 to 6.</param>
/// <param name="ShownOver">Columns the single leader is shown over.</param>
/// <param name="Reason">Why nothing can be tested.</param>
internal sealed record Judged(
    ScoreSet Scores,
    Standing Standing,
    GateResult? Gate,
    ImmutableArray<PairResult> Pairs,
    int Level,
    ImmutableArray<int> ShownOver,
    NothingToTest Reason)
{
    public ImmutableArray<int> Leaders => Standing.Leaders;
}

/// <summary>
/// The ladder of what may be said. Its rules and simulated error rates stand in docs/methods/verdict-wording.md: levels 4 to 6
/// are reached in about 5 % of tastings in which nobody prefers anything.
/// </summary>
internal static class Ladder
{
    /// <summary>Fewest voices with which anything is tested.</summary>
    public const int FewestVoices = 4;

    public static Judged Judge(ScoreSet scores, Seed seed, Effort effort)
    {
        var standing = Standing.Of(scores);
        if (scores.Items < 2) return Untested(scores, standing, NothingToTest.TooFewWheels);
        if (scores.Rows.IsEmpty) return Untested(scores, standing, NothingToTest.TooFewVoices);
        if (scores.Rows.All(IsAllTied)) return Untested(scores, standing, NothingToTest.AllTied);
        if (Voices(scores) < FewestVoices) return Untested(scores, standing, NothingToTest.TooFewVoices);
        if (!standing.IsConnected) return Untested(scores, standing, NothingToTest.Pieces);
        var gate = Gate.Test(scores, seed, effort).Value;
        var pairs = Trier.Statistics.RankTests.Pairs.Compare(scores, gate.P.Value);
        var leaders = standing.Leaders;
        var p = scores.Items == 2 ? pairs[0].P : gate.P.Value;
        var (level, over) = EvidenceLevel.Of(p, leaders, pairs);
        return new(scores, standing, gate, pairs, level, over, NothingToTest.None);
    }

    private static Judged Untested(ScoreSet scores, Standing standing, NothingToTest reason) =>
        new(scores, standing, null, [], 0, [], reason);

    private static bool IsAllTied(ScoreRow row) => row.Scores.Where(s => s is not null).Distinct().Count() <= 1;

    /// <summary>Independent voices: rows that compared notes are one.</summary>
    public static long Voices(ScoreSet scores) =>
        scores.Rows.Where(r => r.Voice is null).Sum(r => r.Count) + scores.Rows.Where(r => r.Voice is not null).Select(r => r.Voice).Distinct().Count();
}
