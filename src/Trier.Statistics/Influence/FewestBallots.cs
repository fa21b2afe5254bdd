using System.Collections.Immutable;
using Trier.Statistics.Counting;

namespace Trier.Statistics.Influence;

/// <summary>How many ballots must go before a rival catches the leader.</summary>
/// <param name="Rival">The rival.</param>
/// <param name="ToTie">Fewest ballots whose removal lets the rival draw level; null where none does.</param>
/// <param name="ToPass">Fewest ballots whose removal lets the rival pass; null where none does.</param>
public sealed record Overtaking(int Rival, long? ToTie, long? ToPass);

/// <summary>The fewest ballots whose loss changes the leader.</summary>
/// <param name="Leader">The single leader by the rule.</param>
/// <param name="ToTie">Least over rivals.</param>
/// <param name="ToPass">Least over rivals.</param>
/// <param name="Rivals">Every rival.</param>
public sealed record FewestBallotsResult(int Leader, long? ToTie, long? ToPass, ImmutableArray<Overtaking> Rivals);

/// <summary>
/// What tips the leader. For an additive rule on complete ballots the answer is exact: for each rival take the ballots by their gap in the leader's
/// favour, largest first, until the rest no longer favours the leader. Source: exchange argument; own.
/// </summary>
public static class FewestBallots
{
    /// <summary>Finds the fewest ballots.</summary>
    /// <param name="scores">Complete ballots' scores.</param>
    /// <returns>Refused on partial ballots and where the lead is shared.</returns>
    public static Answer<FewestBallotsResult> Of(ScoreSet scores)
    {
        ArgumentNullException.ThrowIfNull(scores);
        if (!scores.IsComplete) return new Refusal(RefusalKind.NotComplete, "Some ballot was not served every item: the fewest ballots are counted on complete ballots.");
        var leaders = Standing.Of(scores).Leaders;
        if (leaders.Length != 1 || scores.Items < 2) return new Refusal(RefusalKind.NoInformation, "There is no single leader to overtake.");
        var leader = leaders[0];
        var rivals = ImmutableArray.CreateBuilder<Overtaking>();
        for (var rival = 0; rival < scores.Items; rival++)
        {
            if (rival != leader) rivals.Add(Overtake(scores, leader, rival));
        }

        return new FewestBallotsResult(leader, rivals.Min(rival => rival.ToTie), rivals.Min(rival => rival.ToPass), rivals.DrainToImmutable());
    }

    /// <summary>The leaders when each row loses one ballot in turn.</summary>
    /// <param name="scores">Complete or partial ballots' scores.</param>
    /// <returns>One list of leaders per row of the score set.</returns>
    public static ImmutableArray<ImmutableArray<int>> LeaveOneOut(ScoreSet scores)
    {
        ArgumentNullException.ThrowIfNull(scores);
        return [.. Enumerable.Range(0, scores.Rows.Length).Select(row => Standing.Of(scores.Without(row)).Leaders)];
    }

    /// <summary>The leaders when each group of ballots is left out in turn: a table, a family, those who came late.</summary>
    /// <param name="scores">Complete or partial ballots' scores.</param>
    /// <param name="groups">Per row of the score set its group; null belongs to none and always stays.</param>
    /// <returns>Per group, rising, the leaders without it; none where nothing is left or what is left falls into pieces.</returns>
    /// <exception cref="ArgumentException">There is not one group a row.</exception>
    public static ImmutableArray<(int Group, ImmutableArray<int> Leaders)> LeaveGroupOut(ScoreSet scores, ImmutableArray<int?> groups)
    {
        ArgumentNullException.ThrowIfNull(scores);
        if (groups.Length != scores.Rows.Length) throw new ArgumentException($"There are {groups.Length} groups for {scores.Rows.Length} rows.", nameof(groups));
        return [.. groups.OfType<int>().Distinct().Order().Select(group => (group, Left(scores.Without(row => groups[row] == group))))];
    }

    private static ImmutableArray<int> Left(ScoreSet scores) => scores.Rows.IsEmpty ? [] : Standing.Of(scores).Leaders;

    private static Overtaking Overtake(ScoreSet scores, int leader, int rival)
    {
        var sign = scores.LowerIsBetter ? -1 : 1;
        var gaps = scores.Rows
            .Select(row => (Gap: sign * (row.Scores[leader]!.Value - row.Scores[rival]!.Value), row.Count))
            .OrderByDescending(row => row.Gap);
        var lead = scores.Rows.Sum(row => sign * (row.Scores[leader]!.Value - row.Scores[rival]!.Value) * row.Count);
        long gone = 0;
        long? tie = null;
        foreach (var (gap, count) in gaps)
        {
            if (gap <= 0) break;
            for (var copy = 0L; copy < count; copy++)
            {
                lead -= gap;
                gone++;
                if (lead <= 0) tie ??= gone;
                if (lead < 0) return new Overtaking(rival, tie, gone);
            }
        }

        return new Overtaking(rival, tie, null);
    }
}
