using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tastings;

/// <summary>How long the samples had been out of the cold when they were tasted, where that was not alike for all.</summary>
internal static class WarmingNotes
{
    // In twenty minutes a small cube warms by a degree or more, which a palate can tell (common practice, no source).
    private static readonly TimeSpan Alike = TimeSpan.FromMinutes(20);

    public static IEnumerable<DayNote> Of(DayBook book, IReadOnlyDictionary<TasterId, BallotHistory> ballots)
    {
        // A later sitting is cut from halves that stayed in the cold, and when those left it is not noted.
        if (book.TakenOutAt is not { } taken || book.Tasters.Select(taster => taster.Sitting).Distinct().Count() > 1) yield break;
        // Paper is typed in later, and says nothing of when it was written.
        var seen = ballots.Values.SelectMany(history => history.All)
            .Where(revision => revision is { Standing: BallotStanding.InTime, Source: BallotSource.Phone or BallotSource.Scribe } && revision.ReceivedAt > taken)
            .Select(revision => revision.ReceivedAt - taken)
            .ToList();
        if (seen.Count == 0 || seen.Max() - seen.Min() < Alike) yield break;
        var sentence = string.Create(CultureInfo.InvariantCulture, $"What was said came in from {seen.Min().TotalMinutes:0} to {seen.Max().TotalMinutes:0} minutes after the wheels had left the cave: what stood longer was warmer, and what that did to the liking cannot be told.");
        yield return new(DayNoteKind.Other, taken, sentence) { Published = sentence };
    }
}
