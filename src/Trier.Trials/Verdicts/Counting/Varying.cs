using System.Collections.Immutable;
using Trier.Statistics.Counting;
using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;
using Trier.Trials.Verdicts.Findings;
using Trier.Trials.Verdicts.Sentences;
using Planned = Trier.Trials.Plans.CountingRule;

namespace Trier.Trials.Verdicts.Counting;

/// <summary>Counts the tasting in every other way that a reader might ask for.</summary>
internal sealed class Varying
{
    /// <summary>Up to this many ballots each is left out in turn.</summary>
    private const int MostLeftOut = 60;

    /// <summary>Draws of a variant: its level is wanted, not its p to many digits.</summary>
    private const int MostDraws = 9_999;

    /// <summary>Exact counting only where it costs no more than drawing: there are as many variants as ballots and more.</summary>
    private const double MostExactWork = 2e6;

    /// <summary>Scores in finer parts than this, as place points on ballots of many lengths and ties give, are counted and not tested: exact sums would not fit.</summary>
    private const long FinestTested = 5_000;

    private readonly Electorate _electorate;
    private readonly Judged _judged;
    private readonly ImmutableArray<SampleRecord> _wheels;
    private readonly Seed _seed;
    private readonly Effort _effort;
    private readonly CancellationToken _cancellation;
    private readonly ImmutableArray<Variant>.Builder _found = ImmutableArray.CreateBuilder<Variant>();

    private Varying(Electorate electorate, Judged judged, ImmutableArray<SampleRecord> wheels, Seed seed, Effort effort, CancellationToken cancellation)
    {
        _cancellation = cancellation;
        (_electorate, _judged, _wheels) = (electorate, judged, wheels);
        _seed = seed.Child("variants");
        _effort = effort with { ExactWork = Math.Min(effort.ExactWork, MostExactWork), Draws = Math.Min(effort.Draws, MostDraws), CloseDraws = Math.Min(effort.CloseDraws, 10 * MostDraws) };
    }

    public static ImmutableArray<Variant> Of(Electorate electorate, Judged judged, ImmutableArray<SampleRecord> wheels, Seed seed, Effort effort, CancellationToken cancellation)
    {
        if (wheels.Length < 2 || judged.Scores.Rows.IsEmpty) return [];
        var varying = new Varying(electorate, judged, wheels, seed, effort, cancellation);
        varying.OtherVoters();
        varying.OtherCounts();
        varying.OneByOne();
        varying.OtherRules();
        return varying._found.ToImmutable();
    }

    private Planned Rule => _electorate.Record.Plan.Rule;

    private Count Headline => _electorate.Headline;

