using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Plates;

/// <summary>A plate that is out already, less what its taster may not have.</summary>
internal static class PlateNow
{
    /// <summary>The plate of a taster without some wheels: the others keep codes and order, and a wheel put back returns to its place.</summary>
    public static Plate Without(DayBook book, TasterId taster, IReadOnlyCollection<WheelId> wheels)
    {
        if (book.Plate(taster) is not { Number: { } number } dealt) return UnnumberedPlates.PlateWithout(book, taster, wheels);
        var order = number <= book.Orders.Length ? book.Orders[number - 1] : dealt.Codes;
        ImmutableArray<BlindCode> codes = [.. order.Where(code => book.Key![code] is { } line && !wheels.Contains(line.Wheel))];
        return dealt with { Codes = codes };
    }
}
