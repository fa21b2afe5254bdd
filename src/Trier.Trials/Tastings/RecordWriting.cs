using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tastings;

/// <summary>Turns a day book and its ballots into the record a verdict looks at: codes become samples, swaps are put right, withdrawn wheels leave the places.</summary>
internal static class RecordWriting
{
    public static TastingRecord Write(DayBook book, IReadOnlyDictionary<TasterId, BallotHistory> ballots)
    {
        var key = book.Key ?? throw new InvalidOperationException("A tasting without a key has no record.");
        var lines = key.Lines.Where(line => !book.IsWithdrawn(line.Wheel) && !book.SecondFlight.Contains(line.Wheel)).ToImmutableArray();
        var ids = lines.ToDictionary(line => line.Code, line => SampleId(book, line));
        var samples = lines.GroupBy(line => ids[line.Code], StringComparer.Ordinal).OrderBy(same => same.Key, StringComparer.Ordinal).Select(same => Sample(book, [.. same])).ToImmutableArray();
        var voices = Voices.Of(book);
        ballots = book.Tasters
            .Where(taster => ballots.ContainsKey(taster.Id))
            .ToDictionary(taster => taster.Id, taster => taster.LetGoAt is { } gone ? ballots[taster.Id].Until(gone, book.Admitted) : ballots[taster.Id]);
        var voters = book.Tasters
            .Where(taster => book.Plate(taster.Id) is not null && (!taster.LetGo || ballots.GetValueOrDefault(taster.Id)?.Counted is not null))
            .Select(taster => VoterWriting.Write(book, taster, ballots.GetValueOrDefault(taster.Id) ?? BallotHistory.None, ids, voices))
            .ToImmutableArray();
        var withdrawals = book.Withdrawals.Select(withdrawal => Withdrawn(book, key, withdrawal, ballots)).ToImmutableArray();
        return new TastingRecord(
            new RecordHead(book.Plan.Title, book.Plan.Question, book.Plan.Host, book.Plan.Day ?? DayOf(book), book.Plan.Invented, FromFile: false),
            new JudgingPlan(book.Plan.Rule, book.Plan.JuniorsCount),
            samples,
            voters,
            withdrawals,
            DayNotes.Of(book, ballots));
    }

    internal static string SampleId(DayBook book, KeyLine line)
    {
        var label = book.Entry(line.Wheel)!.Label;
        return line.Counts ? label : $"{label} again";
    }

    private static SampleRecord Sample(DayBook book, ImmutableArray<KeyLine> same)
    {
        var (entry, counts) = (book.Entry(same[0].Wheel)!, same[0].Counts);
        return new SampleRecord(
            SampleId(book, same[0]),
            counts ? entry.Name : $"{entry.Name} again",
            same.FirstOrDefault(line => line.Plate is null)?.Code.ToString(),
            counts ? null : entry.Label,
            entry.Mark,
            entry.Facts);
    }

    private static WithdrawalRecord Withdrawn(DayBook book, Key key, Withdrawal withdrawal, IReadOnlyDictionary<TasterId, BallotHistory> ballots)
    {
        var entry = book.Entry(withdrawal.Wheel)!;
        var codes = key.Of(withdrawal.Wheel).Select(line => line.Code).ToHashSet();
        var had = book.Tasters
            .Where(taster => ballots.GetValueOrDefault(taster.Id)?.All.Any(revision => revision.ReceivedAt <= withdrawal.At && Codes(revision.Content).Any(code => codes.Contains(book.PutRight(taster.Id, code)))) == true)
            .Select(taster => taster.Name);
        return new WithdrawalRecord(entry.Label, entry.Name, withdrawal.At, withdrawal.Reason, withdrawal.WhileTasting, [.. had], entry.Mark);
    }

    private static IEnumerable<BlindCode> Codes(Ballot ballot) => ballot.Answers.Keys.Concat(ballot.Places.SelectMany(group => group));

    private static DateOnly? DayOf(DayBook book) => book.OpenedAt is { } opened ? DateOnly.FromDateTime(opened.DateTime) : null;
}