    private void OtherVoters()
    {
        var counted = _electorate.Voters.Where(_electorate.Counted).ToList();
        var knew = _electorate.Voters.Where(v => v.Role == VoterRole.KnewTheKey && _electorate.Placed(v) >= 2).ToList();
        if (knew.Count > 0)
            Add(VariantKind.WithTheKey, $"with {Phrase.Possessive(knew.Select(v => v.Name))} own {Phrase.Ballots(knew.Count)}, not blind", Ids(knew), Sections.WithTheKey(_electorate), tested: false);

        foreach (var voice in counted.Where(v => v.Voice is not null).GroupBy(v => v.Voice).Where(g => g.Count() > 1 && g.Count() < counted.Count).OrderBy(g => g.Key))
        {
            var names = Phrase.List(voice.Select(v => v.Name));
            Without(VariantKind.WithoutJoined, $"without {names}, who compared notes", [.. voice]);
        }

        var joined = counted.Where(v => v.Voice is not null).GroupBy(v => v.Voice).Where(g => g.Count() > 1).SelectMany(g => g).OrderBy(v => v.Id, StringComparer.Ordinal).ToList();
        if (joined.Count > 0) Add(VariantKind.JoinedApart, $"with {Phrase.List(joined.Select(v => v.Name))} as voices of their own", Ids(joined), Headline with { Joined = false });
        foreach (var group in counted.Where(v => v.Group is not null).GroupBy(v => v.Group, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1 && g.Count() < counted.Count).OrderBy(g => g.Key, StringComparer.OrdinalIgnoreCase))
            Without(VariantKind.WithoutGroup, $"without {Phrase.List(group.Select(v => v.Name))}, who tasted together", [.. group]);

        Marked(counted, VoterMarks.Late, VariantKind.WithoutLate, names => $"without {names}, who came late");
        if (_electorate.Record.Plan.JuniorsCount) Marked(counted, VoterMarks.Junior, VariantKind.WithoutJuniors, names => $"without {names}, tasting as junior");
        Marked(counted, VoterMarks.Corrected, VariantKind.WithoutCorrected, names => $"without the corrected {(counted.Count(v => v.Marks.HasFlag(VoterMarks.Corrected)) == 1 ? "ballot" : "ballots")} of {names}");
        Marked(counted, VoterMarks.AdmittedAfterClose, VariantKind.WithoutAdmitted, names => $"without {names}, let in after the close");
        Marked(counted, VoterMarks.AfterKeyOpened, VariantKind.WithoutAfterKey, names => $"without {names}, sent after the key was opened");
        var cold = counted.Where(v => v.Marks.HasFlag(VoterMarks.LittleSmell)).ToList();
        // A reason of health is told beside no name: how many, never who.
        if (cold.Count > 0 && cold.Count < counted.Count)
            Add(VariantKind.WithoutCold, $"without the {Phrase.Number(cold.Count)} who signed in with a cold or little smell", "", Headline with { Who = v => _electorate.CountsByPlan(v) && !v.Marks.HasFlag(VoterMarks.LittleSmell) });
        var juniors = _electorate.Voters.Where(v => v.Role == VoterRole.Guest && _electorate.IsJuniorApart(v) && _electorate.Placed(v) >= 2).ToList();
        if (juniors.Count > 0)
            Add(VariantKind.WithJuniors, $"with {Phrase.List(juniors.Select(v => v.Name))}, left out as junior", Ids(juniors), Headline with { Who = v => v.Role == VoterRole.Guest });
    }

    private void Marked(List<VoterRecord> counted, VoterMarks mark, VariantKind kind, Func<string, string> label)
    {
        var marked = counted.Where(v => v.Marks.HasFlag(mark)).ToList();
        // Where it is all of them nobody is left to count.
        if (marked.Count > 0 && marked.Count < counted.Count) Without(kind, label(Phrase.List(marked.Select(v => v.Name))), marked);
    }

    private void OtherCounts()
    {
        if (_electorate.Complete > 0 && _electorate.Complete < _electorate.Placing)
        {
            var complete = Headline.CompleteOnly;
            var label = complete
                ? $"with all {Phrase.Number(_electorate.Placing)} ballots, {(_electorate.ByLiking ? "likings adjusted for what each was served" : "places adjusted for what each placed")}"
                : $"with the {Phrase.Number(_electorate.Complete)} complete ballots alone";
            Add(VariantKind.OtherCount, label, "", Headline with { CompleteOnly = !complete });
        }

        foreach (var check in _electorate.Repeats.Where(r => _electorate.OwnColumns.ContainsKey(r.RepeatOf!)))
            Add(VariantKind.OtherCode, $"with the other serving of {_electorate.Wheels[_electorate.OwnColumns[check.RepeatOf!]].Name} counted", check.Id, Headline with { Columns = _electorate.WithOtherCode(check) });
        var named = _electorate.Voters.Where(v => _electorate.StandingOf(v) is StripStanding.Counted or StripStanding.Partial).SelectMany(v => v.Named).Where(_electorate.OwnColumns.ContainsKey).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        if (named.Count > 0)
        {
            var label = $"with {Phrase.List(named.Select(id => _electorate.Wheels[_electorate.OwnColumns[id]].Name))} left out of the ballots that came in after the name was said aloud";
            Add(VariantKind.WithoutNamed, label, string.Join(",", named), Headline with { CompleteOnly = false, WithoutNamed = true });
        }

        // Likings have no order that could be turned round.
        foreach (var voter in _electorate.Voters.Where(v => !_electorate.ByLiking && _electorate.Counted(v) && Upside.Down(_electorate, v)))
            Add(VariantKind.Turned, $"with {Phrase.Possessive([voter.Name])} places turned round", voter.Id, Headline with { Turned = voter.Id });
    }

