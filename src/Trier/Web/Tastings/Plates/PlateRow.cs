using System.Collections.Immutable;
using Trier.Trials.Tastings;

namespace Trier.Web.Tastings.Plates;

/// <summary>One plate as pages and cards show it.</summary>
/// <param name="Number">Its number, or null in a tasting sealed before plates had numbers.</param>
/// <param name="Taster">Whose it is, or null where that is settled when somebody comes.</param>
/// <param name="Codes">What is served on it now, in order.</param>
/// <param name="Spare">Whether it is planned for nobody on the list.</param>
internal sealed record PlateRow(int? Number, Taster? Taster, ImmutableArray<BlindCode> Codes, bool Spare)
{
    /// <summary>Whether it bears a name.</summary>
    public bool Named => Taster is not null;

    /// <summary>What it is called.</summary>
    public string Title => Taster?.Name ?? (Spare ? $"Spare plate {Number}" : $"Plate {Number}");

    /// <summary>
    /// The plates of a sealed tasting: those with a name in the order of the list, then those that wait for somebody, then spares. Plates that are left over because
    /// somebody was taken off the list count as spares.
    /// </summary>
    public static IReadOnlyList<PlateRow> All(DayBook book)
    {
        var named = book.Present.Where(taster => book.Plate(taster.Id) is not null).Select(taster => new PlateRow(book.Plate(taster.Id)!.Number, taster, book.Served(taster.Id), Spare: false)).ToList();
        if (book.PlannedPlates is not { } planned) return named;
        var taken = (book.OpenedAt is null ? book.Present : book.Tasters).Select(taster => book.Plate(taster.Id)?.Number).ToHashSet();
        var waiting = book.Present.Count(taster => book.IsExpected(taster) && book.Plate(taster.Id) is null);
        var free = Enumerable.Range(1, book.Orders.Length).Where(number => !taken.Contains(number)).ToList();
        return
        [
            .. named,
            .. free.Select((number, index) => new PlateRow(number, null, [.. book.Orders[number - 1].Where(code => !book.IsWithdrawn(book.Key![code]!.Wheel))], Spare: index >= waiting)),
        ];
    }
}
