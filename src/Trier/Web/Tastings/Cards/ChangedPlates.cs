using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Events;
using Trier.Trials.Tastings.Steps;

namespace Trier.Web.Tastings.Cards;

/// <summary>Which plates the last key changed, so that only their papers are printed again.</summary>
internal static class ChangedPlates
{
    /// <summary>Numbers of plates whose codes, order or owner are not those before the last key; empty where there was no key before.</summary>
    public static IReadOnlyCollection<int> Of(DayBook book)
    {
        if (book.PlannedPlates is null || book.Log.LastOrDefault(logged => logged.Event is KeySealed) is not { } sealing) return [];
        // What was done along with the key (a wheel withdrawn, a sample left off) belongs to the change, so the day is read as it was before that minute's acts.
        var log = book.Log.TakeWhile(logged => logged.Sequence < sealing.Sequence).ToList();
        while (log.Count > 0 && log[^1].Event is WheelWithdrawn or RepeatChosen or SampleLeftOff or GuestsCounted && log[^1].Event.At == sealing.Event.At) log.RemoveAt(log.Count - 1);
        if (log.Count == 0 || Tasting.Read(book.Trial, log).Book is not { Key: not null } before) return [];
        var old = Plates.PlateRow.All(before).ToDictionary(row => row.Number ?? 0);
        return [.. Plates.PlateRow.All(book).Where(row => !row.Spare && !(old.TryGetValue(row.Number ?? 0, out var was) && was.Codes.SequenceEqual(row.Codes) && was.Taster?.Id == row.Taster?.Id)).Select(row => row.Number ?? 0)];
    }
}
