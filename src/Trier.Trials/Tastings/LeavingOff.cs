using System.Collections.Immutable;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings;

/// <summary>What stands in the way of leaving samples off a plate.</summary>
internal static class LeavingOff
{
    public static Problem? Check(DayBook book, TasterId taster, ImmutableArray<WheelId> wheels)
    {
        if (book.Taster(taster) is not { LetGo: false } found) return new Problem("taster", "This taster is not on the list.");
        if (wheels.Any(wheel => book.Entry(wheel) is null)) return new Problem("wheels", "One of these wheels is not in the trial.");
        return book.Standing.All(entry => wheels.Contains(entry.Wheel))
            ? new Problem("wheels", $"Then nothing is left on {found.Name}'s plate: let the taster go instead.")
            : null;
    }

    /// <summary>Tasters for whom, since samples were left off their plate, nothing is left of the wheels that stand.</summary>
    public static IEnumerable<Problem> EmptyPlates(DayBook book) =>
        book.Present
            .Where(taster => taster.LeftOff.Count > 0 && book.Standing.All(entry => taster.LeftOff.Contains(entry.Wheel)))
            .Select(taster => new Problem("tasters", $"Nothing would be left on {taster.Name}'s plate: put a sample back, or let the taster go first."));
}
