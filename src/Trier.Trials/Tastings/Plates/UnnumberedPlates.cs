using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Plates;

/// <summary>Tastings sealed before plates had numbers: one square of orders, dealt in turn.</summary>
internal static class UnnumberedPlates
{
    /// <summary>A plate for somebody who joins: the order that fewest plates have used so far.</summary>
    public static Plate NextPlate(DayBook book, TasterId taster)
    {
        var key = book.Key!;
        var used = book.Present.Select(present => book.Plate(present.Id)).OfType<Plate>().ToList();
        var least = book.Orders.OrderBy(order => used.Count(plate => Follows(plate, order))).First();
        return new Plate(taster, Without(key, least, book.Withdrawals.Select(withdrawal => withdrawal.Wheel).ToHashSet()));
    }

    /// <summary>The plate of a taster dealt again without some wheels: the others keep their order, and a wheel put back returns to its place.</summary>
    public static Plate PlateWithout(DayBook book, TasterId taster, IEnumerable<WheelId> wheels)
    {
        var dealt = book.Plate(taster)!;
        var order = book.Orders.FirstOrDefault(candidate => Follows(dealt, candidate), dealt.Codes);
        return new Plate(taster, Without(book.Key!, order, wheels.ToHashSet()));
    }

    private static bool Follows(Plate plate, ImmutableArray<BlindCode> order) => plate.Codes.SequenceEqual(order.Where(plate.Codes.Contains));

    private static ImmutableArray<BlindCode> Without(Key key, ImmutableArray<BlindCode> order, IReadOnlySet<WheelId> wheels) =>
        [.. order.Where(code => !wheels.Contains(key[code]!.Wheel))];
}
