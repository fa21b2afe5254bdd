using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Plates;

/// <summary>Which plate comes next.</summary>
internal static class NextPlates
{
    /// <summary>Numbers of plates nobody has, lowest first. Once plates are out, the plate of somebody who was taken off the list is not free: it was carried to them.</summary>
    public static IEnumerable<int> Free(DayBook book)
    {
        var holders = book.OpenedAt is null ? book.Present : book.Tasters;
        var taken = holders.Select(taster => book.Plate(taster.Id)?.Number).OfType<int>().ToHashSet();
        return Enumerable.Range(1, book.Orders.Length).Where(number => !taken.Contains(number)).DefaultIfEmpty(Math.Max(book.Orders.Length, taken.DefaultIfEmpty(0).Max()) + 1);
    }

    /// <summary>The plate for somebody who joins or comes.</summary>
    public static Plate For(DayBook book, TasterId taster)
    {
        if (book.PlannedPlates is null) return UnnumberedPlates.NextPlate(book, taster);
        return Numbered(book, taster, Free(book).First());
    }

    /// <summary>The plate of a number.</summary>
    public static Plate Numbered(DayBook book, TasterId taster, int number) => new(taster, Codes(book, number)) { Number = number };

    // When even the spares are out, orders are used again, those of plates with a sample left off apart.
    private static ImmutableArray<BlindCode> Codes(DayBook book, int number)
    {
        var again = book.Orders.Where((_, index) => !book.Tasters.Any(holder => holder.LeftOff.Count > 0 && book.Plate(holder.Id)?.Number == index + 1)).ToList();
        var order = number <= book.Orders.Length || again.Count == 0 ? book.Orders[(number - 1) % book.Orders.Length] : again[(number - 1) % again.Count];
        return [.. order.Where(code => !book.IsWithdrawn(book.Key![code]!.Wheel))];
    }
}
