using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Shared;

namespace Trier.Web.Plans;

/// <summary>The stations a page can stand at.</summary>
public enum Station
{
    /// <summary>Question, wheels, tasters.</summary>
    Plan,

    /// <summary>Plates and the room.</summary>
    Taste,

    /// <summary>The verdict.</summary>
    Decide,
}

/// <summary>Where a trial stands on the six stations.</summary>
internal static class Stations
{
    public static string Where(Tasting tasting) => tasting switch
    {
        DraftTasting => "a draft",
        SealedTasting => "key sealed, plates dealt",
        OpenTasting => "tasting now",
        ClosedTasting => "ballots closed, key sealed",
        RevealedTasting => "key opened",
        _ => throw new NotSupportedException($"No words for {tasting.GetType().Name}."),
    };

    public static IReadOnlyList<IronStation> Of(Tasting tasting)
    {
        var book = tasting.Book;
        var trial = $"/trials/{book.Trial.Value}";
        var recipes = book.Entries.Select(entry => entry.Facts.Recipe ?? entry.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count();
        var draft = tasting is DraftTasting;
        // A wheel without a make date may not be made yet; nothing is cut, and no age is reached, before the day.
        var made = !book.Standing.Any() || book.Standing.Any(entry => entry.Facts.MadeOn is null) ? StationState.ToCome : StationState.Done;
        var cut = draft || tasting is SealedTasting ? StationState.ToCome : StationState.Done;
        var tasted = tasting is ClosedTasting or RevealedTasting;
        return
        [
            new("Plan", $"{Count(recipes, "recipe")}, {Count(book.Entries.Length, "wheel")}", draft ? StationState.Now : StationState.Done, trial),
            new("Make", MadeWords(book), made),
            new("Age", AgeWords(book, cut == StationState.ToCome), cut),
            new("Cut", CutWords(book), cut, $"{trial}#wheels"),
            new("Taste", TasteWords(tasting), draft ? StationState.ToCome : tasted ? StationState.Done : StationState.Now, draft ? $"{trial}#seal" : tasting is SealedTasting ? $"{trial}/plates" : $"{trial}/board"),
            new("Decide", tasting switch { RevealedTasting => $"key opened {Dates.Clock(book.RevealedAt!.Value)}", ClosedTasting => "key still sealed", _ => "after the key is opened" }, tasted ? StationState.Now : StationState.ToCome, tasting is RevealedTasting ? $"{trial}/verdict" : null),
        ];
    }

    private static string Count(int number, string word) => number == 1 ? $"1 {word}" : $"{number} {word}s";

    private static string MadeWords(DayBook book)
    {
        var days = book.Entries.Select(entry => entry.Facts.MadeOn).OfType<DateOnly>().Order().ToList();
        return days.Count == 0 ? "dates not noted" : days[0] == days[^1] ? Dates.Write(days[0]) : $"{Dates.Write(days[0])} to {Dates.Write(days[^1])}";
    }

    private static string AgeWords(DayBook book, bool ahead)
    {
        var on = book.Plan.Day ?? (book.OpenedAt is { } opened ? DateOnly.FromDateTime(opened.DateTime) : (DateOnly?)null);
        var ages = book.Entries.Select(entry => on is { } day ? day.DayNumber - entry.Facts.MadeOn?.DayNumber : null).OfType<int>().Order().ToList();
        return ages.Count == 0 ? "ages not known" : $"{(ages[0] == ages[^1] ? $"{ages[0]}" : $"{ages[0]} to {ages[^1]}")} days{(ahead ? " on the day" : "")}";
    }

    private static string CutWords(DayBook book) =>
        book.Withdrawals.Length == 0 ? $"{book.Standing.Count()} to serve" : $"{book.Standing.Count()} to serve, {book.Withdrawals.Length} withdrawn";

    private static string TasteWords(Tasting tasting) => tasting switch
    {
        DraftTasting => $"{Count(tasting.Book.Present.Count(), "taster")} on the list",
        SealedTasting => $"{Count(tasting.Book.Present.Count(tasting.Book.IsExpected), "plate")} dealt",
        OpenTasting => $"open since {Dates.Clock(tasting.Book.OpenedAt!.Value)}",
        _ => $"closed {Dates.Clock(tasting.Book.ClosedAt!.Value)}",
    };
}
