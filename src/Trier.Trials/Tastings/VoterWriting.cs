using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tastings;

/// <summary>Writes one taster's ballot in sample ids, with the marks of the day.</summary>
internal static class VoterWriting
{
    public static VoterRecord Write(
        DayBook book,
        Taster taster,
        BallotHistory history,
        Dictionary<BlindCode, string> ids,
        IReadOnlyDictionary<TasterId, int> voices)
    {
        string? Sample(BlindCode code) => ids.GetValueOrDefault(book.PutRight(taster.Id, code));

        var current = history.Counted;
        var mended = book.MendedOf(taster.Id);
        var ballot = mended?.Ballot ?? current?.Content ?? Ballot.Empty;
        var places = mended is not null || current?.Stage == BallotStage.Sent ? ballot.Places : [];
        var groups = places
            .Select(group => group.Select(Sample).OfType<string>().Order(StringComparer.Ordinal).ToImmutableArray())
            .Where(group => group.Length > 0)
            .ToImmutableArray();
        var answers = ballot.Answers
            .Select(pair => (Sample: Sample(pair.Key), Answer: pair.Value))
            .Where(pair => pair.Sample is not null)
            .ToImmutableSortedDictionary(pair => pair.Sample!, pair => pair.Answer, StringComparer.Ordinal);
        var order = book.Plate(taster.Id)!.Codes.Select(Sample).OfType<string>().ToImmutableArray();
        return new VoterRecord(
            taster.Label,
            taster.Name,
            KnewTheKey(book, taster, current) ? VoterRole.KnewTheKey : VoterRole.Guest,
            MarksOf(book, taster, current, ballot, groups, order, ids),
            Quiet(book, taster, current, ballot),
            taster.Taste,
            voices.TryGetValue(taster.Id, out var voice) ? voice : null,
            order,
            groups,
            [],
            answers)
        {
            Sitting = taster.Sitting,
            Agreed = taster.Agreed,
            Group = taster.Group,
            Named = [.. Spoken(book, taster, current).Select(spoken => ids.GetValueOrDefault(book.PutRight(taster.Id, spoken.Code))).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
        };
    }

    private static VoterMarks MarksOf(
        DayBook book,
        Taster taster,
        BallotRevision? current,
        Ballot ballot,
        ImmutableArray<ImmutableArray<string>> groups,
        ImmutableArray<string> order,
        Dictionary<BlindCode, string> ids)
    {
        var marks = VoterMarks.None;
        if (book.Left.Any(left => left.Taster == taster.Id)) marks |= VoterMarks.LeftEarly;
        if (book.Late.Any(late => late.Taster == taster.Id)) marks |= VoterMarks.Late;
        if (taster.Junior) marks |= VoterMarks.Junior;
        if (book.Compared.Any(compared => compared.Tasters.Contains(taster.Id))) marks |= VoterMarks.ComparedNotes;
        if (book.Swaps.Any(swap => swap.Taster == taster.Id) || book.MendedOf(taster.Id) is not null || ballot.Answers.Values.Any(answer => answer.FirstLiking is not null)) marks |= VoterMarks.Corrected;
        if (current?.Standing == BallotStanding.AfterClose) marks |= VoterMarks.AdmittedAfterClose;
        var most = book.Plates.Values.Max(plate => plate.Codes.Count(ids.ContainsKey));
        if (order.Length < most || groups.Sum(group => group.Length) < most) marks |= VoterMarks.FewerSamples;
        if (AfterOpening(book, current)) marks |= VoterMarks.AfterKeyOpened;
        if (taster.NoSmell) marks |= VoterMarks.LittleSmell;
        if (ballot.Answers.Values.Any(answer => answer.Unclear is not null)) marks |= VoterMarks.Unclear;
        return marks;
    }

    private static ImmutableArray<string> Quiet(DayBook book, Taster taster, BallotRevision? current, Ballot ballot)
    {
        var quiet = ImmutableArray.CreateBuilder<string>();
        if (KnewTheKey(book, taster, current)) quiet.Add("knew the key");
        if (taster.Junior) quiet.Add("junior");
        if (book.Late.FirstOrDefault(late => late.Taster == taster.Id) is { } late) quiet.Add($"came {Clock(late.At)}");
        foreach (var wheel in taster.LeftOff.Select(book.Entry).OfType<Entry>().Where(entry => !book.IsWithdrawn(entry.Wheel)).OrderBy(entry => entry.Label, StringComparer.Ordinal))
            quiet.Add($"no {wheel.Name}");
        if (book.Compared.FirstOrDefault(compared => compared.Tasters.Contains(taster.Id)) is { } compared) quiet.Add($"compared notes {Clock(compared.At)}");
        if (book.Left.FirstOrDefault(left => left.Taster == taster.Id) is { } left) quiet.Add($"left {Clock(left.At)}");
        if (book.Swaps.Any(swap => swap.Taster == taster.Id)) quiet.Add("codes put right");
        if (book.MendedOf(taster.Id) is not null) quiet.Add("put right after the reveal");
        if (taster.Group is { } group) quiet.Add($"tasted with {group}");
        if (taster.Scribe is { } scribe) quiet.Add($"written down by {scribe}");
        if (current?.Source == BallotSource.Paper) quiet.Add("on paper");
        if (current?.Source == BallotSource.Scribe && taster.Scribe is null) quiet.Add("written by another hand");
        if (ballot.Answers.Values.Any(answer => answer.Unclear is not null)) quiet.Add("a place on paper unclear");
        if (current?.Standing == BallotStanding.AfterClose) quiet.Add($"sent {Clock(current.ReceivedAt)}, after the close; let in");
        if (current is { Stage: BallotStage.Tasting }) quiet.Add("not sent: likings kept, no places");
        foreach (var spoken in Spoken(book, taster, current)) quiet.Add($"after {book.Entry(book.Key![spoken.Code]!.Wheel)!.Name} was named aloud");

        if (AfterOpening(book, current)) quiet.Add("after the key was opened");
        return quiet.ToImmutable();
    }

    private static IEnumerable<IdentitySpoken> Spoken(DayBook book, Taster taster, BallotRevision? current) =>
        book.Spoken.Where(spoken => current is not null && spoken.At <= current.ReceivedAt && book.Key?[spoken.Code] is not null && book.Plate(taster.Id)!.Codes.Contains(spoken.Code));

    private static bool KnewTheKey(DayBook book, Taster taster, BallotRevision? current) =>
        taster.KnowsTheKey || (current is not null && book.Learned.Any(learned => learned.Taster == taster.Id && learned.At <= current.ReceivedAt));

    private static bool AfterOpening(DayBook book, BallotRevision? current) =>
        current is not null && book.KeyOpenings.Any(opening => opening.Early && opening.At <= current.ReceivedAt);

    private static string Clock(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);
}
