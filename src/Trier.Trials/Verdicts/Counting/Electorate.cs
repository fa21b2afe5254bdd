using System.Collections.Immutable;
using Trier.Statistics.Rankings;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>
/// Wheels and tasters of a record in a fixed order, and who of them counts. Sorted by id before anything is drawn, so that the
/// order in which rows arrived changes nothing.
/// </summary>
internal sealed class Electorate
{
    private readonly ImmutableDictionary<string, int> _columns;

    public Electorate(TastingRecord record)
    {
        Record = record;
        Wheels = [.. record.Samples.Where(s => s.RepeatOf is null).OrderBy(s => s.Id, StringComparer.Ordinal)];
        Repeats = [.. record.Samples.Where(s => s.RepeatOf is not null).OrderBy(s => s.Id, StringComparer.Ordinal)];
        Voters = [.. record.Voters.OrderBy(v => v.Id, StringComparer.Ordinal)];
        _columns = Columns(Wheels.Select(w => w.Id));
        var placing = Voters.Where(v => CountsByPlan(v) && Answered(v) >= 2).ToList();
        var complete = placing.Count(v => Answered(v) == Wheels.Length);

        // Where a plan deals each taster only some of the wheels hardly any ballot is complete, and all are counted.
        Main = complete > 0 && complete * 3 >= placing.Count * 2 ? MainCount.CompleteBallots : MainCount.AllBallots;
        (Placing, Complete) = (placing.Count, complete);
    }

    public TastingRecord Record { get; }

    /// <summary>Samples that count, by id.</summary>
    public ImmutableArray<SampleRecord> Wheels { get; }

    /// <summary>Second servings, by id.</summary>
    public ImmutableArray<SampleRecord> Repeats { get; }

    /// <summary>Everyone, by id.</summary>
    public ImmutableArray<VoterRecord> Voters { get; }

    public MainCount Main { get; }

    public int Placing { get; }

    public int Complete { get; }

    public IEnumerable<string> Ids => Wheels.Select(w => w.Id);

    public ImmutableDictionary<string, int> OwnColumns => _columns;

    public static ImmutableDictionary<string, int> Columns(IEnumerable<string> ids) =>
        ids.Select((id, i) => (id, i)).ToImmutableDictionary(x => x.id, x => x.i, StringComparer.Ordinal);

    /// <summary>The columns with a repeat's other code in the place of the one that counts.</summary>
    public ImmutableDictionary<string, int> WithOtherCode(SampleRecord check) =>
        Columns(Ids.Select(id => id == check.RepeatOf ? check.Id : id));

    public bool IsJuniorApart(VoterRecord voter) => voter.Marks.HasFlag(VoterMarks.Junior) && !Record.Plan.JuniorsCount;

    /// <summary>Whether a voter tasted blind and is counted by the plan, whatever was placed.</summary>
    public bool CountsByPlan(VoterRecord voter) => voter.Role == VoterRole.Guest && !IsJuniorApart(voter);

    /// <summary>Wheels that count and that a ballot orders, placed or left below.</summary>
    public int Placed(VoterRecord voter) => RankingOf(voter, _columns)?.Served.Length ?? 0;

    /// <summary>Whether the planned rule reads likings instead of places.</summary>
    public bool ByLiking => Record.Plan.Rule is Plans.CountingRule.MeanLiking;

    /// <summary>Wheels that count and of which a ballot says what the planned rule reads: a place, or a liking.</summary>
    public int Answered(VoterRecord voter) => ByLiking ? Wheels.Count(wheel => voter.Answers.GetValueOrDefault(wheel.Id)?.Liking is not null) : Placed(voter);

    /// <summary>Whether the headline counts a voter.</summary>
    public bool Counted(VoterRecord voter) => CountsByPlan(voter) && Answered(voter) is var answered && answered >= 2 && (Main == MainCount.AllBallots || answered == Wheels.Length);

