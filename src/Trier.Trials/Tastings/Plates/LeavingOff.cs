using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Plans;

namespace Trier.Trials.Tastings.Plates;

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

    /// <summary>Whether there is enough to compare, and no more than a plate carries.</summary>
    public static IEnumerable<Problem> TooFew(DayBook book)
    {
        var placed = book.Standing.Count(entry => !book.SecondFlight.Contains(entry.Wheel));
        if (placed < 2) yield return new("wheels", book.SecondFlight.Count > 0 ? "A comparison needs at least two wheels in the first flight." : "A comparison needs at least two wheels.");
        var each = book.Plan.Serving?.SamplesEach;
        if (placed > ServingRules.MostOnAPlate && each is null) yield return new("wheels", $"One plate carries {ServingRules.MostOnAPlate} wheels at most: more tires every mouth. Say in the plan how many samples each taster gets.");
        if (each is not null && each < placed && book.Plan.Rule is CountingRule.PlacePoints) yield return new("rule", "Place points need everybody to place every wheel: choose another rule, or let everybody taste all.");
    }
}
