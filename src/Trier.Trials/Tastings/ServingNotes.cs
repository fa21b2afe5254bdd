using System.Globalization;
using Trier.Trials.Common;
using Trier.Trials.Plans;
using Trier.Trials.Tastings.Plates;
using Trier.Trials.Verdicts;

namespace Trier.Trials.Tastings;

/// <summary>How the samples were served, where that is not the usual way and a verdict has to say so.</summary>
internal static class ServingNotes
{
    public static IEnumerable<DayNote> Of(DayBook book, IReadOnlyDictionary<TasterId, BallotHistory> ballots)
    {
        if (book.OpenedAt is not { } at) yield break;
        var rules = book.Plan.Serving ?? ServingRules.Usual;
        DayNote Note(string sentence) => new(DayNoteKind.Other, at, sentence);
        if (rules.WarmUp is { Length: > 0 } warmUp) yield return Note($"Everybody began with a warm-up sample ({warmUp}) that nobody judged.");
        var (came, expected) = (book.Present.Count(taster => book.Plate(taster.Id) is not null), book.Present.Count());
        if (came < expected) yield return Note($"{expected} were on the list and {came} came.");
        if (PlateFacts.Of(book) is { Efficiency: { } efficiency } facts)
            yield return Note(string.Create(CultureInfo.InvariantCulture, $"Every taster got {facts.Each} of the {facts.Samples} samples, shared out so that a comparison of two is worth {efficiency:P0} of one in which as many tastings were spent with everybody tasting all."));
        foreach (var entry in book.Standing.Where(entry => book.SecondFlight.Contains(entry.Wheel)).OrderBy(entry => entry.Label, StringComparer.Ordinal))
        {
            var likings = Likings(book, entry.Wheel, ballots).ToList();
            var liked = likings.Count == 0 ? "nobody said how they liked it" : string.Create(CultureInfo.InvariantCulture, $"{likings.Count} said how they liked it, {likings.Average():0.0} of 9 on average");
            yield return Note($"{entry.Name} was served in a second flight, after the others, and is not placed among them: {liked}.");
        }
    }

    private static IEnumerable<int> Likings(DayBook book, WheelId wheel, IReadOnlyDictionary<TasterId, BallotHistory> ballots) =>
        from taster in book.Tasters
        where !taster.KnowsTheKey && (!taster.Junior || book.Plan.JuniorsCount)
        let counted = ballots.GetValueOrDefault(taster.Id)?.Counted
        where counted is not null
        from answer in counted.Content.Answers
        where book.Key?[book.PutRight(taster.Id, answer.Key)]?.Wheel == wheel && answer.Value.Liking is not null
        select answer.Value.Liking!.Value;
}
