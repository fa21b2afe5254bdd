using Trier.Statistics.Rankings;

namespace Trier.Statistics.ChoiceModels;

/// <summary>
/// The choices that ballots make, added up. An order is a chain of choices: the best from all, the next from the rest, and so on; the Plackett-Luce likelihood sees only how
/// often each item was chosen and how often each set was chosen from. Up to 16 items the sets are counted, so that a million ballots cost no more to fit than
/// a hundred; beyond, the orders are kept. A tied group above others is kept whole. Immutable.
/// </summary>
public sealed class ChoiceCounts
{
    /// <summary>Up to this many items the sets are counted.</summary>
    public const int MostCounted = 16;

    /// <summary>The largest tie above other items that can be summed over.</summary>
    public const int LargestTie = 12;

    internal ChoiceCounts(int items, double ballots, double[] chosen, StageSets sets, List<KeptOrder> orders, List<TiedChoice> ties, Dominance above)
    {
        Items = items;
        Ballots = ballots;
        Chosen = chosen;
        Sets = sets;
        Orders = orders;
        Ties = ties;
        Above = above;
    }

    /// <summary>How many items.</summary>
    public int Items { get; }

    /// <summary>Ballots that place an item above another.</summary>
    public double Ballots { get; }

    internal double[] Chosen { get; }

    internal StageSets Sets { get; }

    internal List<KeptOrder> Orders { get; }

    internal List<TiedChoice> Ties { get; }

    internal Dominance Above { get; }

    /// <summary>Adds up a set of ballots, each counting by itself.</summary>
    /// <param name="set">The ballots; those that tie everything add nothing.</param>
    /// <returns>Refused where a ballot ties more than 12 items above others.</returns>
    public static Answer<ChoiceCounts> Of(RankingSet set)
    {
        ArgumentNullException.ThrowIfNull(set);
        var adding = new ChoiceAdder(set.Items);
        foreach (var row in set.Rows)
        {
            if (adding.Add(row.Ranking, row.Count) is { } refusal) return refusal;
        }

        return adding.Sum();
    }

    /// <summary>Adds up orders of all items without ties, on as many cores as there are.</summary>
    /// <param name="items">How many items, 2 to 16.</param>
    /// <param name="orders">One order after another, best first: every item once in each run of <paramref name="items"/> numbers.</param>
    /// <exception cref="ArgumentException">The length is not a multiple of the number of items, or an order does not name every item once.</exception>
    public static ChoiceCounts FromOrders(int items, ReadOnlyMemory<int> orders)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(items, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(items, MostCounted);
        if (orders.Length % items != 0) throw new ArgumentException($"{orders.Length} numbers are not whole orders of {items} items.", nameof(orders));
        var rows = orders.Length / items;

        // Below some tens of thousands of orders, waking threads costs more than the counting.
        var parts = rows < 50_000 ? 1 : 8;
        var adders = new ChoiceAdder[parts];
        var wrong = new int?[parts];
        Parallel.For(0, parts, part =>
        {
            adders[part] = new ChoiceAdder(items);
            var (from, to) = ((int)((long)rows * part / parts), (int)((long)rows * (part + 1) / parts));
            for (var row = from; row < to && wrong[part] is null; row++)
            {
                if (!adders[part].AddWhole(orders.Span.Slice(row * items, items))) wrong[part] = row;
            }
        });
        if (wrong.Min() is { } first) throw new ArgumentException($"Order {first} does not name every one of the {items} items once.", nameof(orders));
        for (var part = 1; part < parts; part++) adders[0].Take(adders[part]);
        return adders[0].Sum();
    }

    /// <summary>Whether the items are linked, and each can be reached from each other by being placed above (Ford's condition).</summary>
    internal Refusal? Obstacle => Above.Obstacle();
}

/// <summary>The different sets that were chosen from, of two items or more, and how often.</summary>
/// <param name="Members">The sets' items, one set after another.</param>
/// <param name="Starts">Where each set starts, and where the last ends.</param>
/// <param name="Counts">How often each was chosen from.</param>
internal sealed record StageSets(int[] Members, int[] Starts, double[] Counts);

/// <summary>One order kept as it is.</summary>
/// <param name="Order">Items, best first; those from <paramref name="Stages"/> on are not compared with each other.</param>
/// <param name="Stages">How many choices it makes.</param>
/// <param name="Count">How many ballots.</param>
internal sealed record KeptOrder(int[] Order, int Stages, double Count);

/// <summary>A tied group above others.</summary>
/// <param name="Group">Two items or more.</param>
/// <param name="Rest">The items placed under it.</param>
/// <param name="Count">How many ballots; set anew where ballots are weighed.</param>
internal sealed record TiedChoice(int[] Group, int[] Rest, double Count)
{
    public double Count { get; set; } = Count;
}
