using System.Collections.Immutable;
using Trier.Statistics.Designs;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings;

/// <summary>Deals plates from balanced serving orders.</summary>
internal static class Dealing
{
    /// <summary>
    /// Balanced orders of the codes: each sample in each position equally often, each following each other as evenly as may be, and a repeated
    /// wheel never right after itself. Which code takes which part in the design, and the order of the rows, is drawn.
    /// </summary>
    public static ImmutableArray<ImmutableArray<BlindCode>> Orders(ImmutableArray<KeyLine> lines, Seed seed)
    {
        var codes = lines.Select(line => line.Code).ToArray();
        var check = lines.FirstOrDefault(line => !line.Counts);
        var counted = check is null ? null : lines.First(line => line.Wheel == check.Wheel && line.Counts);
        var rows = Rows(codes.Length, counted is null || check is null ? null : (lines.IndexOf(counted), lines.IndexOf(check)), seed);
        return [.. rows.Select(row => row.Select(item => codes[item]).ToImmutableArray())];
    }

    private static ImmutableArray<ImmutableArray<int>> Rows(int samples, (int Counted, int Check)? repeat, Seed seed)
    {
        // One whole design: its rows are used in turn, so that any number of tasters is served as evenly as may be.
        if (repeat is { } pair && ServingOrders.WithRepeat(samples, samples, pair.Counted, pair.Check, seed) is { Stands: true } apart) return apart.Value;
        return ServingOrders.Williams(samples, ServingOrders.Square(samples).Length, seed);
    }

    /// <summary>A plate for everyone on the list, the orders used in turn.</summary>
    public static ImmutableArray<Plate> Plates(DayBook book, Key key, ImmutableArray<ImmutableArray<BlindCode>> orders) =>
        [.. book.Present.Select((taster, index) => new Plate(taster.Id, Without(key, orders[index % orders.Length], taster.LeftOff)))];

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
