using System.Collections.Immutable;
using Trier.Statistics.Designs;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Plates;

/// <summary>How even the plates are, counted over those that are somebody's, or planned for somebody who is to come.</summary>
/// <param name="Plates">How many plates are counted.</param>
/// <param name="Samples">Samples of the first flight, the repeat twice.</param>
/// <param name="Each">The most of them on one plate.</param>
/// <param name="Balance">Positions and neighbours.</param>
/// <param name="Efficiency">Where everybody gets some: what a comparison of two samples is worth against one with as many tastings where everybody gets all, 0 to 1; else null.</param>
/// <param name="Plain">What as many plates reach where no two samples need be kept apart; null without a repeat. The difference is what the repeat costs.</param>
/// <param name="Adjacent">How often the two servings of the repeat stand next to each other.</param>
public sealed record PlateFacts(int Plates, int Samples, int Each, Balance Balance, double? Efficiency, Balance? Plain, int Adjacent)
{
    /// <summary>By how much keeping the repeat apart makes neighbours less even: root of the mean squared deviation, 0 or more.</summary>
    public double RepeatCost => Plain is { } plain ? Math.Max(0, Balance.CarryOverUnevenness - plain.CarryOverUnevenness) : 0;

    /// <summary>Counts the plates of a sealed tasting; null where none is dealt or planned.</summary>
    /// <param name="book">The day book.</param>
    public static PlateFacts? Of(DayBook book)
    {
        if (book.Key is not { } key) return null;
        var menu = Menu.Of(book);
        var dealt = book.Present.Select(taster => book.Plate(taster.Id)).OfType<Plate>().ToList();
        // Before anybody has come, the plates that are planned for them are what can be counted.
        var held = dealt.Select(plate => plate.Number).ToHashSet();
        var planned = book.OpenedAt is null && book.PlannedPlates is { } count ? book.Orders.Take(count).Where((_, index) => !held.Contains(index + 1)) : [];
        var orders = dealt.Select(plate => plate.Codes).Concat(planned)
            .Select(codes => codes.Select(code => key[code] is { } line ? menu.First.IndexOf(Serving.Of(line)) : -1).Where(item => item >= 0).ToImmutableArray())
            .Where(order => order.Length > 0)
            .ToList();
        if (orders.Count == 0 || menu.First.Length < 2) return null;
        var balance = Balance.Of(menu.First.Length, orders);
        var each = orders.Max(order => order.Length);
        var repeat = menu.Repeat;
        // The number of the plan is a fixed one: the page shows the same cost each time.
        var plain = repeat is null || each < menu.First.Length ? null : Balance.Of(menu.First.Length, ServingOrders.Williams(menu.First.Length, orders.Count, new Seed(1)));
        return new(orders.Count, menu.First.Length, each, balance, EfficiencyOf(menu, orders, each), plain, repeat is { } pair ? balance.Adjacent(pair.Counted, pair.Check) : 0);
    }

    private static double? EfficiencyOf(Menu menu, List<ImmutableArray<int>> orders, int each)
    {
        if (each >= menu.First.Length || each < 2) return null;
        // Plates from which something is left off are shorter and stay out of this count.
        var blocks = orders.Where(order => order.Length == each).ToList();
        return blocks.Count == 0 ? null : BlockDesign.Create(menu.First.Length, blocks.Select(order => order.AsEnumerable())).Efficiency;
    }
}
