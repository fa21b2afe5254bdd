using Trier.Trials.Common;
using Trier.Trials.Tastings;
using Trier.Trials.Tastings.Steps;
using Trier.Web.Plans;
using Trier.Web.Shared;

namespace Trier.Web.Tastings.Ballots;

/// <summary>One sample of a taster's own slip.</summary>
/// <param name="Place">Its place, from 1; 0 where it has none.</param>
/// <param name="Sample">The code it was served under.</param>
/// <param name="Wheel">The wheel behind it.</param>
/// <param name="Look">The wheel's mark.</param>
/// <param name="Time">1 or 2 where the wheel was on this taster's plate twice, in serving order; else 0.</param>
/// <param name="Withdrawn">Whether the wheel was taken out.</param>
/// <param name="Liking">What the taster said, or null.</param>
public sealed record SlipLine(int Place, BlindCode Sample, string Wheel, WheelLook Look, int Time, bool Withdrawn, int? Liking);

/// <summary>A taster's own order with the wheels behind it. Can be made of a revealed tasting only.</summary>
/// <param name="Placed">Samples with a place, best first.</param>
/// <param name="Unplaced">Samples without one that were answered for.</param>
public sealed record OwnSlip(IReadOnlyList<SlipLine> Placed, IReadOnlyList<SlipLine> Unplaced)
{
    /// <summary>The cheeses that were on the plate twice, with how far apart they were put: 0 in one place, 1 next to each other.</summary>
    public IReadOnlyList<(BlindCode First, BlindCode Second, int Apart)> Twice =>
        [.. Placed.GroupBy(line => line.Wheel, StringComparer.Ordinal).Where(wheel => wheel.Count() == 2).Select(wheel => (wheel.First().Sample, wheel.Last().Sample, Apart(wheel.First(), wheel.Last())))];

    /// <summary>The codes that had changed places on this taster's plate.</summary>
    public IReadOnlyList<(BlindCode First, BlindCode Second)> Swaps { get; init; } = [];

    /// <summary>Writes the slip.</summary>
    /// <param name="tasting">The revealed tasting.</param>
    /// <param name="taster">Whose.</param>
    /// <param name="ballot">The ballot that is judged.</param>
    public static OwnSlip Of(RevealedTasting tasting, TasterId taster, Ballot ballot)
    {
        var placed = new List<SlipLine>();
        foreach (var group in ballot.Places)
        {
            var place = placed.Count + 1;
            placed.AddRange(group.Select(code => Line(tasting.Book, taster, ballot, code, place)).OfType<SlipLine>());
        }

        var rest = ballot.Answers.Keys.Where(code => placed.TrueForAll(line => line.Sample != code));
        return new(placed, [.. rest.Select(code => Line(tasting.Book, taster, ballot, code, 0)).OfType<SlipLine>()]) { Swaps = [.. tasting.Book.Swaps.Where(swap => swap.Taster == taster).Select(swap => (swap.First, swap.Second))] };
    }

    // Groups between the two: tied samples in between are one step.
    private int Apart(SlipLine first, SlipLine second) => Placed.Select(line => line.Place).Distinct().Count(place => place > first.Place && place <= second.Place);

    private static SlipLine? Line(DayBook book, TasterId taster, Ballot ballot, BlindCode code, int place)
    {
        if (book.Key?[Swapped(book, taster, code)] is not { } line || book.Entry(line.Wheel) is not { } entry) return null;
        // The verdict's own mark, so that two wheels of one recipe are told apart in the hand as on the wall.
        return new(place, code, entry.Name, Looks.Of(entry), Time(book, taster, code, line.Wheel), book.IsWithdrawn(line.Wheel), ballot.Answers.GetValueOrDefault(code)?.Liking);
    }

    private static int Time(DayBook book, TasterId taster, BlindCode code, WheelId wheel)
    {
        var servings = (book.Plate(taster)?.Codes ?? []).Where(served => book.Key![Swapped(book, taster, served)]?.Wheel == wheel).ToList();
        return servings.Count > 1 ? servings.IndexOf(code) + 1 : 0;
    }

    // On a plate where two codes stood on each other's sample, each code leads to the other's wheel.
    private static BlindCode Swapped(DayBook book, TasterId taster, BlindCode code) =>
        book.Swaps.Where(swap => swap.Taster == taster).Aggregate(code, (now, swap) => now == swap.First ? swap.Second : now == swap.Second ? swap.First : now);
}
