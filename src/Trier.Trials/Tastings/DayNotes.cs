using System.Collections.Immutable;
using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tastings;

/// <summary>What happened on the day that a verdict has to say, in plain sentences.</summary>
internal static class DayNotes
{
    public static ImmutableArray<DayNote> Of(DayBook book, IReadOnlyDictionary<TasterId, BallotHistory> ballots)
    {
        var notes = ImmutableArray.CreateBuilder<DayNote>();
        foreach (var opening in book.KeyOpenings.Where(opening => opening.Early))
            notes.Add(new(DayNoteKind.KeyOpenedEarly, opening.At, $"{opening.By} opened the key at {Clock(opening.At)}, before the reveal: ballots sent after that are marked.") { Published = $"The key was opened at {Clock(opening.At)}, before the reveal: ballots sent after that are marked." });
        foreach (var learned in book.Learned)
            notes.Add(new(DayNoteKind.KeyLearned, learned.At, $"{book.Taster(learned.Taster)!.Name} knew the key from {Clock(learned.At)} on: a ballot sent after that is shown apart.") { Published = $"A taster knew the key from {Clock(learned.At)} on: a ballot sent after that is shown apart." });
        foreach (var spoken in book.Spoken)
            notes.Add(new(DayNoteKind.SpokenAloud, spoken.At, $"At {Clock(spoken.At)} somebody said aloud what sample {spoken.Code} was{(spoken.Words is null ? "" : $": “{spoken.Words}”")}. From then on it was not fully blind.") { Published = $"At {Clock(spoken.At)} somebody said aloud what sample {spoken.Code} was. From then on it was not fully blind." });
        foreach (var swap in book.Swaps)
            notes.Add(new(DayNoteKind.CodesSwapped, swap.At, $"On {book.Taster(swap.Taster)!.Name}’s plate samples {swap.First} and {swap.Second} had changed places ({swap.Reason}; seen by {swap.Witness}). That ballot is read the right way round.") { Published = $"On one plate samples {swap.First} and {swap.Second} had changed places. That ballot is read the right way round." });
        foreach (var fallen in book.Dropped)
            notes.Add(new(DayNoteKind.Other, fallen.At, $"A sample ({fallen.Code}) of {book.Taster(fallen.Taster)!.Name} fell{(fallen.Replaced ? " and another was brought." : "; that plate went on without it.")}") { Published = fallen.Replaced ? $"A sample ({fallen.Code}) fell and another was brought." : $"A sample ({fallen.Code}) fell; that plate went on without it." });
        foreach (var again in book.MadeAgain)
            notes.Add(new(DayNoteKind.Other, again.At, $"Plate {again.Number} was made again at {Clock(again.At)}: {again.Reason}") { Published = $"Plate {again.Number} was made again." });
        foreach (var reopened in book.Reopenings)
            notes.Add(new(DayNoteKind.Reopened, reopened.At, $"The tasting was closed and opened again at {Clock(reopened.At)}: {reopened.Reason}") { Published = $"The tasting was closed and opened again at {Clock(reopened.At)}." });
        notes.AddRange(LateBallots(book, ballots));
        notes.AddRange(ServingNotes.Of(book, ballots));
        notes.AddRange(WarmingNotes.Of(book, ballots));
        foreach (var correction in book.Corrections.OfType<EntryCorrected>())
            notes.Add(new(DayNoteKind.Correction, correction.At, $"What is known of {correction.Name} was corrected at {Clock(correction.At)}; the old record is kept.") { Published = $"What is known of {correction.Name} was corrected; the old record is kept." });
        foreach (var correction in book.Corrections.OfType<TasterCorrected>())
            notes.Add(new(DayNoteKind.Correction, correction.At, $"{correction.Name} was marked as {(correction.Junior ? "under 12" : "12 or older")} at {Clock(correction.At)}, after the sealing; the old record is kept.") { Published = "Who counts as a junior was corrected after the sealing; the old record is kept." });
        foreach (var mended in book.Mended)
            notes.Add(new(DayNoteKind.Correction, mended.At, $"The ballot of {book.Taster(mended.Taster)!.Name} was put right after the reveal ({mended.Reason}; seen by {mended.Witness}); the old record is kept.") { Published = "A ballot that had been taken in wrongly was put right after the reveal; the old record is kept." });
        return [.. notes.OrderBy(note => note.At).ThenBy(note => note.Sentence, StringComparer.Ordinal)];
    }

    private static IEnumerable<DayNote> LateBallots(DayBook book, IReadOnlyDictionary<TasterId, BallotHistory> ballots)
    {
        foreach (var taster in book.Tasters)
        {
            var history = ballots.GetValueOrDefault(taster.Id) ?? BallotHistory.None;
            foreach (var late in history.All.Where(revision => revision.Standing == BallotStanding.AfterClose))
            {
                var said = !book.Admitted.Contains(late.Id) ? "it is kept and does not count"
                    : late.Id == history.Counted?.Id ? "it was let in before the reveal"
                    : "it was let in before the reveal, but a later one counts";
                yield return new(DayNoteKind.LateBallot, late.ReceivedAt, $"A ballot of {taster.Name} arrived at {Clock(late.ReceivedAt)}, after the close: {said}.") { Published = $"A ballot arrived at {Clock(late.ReceivedAt)}, after the close: {said}." };
            }
        }
    }

    private static string Clock(DateTimeOffset at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);
}
