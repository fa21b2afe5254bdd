namespace Trier.Trials.Tastings.Plates;

/// <summary>Plates that are planned for nobody on the list.</summary>
public static class SparePlates
{
    /// <summary>How many are planned: enough for a walk-in or two, a plate that falls, and a sample somebody drops (our choice, no source).</summary>
    /// <param name="tasters">People on the list, 0 or more.</param>
    public static int For(int tasters) => Math.Max(4, tasters / 4);

    /// <summary>How many a trial has: those of its plan of plates once the key is sealed, before that those that will be planned.</summary>
    /// <param name="book">The day book.</param>
    public static int Of(DayBook book) => book.PlannedPlates is { } planned ? Math.Max(0, book.Orders.Length - planned) : For(book.Present.Count());
}
