using System.Collections.Immutable;
using Trier.Publishing.Writing;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts;
using Trier.Trials.Verdicts.Findings;

namespace Trier.Publishing.Charts;

/// <summary>Makes the every-ballot rack of a verdict: grouped by what was declared, most alike beside each other.</summary>
public static class VerdictRack
{
    private const int MostRows = 60;
    private const int MostKinds = 40;

    private static readonly ImmutableArray<(DeclaredTaste?, string)> Tastes =
        [(DeclaredTaste.Milder, "usually prefer milder"), (DeclaredTaste.Stronger, "usually prefer stronger"), (DeclaredTaste.NoIdea, "no idea"), (null, "did not say")];

    /// <summary>The rack.</summary>
    /// <param name="verdict">The verdict.</param>
    public static RackData Of(Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        var looks = VerdictLooks.Of(verdict.Record);
        var blind = verdict.Ballots.Where(ballot => ballot.Standing != StripStanding.Apart).ToList();
        var groups = blind.Count > MostRows ? [Gathered(verdict, blind, looks)] : ByTaste(verdict, blind, looks).ToList();
        var apart = verdict.Ballots.Where(ballot => ballot.Standing == StripStanding.Apart).Select(ballot => Row(verdict, ballot, looks)).ToList();
        var last = apart.Count == 0 ? null : new RackGroup("not blind, or kept apart as planned", apart, Before: "In no count:");
        if (last is not null) groups.Add(last);
        return new(
            [.. groups],
            last,
            verdict.Wheels.Length,
            [.. verdict.Wheels.Select(wheel => new RackKey(wheel.Name, wheel.Id, looks[wheel.Id]))],
            $"Each bar is one ballot: rind end first place, tip last.{Repeated(verdict)}",
            Notes(verdict),
            "Every ballot",
            Description(verdict));
    }

    /// <summary>What to say of wheels that were served twice, after a caption; empty where there are none.</summary>
    /// <param name="verdict">The verdict.</param>
    public static string Repeated(Verdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        var names = verdict.Repeats.Select(repeat => verdict.Sample(repeat.Counts).Name).Distinct(StringComparer.Ordinal).ToList();
        return names.Count switch
        {
            0 => "",
            1 => $" {names[0]} was served twice; the second serving is left out here.",
            _ => $" {string.Join(" and ", names)} were served twice; the second servings are left out here.",
        };
    }

    private static IEnumerable<RackGroup> ByTaste(Verdict verdict, List<BallotStrip> ballots, IReadOnlyDictionary<string, WheelLook> looks)
    {
        var asked = ballots.Any(ballot => ballot.Taste is not null);
        foreach (var (taste, title) in Tastes)
        {
            var rows = ballots.Where(ballot => ballot.Taste == taste)
                .OrderBy(ballot => ballot.Standing == StripStanding.NoPlaces)
                .ThenBy(ballot => Pattern(verdict, ballot), StringComparer.Ordinal)
                .Select(ballot => Row(verdict, ballot, looks))
                .ToList();
            if (rows.Count > 0) yield return asked ? new(title, rows, Before: "Said before tasting:") : new("every ballot", rows, After: ", most alike beside each other");
        }
    }

    /// <summary>Too many ballots for a row each: one row for all that are alike, with how many they are.</summary>
    private static RackGroup Gathered(Verdict verdict, List<BallotStrip> ballots, IReadOnlyDictionary<string, WheelLook> looks)
    {
        var kinds = ballots.GroupBy(ballot => Pattern(verdict, ballot), StringComparer.Ordinal).OrderByDescending(kind => kind.Count()).ThenBy(kind => kind.Key, StringComparer.Ordinal).ToList();
        var rows = kinds.Take(MostKinds).Select(kind => Row(verdict, kind.First(), looks) with { Name = $"{Numbers.Plain(kind.Count())} alike", NoteMarks = null }).ToList();
        var left = kinds.Skip(MostKinds).ToList();
        var after = left.Count == 0 ? ", gathered where they are alike" : $", gathered where they are alike; {Numbers.Plain(left.Sum(kind => kind.Count()))} more in {Numbers.Plain(left.Count)} rarer orders stand in the table";
        return new($"{Numbers.Plain(ballots.Count)} ballots", rows, After: after);
    }

    private static string Pattern(Verdict verdict, BallotStrip ballot) =>
        string.Join(' ', ballot.Groups.Append(ballot.Below).Select(group => string.Join('=', group.Select(id => verdict.Wheels.Select((wheel, index) => (wheel.Id, index)).FirstOrDefault(pair => pair.Id == id).index))));

    private static RackRow Row(Verdict verdict, BallotStrip ballot, IReadOnlyDictionary<string, WheelLook> looks)
    {
        var cells = new List<RackCell>();
        foreach (var group in ballot.Groups.Append(ballot.Below))
        {
            for (var i = 0; i < group.Length; i++) cells.Add(new(verdict.Sample(group[i]).Name, group[i], looks[group[i]], i > 0));
        }

        var missing = ballot.NotPlaced.Length > 0 && cells.Count > 0 ? $"no {string.Join(" and ", ballot.NotPlaced.Select(id => verdict.Sample(id).Name))}" : null;
        return new(ballot.Name, cells, Note(ballot), missing, cells.Count == 0 ? ballot.Remarks.Length > 0 ? string.Join("; ", ballot.Remarks) : "no places given" : null)
        {
            TornShort = missing is null ? null : $"no {string.Join(", ", ballot.NotPlaced)}",
        };
    }

    private static string? Note(BallotStrip ballot)
    {
        var marks = (ballot.Marks.HasFlag(VoterMarks.ComparedNotes) ? "†" : "") + (ballot.Marks.HasFlag(VoterMarks.Late) ? "‡" : "") + (ballot.Marks.HasFlag(VoterMarks.Junior) ? "°" : "");
        return marks.Length > 0 ? marks : null;
    }

    private static string Notes(Verdict verdict)
    {
        var notes = new List<string>();
        if (verdict.Ballots.Any(ballot => ballot.Marks.HasFlag(VoterMarks.ComparedNotes))) notes.Add("† compared notes.");
        if (verdict.Ballots.Any(ballot => ballot.Marks.HasFlag(VoterMarks.Late))) notes.Add("‡ came late.");
        if (verdict.Ballots.Any(ballot => ballot.Marks.HasFlag(VoterMarks.Junior))) notes.Add("° junior.");
        if (verdict.Ballots.Any(ballot => ballot.Groups.Any(group => group.Length > 1))) notes.Add("“=”: a tie with the one before.");
        if (verdict.Ballots.Any(ballot => ballot.NotPlaced.Length > 0 && ballot.Groups.Length + ballot.Below.Length > 0)) notes.Add("Torn end: fewer wheels tasted.");
        return string.Join(" ", notes);
    }

    private static string Description(Verdict verdict)
    {
        var counts = verdict.Tally.Select(line => $"{verdict.Sample(line.Id).Name} is first on {Numbers.Plain(line.Firsts)} and last on {Numbers.Plain(line.Lasts)}");
        var apart = verdict.Ballots.Count(ballot => ballot.Standing == StripStanding.Apart);
        return $"A row for each ballot, the wheels in the order of their places. Of {Numbers.Plain(verdict.Panel.Ballots)} ballots that count {string.Join("; ", counts)}.{(apart > 0 ? $" Not in the count, apart below: {Numbers.Plain(apart)}." : "")}";
    }
}
