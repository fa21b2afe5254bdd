using Trier.Statistics.Counting;
using Trier.Statistics.Randomness;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>How often luck alone ends in a tie for first: every voice's scores are shuffled among the wheels, all ballots of a joined voice alike, as the gate does.</summary>
internal static class TieLuck
{
    private const int MostDraws = 20_000;
    private const int FewestDraws = 1_000;
    private const double LargestWork = 2e7;

    /// <summary>The share of drawn tastings that end tied, or null where too few could be drawn to be worth saying.</summary>
    public static double? Of(ScoreSet scores, Seed seed)
    {
        if (!scores.IsComplete) return null;
        var draws = (int)Math.Min(MostDraws, LargestWork / ((double)scores.Ballots * scores.Items));
        if (draws < FewestDraws) return null;
        var generator = seed.Child("tie luck").Generator();
        var joined = scores.Rows.Where(row => row.Voice is not null).GroupBy(row => row.Voice).Select(voice => Sum(voice, scores.Items));
        var ballots = scores.Rows.Where(row => row.Voice is null).SelectMany(row => Enumerable.Repeat(Sum([row], scores.Items), (int)row.Count)).Select(ballot => ballot.ToArray()).Concat(joined).ToList();
        var totals = new long[scores.Items];
        var ties = 0;
        for (var draw = 0; draw < draws; draw++)
        {
            Array.Clear(totals);
            foreach (var ballot in ballots)
            {
                generator.Shuffle(ballot.AsSpan());
                for (var i = 0; i < totals.Length; i++) totals[i] += ballot[i];
            }

            var best = scores.LowerIsBetter ? totals.Min() : totals.Max();
            if (totals.Count(t => t == best) > 1) ties++;
        }

        return (double)ties / draws;
    }

    // One shuffle for all ballots of a voice moves their sums as it moves each of them.
    private static long[] Sum(IEnumerable<ScoreRow> rows, int items)
    {
        var sum = new long[items];
        foreach (var row in rows)
        {
            for (var i = 0; i < items; i++) sum[i] += row.Scores[i] ?? 0;
        }

        return sum;
    }
}
