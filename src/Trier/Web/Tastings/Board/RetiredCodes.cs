using Trier.Trials.Common;
using Trier.Trials.Tastings;

namespace Trier.Web.Tastings.Board;

/// <summary>The codes of a withdrawn wheel in words. A retired code is void: naming it tells nothing of the others.</summary>
internal static class RetiredCodes
{
    public static string Of(DayBook book, WheelId wheel)
    {
        var lines = book.Key!.Of(wheel);
        var shared = lines.Where(line => line.Plate is null).Select(line => $"sample {line.Code}").ToList();
        var own = lines.Where(line => line.Plate is not null && book.Plates.Values.Any(plate => plate.Number == line.Plate)).OrderBy(line => line.Plate).Select(line => $"sample {line.Code} (plate {line.Plate})");
        return string.Join(" and ", shared.Concat(own));
    }
}