    private void OneByOne()
    {
        var counted = _electorate.Voters.Where(_electorate.Counted).ToList();
        if (counted.Count > MostLeftOut || counted.Count < 2) return;
        foreach (var voter in counted) Without(VariantKind.WithoutOne, $"without {Phrase.Possessive([voter.Name])} ballot", [voter]);
    }

    private void OtherRules()
    {
        if (Rule is not Planned.AveragePlace) AddRule("average place", Planned.Default);
        if (Rule is not Planned.Firsts) AddRule("firsts", new Planned.Firsts());
        if (Rule is not Planned.PlacePoints) AddRule("place points", new Planned.PlacePoints(Rules.Weights(Planned.Default, _wheels.Length)));
        var asked = _electorate.Voters.Count(v => Headline.Who(v) && v.Answers.Any(a => a.Value.Liking is not null && _electorate.OwnColumns.ContainsKey(a.Key)));
        if (Rule is not Planned.MeanLiking && asked * 2 >= _electorate.Placing) AddRule("average liking", new Planned.MeanLiking());
        var ballots = _electorate.Ballots(Headline);
        if (ballots.Rows.IsEmpty) return;
        AddLeaders("head-to-heads", HeadToHead.Of(ballots).CopelandWinners);
        var kemeny = Kemeny.Optima(ballots);
        if (kemeny.Stands) AddLeaders("the order nearest to all ballots", [.. kemeny.Value.Orders.Select(o => o[0]).Distinct().Order()]);
    }

    private void AddRule(string name, Planned rule) =>
        Add(VariantKind.OtherRule, $"by {name}", name, Headline, rule: rule);

    private void AddLeaders(string name, ImmutableArray<int> leaders) =>
        Record(VariantKind.OtherRule, $"by {name}", name, leaders, Headline, level: null);

    private void Without(VariantKind kind, string label, List<VoterRecord> gone)
    {
        var ids = gone.Select(v => v.Id).ToHashSet(StringComparer.Ordinal);
        Add(kind, label, Ids(gone), Headline with { Who = v => _electorate.CountsByPlan(v) && !ids.Contains(v.Id) });
    }

    private void Add(VariantKind kind, string label, string subject, Count count, bool tested = true, Planned? rule = null)
    {
        var scores = Rules.Score(_electorate, count, rule ?? Rule);
        if (!tested || scores.Denominator > FinestTested)
        {
            Record(kind, label, subject, Standing.Of(scores).Leaders, count, level: null);
            return;
        }

        _cancellation.ThrowIfCancellationRequested();
        var judged = Ladder.Judge(scores, _seed, _effort);
        Record(kind, label, subject, judged.Leaders, count, judged.Level);
    }

    private void Record(VariantKind kind, string label, string subject, ImmutableArray<int> leaders, Count count, int? level)
    {
        var tally = Tally.Of(_electorate.Ballots(count));
        var most = tally.Items.Max(i => i.FirstShare);
        var effect = !leaders.SequenceEqual(_judged.Leaders) ? VariantEffect.LeaderChanges
            : level is { } reached && reached != _judged.Level ? VariantEffect.LevelChanges
            : VariantEffect.Same;
        _found.Add(new(
            kind,
            label,
            subject,
            [.. leaders.Select(Id)],
            [.. Enumerable.Range(0, tally.Items.Length).Where(i => most > 0 && Math.Abs(tally.Items[i].FirstShare - most) < 1e-9).Select(Id)],
            [.. _wheels.Select(w => tally.Items[_electorate.OwnColumns[w.Id]].Firsts)],
            level,
            effect));
    }

    private string Id(int column) => _electorate.Wheels[column].Id;

    private static string Ids(IEnumerable<VoterRecord> voters) => string.Join(",", voters.Select(v => v.Id));
}