    public StripStanding StandingOf(VoterRecord voter) =>
        Placed(voter) < 2 ? StripStanding.NoPlaces
        : !CountsByPlan(voter) ? StripStanding.Apart
        : Counted(voter) ? StripStanding.Counted
        : StripStanding.Partial;

    /// <summary>One ballot among the given columns; null where it places none of them.</summary>
    public static Ranking? RankingOf(VoterRecord voter, ImmutableDictionary<string, int> columns) => RankingOf(voter, columns, []);

    private static Ranking? RankingOf(VoterRecord voter, ImmutableDictionary<string, int> columns, ImmutableArray<string> without)
    {
        int[] Kept(IEnumerable<string> ids) => [.. ids.Where(id => columns.ContainsKey(id) && !without.Contains(id)).Select(id => columns[id])];
        var groups = voter.Places.Select(g => Kept(g)).Where(g => g.Length > 0).ToList();
        var below = Kept(voter.Below);
        return groups.Count == 0 && below.Length == 0 ? null : Ranking.Create(columns.Count, groups, below);
    }

    /// <summary>The ballots of a count that place two wheels or more, equal ones put together.</summary>
    public RankingSet Ballots(Count count)
    {
        var rows = new List<RankingRow>();
        var seen = new Dictionary<Ranking, int>();
        foreach (var voter in Voters.Where(count.Who))
        {
            var ranking = RankingOf(voter, count.Columns ?? _columns, count.WithoutNamed ? voter.Named : []);
            if (ranking is null || ranking.Served.Length < 2 || (count.CompleteOnly && !ranking.IsComplete)) continue;
            if (count.Turned == voter.Id) ranking = TurnRound(ranking);
            if (count.Joined && voter.Voice is { } voice) rows.Add(new RankingRow(ranking, 1, voice));
            else if (seen.TryGetValue(ranking, out var at)) rows[at] = rows[at] with { Count = rows[at].Count + 1 };
            else
            {
                seen.Add(ranking, rows.Count);
                rows.Add(new RankingRow(ranking));
            }
        }

        return RankingSet.Create(Math.Max(1, Wheels.Length), rows);
    }

    /// <summary>The ballots of a count one by one, each with its voter; joined voices keep their number.</summary>
    public (RankingSet Set, ImmutableArray<VoterRecord> Voters) OneByOne(Count count)
    {
        var kept = Voters.Where(count.Who)
            .Select(voter => (Voter: voter, Ranking: RankingOf(voter, count.Columns ?? _columns)))
            .Where(pair => pair.Ranking is { } ranking && ranking.Served.Length >= 2 && (!count.CompleteOnly || ranking.IsComplete))
            .ToList();
        return (RankingSet.Create(Math.Max(1, Wheels.Length), kept.Select(pair => new RankingRow(pair.Ranking!, 1, count.Joined ? pair.Voter.Voice : null))), [.. kept.Select(pair => pair.Voter)]);
    }

    /// <summary>The count that the headline uses.</summary>
    public Count Headline => new(CountsByPlan, Main == MainCount.CompleteBallots);

    private static Ranking TurnRound(Ranking ranking) =>
        Ranking.Create(ranking.Items, (ranking.Below.IsEmpty ? ranking.Groups : ranking.Groups.Add(ranking.Below)).Reverse().Select(g => g.AsEnumerable()));
}

/// <summary>Which ballots are counted and how.</summary>
/// <param name="Who">Whose ballots.</param>
/// <param name="CompleteOnly">Only those that place every wheel.</param>
/// <param name="Joined">Whether tasters who compared notes are one voice.</param>
/// <param name="Columns">Which sample stands for which wheel; null for the codes that count.</param>
/// <param name="Turned">Id of a voter whose order is turned round, or null.</param>
/// <param name="WithoutNamed">Whether a wheel that had been said aloud before a ballot came in is left out of that ballot.</param>
internal sealed record Count(
    Func<VoterRecord, bool> Who,
    bool CompleteOnly,
    bool Joined = true,
    ImmutableDictionary<string, int>? Columns = null,
    string? Turned = null,
    bool WithoutNamed = false);
