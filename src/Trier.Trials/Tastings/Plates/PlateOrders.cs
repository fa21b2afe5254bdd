using System.Collections.Immutable;
using Trier.Statistics.Designs;
using Trier.Statistics.Randomness;
using Trier.Trials.Common;

namespace Trier.Trials.Tastings.Plates;

/// <summary>
/// Which samples stand on which plate, in which order. Plates are planned in the order in which they are given out, so that positions and neighbours stay
/// even when only the first few are; plates from which something is left off are fitted to the others, so that all together stay even.
/// </summary>
internal static class PlateOrders
{
    /// <summary>Plans plates: first those of people who get what there is, then those from which something is left off, then spares.</summary>
    /// <param name="menu">What is served.</param>
    /// <param name="ordinary">How many plates with nothing left off.</param>
    /// <param name="without">What is left off each of the others.</param>
    /// <param name="spares">How many spare plates.</param>
    /// <param name="seed">Fixes the plan.</param>
    public static ImmutableArray<ImmutableArray<Serving>> Plan(Menu menu, int ordinary, IReadOnlyList<IReadOnlySet<WheelId>> without, int spares, Seed seed)
    {
        // Orders in which everybody gets all go on evenly however many there are; blocks are best where they are made for the number that is expected.
        var everything = menu.Each == menu.First.Length;
        var planned = everything ? Plain(menu, ordinary + spares, seed.Child("orders")) : Plain(menu, ordinary, seed.Child("orders"));
        var more = everything ? planned.Skip(ordinary) : Plain(menu, spares, seed.Child("spares"));
        var dealt = planned.Take(ordinary).ToList();
        var generator = seed.Child("left off").Generator();
        for (var i = 0; i < without.Count; i++)
        {
            var block = Block(menu, dealt, [], without[i], generator);
            dealt.Add(Fitted(menu, dealt, block, seed.Child("fitted").Child(i)));
        }

        dealt.AddRange(more);
        var second = menu.Second.Length < 2 ? null : ServingOrders.Williams(menu.Second.Length, dealt.Count, seed.Child("second flight")) as IReadOnlyList<ImmutableArray<int>>;
        return
        [
            .. dealt.Select((order, index) =>
            {
                var off = index >= ordinary && index < ordinary + without.Count ? without[index - ordinary] : ImmutableHashSet<WheelId>.Empty;
                var after = second is null ? menu.Second : second[index].Select(item => menu.Second[item]);
                return order.Select(item => menu.First[item]).Concat(after.Where(serving => !off.Contains(serving.Wheel))).ToImmutableArray();
            }),
        ];
    }

    /// <summary>One plate made again with other wheels left off: what stays keeps its order; what is put back, or fills up a place, is fitted in.</summary>
    /// <param name="menu">What is served.</param>
    /// <param name="now">The plate as it stands.</param>
    /// <param name="others">The other plates.</param>
    /// <param name="without">What is left off from now on.</param>
    /// <param name="seed">Fixes the order.</param>
    public static ImmutableArray<Serving> Again(Menu menu, IReadOnlyCollection<Serving> now, IEnumerable<ImmutableArray<Serving>> others, IReadOnlySet<WheelId> without, Seed seed)
    {
        var dealt = others.Select(order => order.Select(serving => menu.First.IndexOf(serving)).Where(item => item >= 0).ToImmutableArray()).ToList();
        var stays = now.Select(serving => menu.First.IndexOf(serving)).Where(item => item >= 0 && !without.Contains(menu.First[item].Wheel)).ToImmutableArray();
        var block = Block(menu, dealt, stays, without, seed.Child("block").Generator());
        var order = block.Length == stays.Length ? stays : Fitted(menu, dealt, block, seed.Child("fitted"));
        var second = menu.Second.Where(serving => !without.Contains(serving.Wheel)).OrderBy(serving => now.Contains(serving) ? now.TakeWhile(stood => stood != serving).Count() : now.Count);
        return [.. order.Select(item => menu.First[item]), .. second];
    }

    private static ImmutableArray<ImmutableArray<int>> Plain(Menu menu, int plates, Seed seed)
    {
        if (plates == 0) return [];
        var plan = ServingPlan.For(menu.First.Length, plates, menu.Each, seed, menu.Repeat);
        // Too few samples to keep the two servings of the repeat apart: then at least positions are even.
        return plan.Stands ? plan.Value.Orders : ServingPlan.For(menu.First.Length, plates, menu.Each, seed).Value.Orders;
    }

    private static ImmutableArray<int> Fitted(Menu menu, IReadOnlyCollection<ImmutableArray<int>> dealt, ImmutableArray<int> block, Seed seed) =>
        block.IsEmpty ? block : BlockOrders.Fitted(menu.First.Length, dealt, [block], menu.Repeat, seed)[0];

    // The items a plate gets: those that stay, and of the others the ones served least so far; equally seldom ones by lot.
    private static ImmutableArray<int> Block(Menu menu, IReadOnlyCollection<ImmutableArray<int>> dealt, ImmutableArray<int> stays, IReadOnlySet<WheelId> without, Generator generator)
    {
        var others = menu.Without(without).Where(item => !stays.Contains(item)).ToArray();
        generator.Shuffle<int>(others);
        return [.. stays, .. others.OrderBy(item => dealt.Count(order => order.Contains(item))).Take(Math.Max(0, menu.Each - stays.Length))];
    }
}
