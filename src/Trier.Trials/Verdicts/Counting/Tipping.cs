using System.Collections.Immutable;
using Trier.Statistics.Counting;
using Trier.Statistics.Influence;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>The fewest ballots whose loss changes the leader.</summary>
internal static class Tipping
{
    /// <summary>On ballots of different length sets of ballots are tried one by one, up to this many at a time.</summary>
    private const int DeepestSearch = 4;

    private const int LargestSearch = 30;

    public static FewestFinding? Fewest(Electorate electorate, Judged judged)
    {
        if (judged.Leaders.Length != 1 || judged.Scores.Items < 2) return null;
        if (judged.Scores.IsComplete)
        {
            var found = FewestBallots.Of(judged.Scores);
            if (!found.Stands) return null;
            var least = found.Value.ToPass;
            return new(
                found.Value.ToTie,
                least,
                least is null ? [] : [.. found.Value.Rivals.Where(r => r.ToPass == least).Select(r => electorate.Wheels[r.Rival].Id)],
                AtLeast: false);
        }

        if (judged.Scores.Ballots > LargestSearch) return null;
        for (var depth = 1; depth <= DeepestSearch; depth++)
        {
            var rivals = new SortedSet<int>();
            Search(judged.Scores, 0, depth, judged.Leaders[0], rivals);
            if (rivals.Count > 0) return new(null, depth, [.. rivals.Select(r => electorate.Wheels[r].Id)], AtLeast: false);
        }

        return judged.Scores.Ballots > DeepestSearch + 1 ? new(null, DeepestSearch + 1, [], AtLeast: true) : null;
    }

    private static void Search(ScoreSet scores, int from, int left, int leader, SortedSet<int> rivals)
    {
        if (left == 0)
        {
            var leaders = Standing.Of(scores).Leaders;
            if (!leaders.Contains(leader)) rivals.UnionWith(leaders);
            return;
        }

        for (var row = from; row < scores.Rows.Length && scores.Ballots > 1; row++) Search(scores.Without(row), row, left - 1, leader, rivals);
    }
}
