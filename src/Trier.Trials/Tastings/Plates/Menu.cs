using System.Collections.Immutable;
using Trier.Trials.Common;
using Trier.Trials.Plans;

namespace Trier.Trials.Tastings.Plates;

/// <summary>What is served: the first flight, in which everything is compared, and a second one after it.</summary>
/// <param name="First">The first flight; the repeat stands in it twice.</param>
/// <param name="Second">The second flight, may be empty.</param>
/// <param name="Each">How many of the first flight a taster gets.</param>
internal sealed record Menu(ImmutableArray<Serving> First, ImmutableArray<Serving> Second, int Each)
{
    /// <summary>Everything.</summary>
    public IEnumerable<Serving> All => First.Concat(Second);

    /// <summary>Where the two servings of the repeat stand in <see cref="First"/>, or null.</summary>
    public (int Counted, int Check)? Repeat
    {
        get
        {
            var check = First.FirstOrDefault(serving => !serving.Counts, default);
            return check.Wheel == default ? null : (First.IndexOf(new(check.Wheel, Counts: true)), First.IndexOf(check));
        }
    }

    public static Menu Of(DayBook book)
    {
        var first = book.Standing.Where(entry => !book.SecondFlight.Contains(entry.Wheel)).Select(entry => new Serving(entry.Wheel, Counts: true)).ToList();
        if (book.Repeat is { } twice) first.Add(new(twice, Counts: false));
        var each = (book.Plan.Serving ?? ServingRules.Usual).SamplesEach ?? first.Count;
        return new([.. first], [.. book.Standing.Where(entry => book.SecondFlight.Contains(entry.Wheel)).Select(entry => new Serving(entry.Wheel, Counts: true))], Math.Min(each, first.Count));
    }

    /// <summary>The first flight of some wheels fewer.</summary>
    /// <param name="without">Wheels left off.</param>
    public IEnumerable<int> Without(IReadOnlySet<WheelId> without) => Enumerable.Range(0, First.Length).Where(item => !without.Contains(First[item].Wheel));
}
