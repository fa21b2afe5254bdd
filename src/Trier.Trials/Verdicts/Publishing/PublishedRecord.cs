using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Makes;
using Trier.Trials.Tastings;
using Trier.Trials.Verdicts.Counting;

namespace Trier.Trials.Verdicts.Publishing;

/// <summary>
/// The record as strangers may read it. It is built anew from what may be told, so that whatever a later station adds to a record stays at
/// home until somebody decides otherwise here. A taster is a number, unless they agreed to be named; their remarks and words are there only where
/// they agreed to be quoted; of the marks of the day only those the verdict counts by. A reason of health is never among them, and nobody
/// under 12 is ever named, whatever was agreed. What else was asked is told as counts, wheel by wheel. The verdict drawn from it has the same counts, tests and level.
/// </summary>
public static class PublishedRecord
{
    private const VoterMarks Told = VoterMarks.LeftEarly | VoterMarks.Late | VoterMarks.Junior | VoterMarks.Corrected | VoterMarks.ComparedNotes | VoterMarks.AdmittedAfterClose | VoterMarks.FewerSamples | VoterMarks.AfterKeyOpened;

    /// <summary>What may be published of a record. Applied to what it gives, it gives the same again.</summary>
    /// <param name="record">The whole record.</param>
    public static TastingRecord Of(TastingRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        var numbers = Numbers(record);
        string Name(VoterRecord voter) => MayBeNamed(voter) ? voter.Name : $"Taster {int.Parse(numbers[voter.Id].AsSpan(1), CultureInfo.InvariantCulture)}";
        var groups = Groups(record);
        var published = record.Voters.ToLookup(voter => voter.Name, Name, StringComparer.Ordinal);
        return new TastingRecord(
            new(record.Head.Title, record.Head.Question, record.Head.Host, record.Head.Day, record.Head.Invented, record.Head.FromFile),
            new(record.Plan.Rule, record.Plan.JuniorsCount),
            [.. record.Samples.Select(sample => new SampleRecord(sample.Id, sample.Name, sample.Code, sample.RepeatOf, sample.Mark, Facts(sample.Facts)))],
            [.. record.Voters.Select(voter => Of(voter, numbers[voter.Id], Name(voter), voter.Group is { } group ? groups[group] : null, record))],
            [.. record.Withdrawals.Select(gone => gone with { HadIt = [.. gone.HadIt.Select(name => published[name].FirstOrDefault() ?? "one who is not listed")] })],
            [.. record.Notes.Where(note => note.Published.Length > 0).Select(note => new DayNote(note.Kind, note.At, note.Published) { Published = note.Published })])
        {
            InputCautions = record.InputCautions.IsEmpty ? [] : [Noticed],
            Asked = AskedAfter.Counts(record),
        };
    }

    private const string Noticed = "Reading the ballots noticed gaps or rare codes; they are used as they stand.";

    private static VoterRecord Of(VoterRecord voter, string id, string name, string? group, TastingRecord record)
    {
        var marks = voter.Marks & Told;
        return new VoterRecord(
            id,
            name,
            voter.Role,
            marks,
            Quiet(voter, marks, record),
            voter.Taste,
            voter.Voice,
            voter.ServingOrder,
            voter.Places,
            voter.Below,
            voter.Answers.ToImmutableSortedDictionary(pair => pair.Key, pair => Of(pair.Value, voter.Agreed.Quoted), StringComparer.Ordinal))
        {
            Named = voter.Named,
            Sitting = voter.Sitting,
            Group = group,
            Agreed = new(MayBeNamed(voter), voter.Agreed.Quoted),
        };
    }

    private static SampleAnswer Of(SampleAnswer answer, bool quoted) => new()
    {
        Liking = answer.Liking,
        Salt = answer.Salt,
        Words = quoted ? answer.Words : [],
        Remark = quoted ? answer.Remark : null,
    };

    private static ImmutableArray<string> Quiet(VoterRecord voter, VoterMarks marks, TastingRecord record)
    {
        var quiet = ImmutableArray.CreateBuilder<string>();
        if (voter.Role == VoterRole.KnewTheKey) quiet.Add("knew the key");
        if (marks.HasFlag(VoterMarks.Junior)) quiet.Add("junior");
        if (marks.HasFlag(VoterMarks.Late)) quiet.Add("came late");
        if (marks.HasFlag(VoterMarks.ComparedNotes)) quiet.Add("compared notes");
        if (marks.HasFlag(VoterMarks.LeftEarly)) quiet.Add("left early");
        if (marks.HasFlag(VoterMarks.AdmittedAfterClose)) quiet.Add("came after the close and was let in");
        if (marks.HasFlag(VoterMarks.AfterKeyOpened)) quiet.Add("after the key was opened");
        if (marks.HasFlag(VoterMarks.Corrected)) quiet.Add("a slip put right");
        if (voter.Places.IsEmpty && !record.Head.FromFile) quiet.Add("no places given");
        return quiet.ToImmutable();
    }

    private static bool MayBeNamed(VoterRecord voter) => voter.Agreed.Named && !voter.Marks.HasFlag(VoterMarks.Junior);

    /// <summary>Notes are the maker's own words to themselves.</summary>
    private static WheelFacts Facts(WheelFacts facts) =>
        WheelFacts.Of(facts.Values.Where(fact => fact.Key != WheelFacts.NotesFact).Select(fact => KeyValuePair.Create(fact.Key, (string?)fact.Value)));

    /// <summary>A group may be called after a person, so groups are numbered, in the order they are told in.</summary>
    private static Dictionary<string, string> Groups(TastingRecord record)
    {
        var names = record.Voters.Select(voter => voter.Group).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase).ToList();
        var digits = names.Count.ToString(CultureInfo.InvariantCulture).Length;
        return names.Select((name, index) => (name, Number: "group " + (index + 1).ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0'))).ToDictionary(pair => pair.name, pair => pair.Number, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>A trial's tasters are numbered already; a file's may stand by name and get numbers in the order that chance is dealt in, so that the verdict stays the same.</summary>
    private static Dictionary<string, string> Numbers(TastingRecord record)
    {
        if (record.Voters.All(voter => voter.Id is ['T', .. { Length: >= 2 } digits] && digits.All(char.IsAsciiDigit)))
            return record.Voters.ToDictionary(voter => voter.Id, voter => voter.Id, StringComparer.Ordinal);
        var digits = Math.Max(2, record.Voters.Length.ToString(CultureInfo.InvariantCulture).Length);
        return record.Voters
            .OrderBy(voter => voter.Id, StringComparer.Ordinal)
            .Select((voter, index) => (voter.Id, Number: "T" + (index + 1).ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0')))
            .ToDictionary(pair => pair.Id, pair => pair.Number, StringComparer.Ordinal);
    }
}
