using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Trier.Statistics.Rankings;

/// <summary>
/// What one judge said about the order of <see cref="Items"/> items, numbered 0 to Items - 1. Each item is in exactly one of
/// three states: <em>placed</em> (in one of <see cref="Groups"/>, best group first, tied inside a group), <em>below</em>
/// (served, but only the best few were asked for: all of these tie under the placed ones), or <em>not served</em>. Immutable.
/// </summary>
public sealed class Ranking : IEquatable<Ranking>
{
    private readonly ImmutableArray<int> _doubled;

    private Ranking(int items, ImmutableArray<ImmutableArray<int>> groups, ImmutableArray<int> below)
    {
        Items = items;
        Groups = groups;
        Below = below;
        _doubled = Doubled(items, groups, below, out var served);
        Served = served;
    }

    /// <summary>How many items there are, served or not; at least 1.</summary>
    public int Items { get; }

    /// <summary>The placed items, best group first; items inside a group tie and stand in rising order.</summary>
    public ImmutableArray<ImmutableArray<int>> Groups { get; }

    /// <summary>Items served but not placed, in rising order; together they tie under the placed ones.</summary>
    public ImmutableArray<int> Below { get; }

    /// <summary>Items placed or below, in rising order.</summary>
    public ImmutableArray<int> Served { get; }

    /// <summary>True where every item was served.</summary>
    public bool IsComplete => Served.Length == Items;

    /// <summary>True where the ballot favours no item over another: at most one group, counting the items below as one.</summary>
    public bool IsAllTied => Groups.Length + (Below.IsEmpty ? 0 : 1) <= 1;

    /// <summary>True where two served items share a place.</summary>
    public bool HasTies
    {
        get
        {
            if (Below.Length > 1) return true;
            foreach (var group in Groups)
            {
                if (group.Length > 1) return true;
            }

            return false;
        }
    }

    /// <summary>Whether an item was served.</summary>
    /// <param name="item">0 to Items - 1.</param>
    public bool IsServed(int item) => _doubled[item] != 0;

    /// <summary>Makes a ranking from its groups, checking every item.</summary>
    /// <param name="items">How many items there are, at least 1.</param>
    /// <param name="groupsBestFirst">The placed items, best group first; no group empty.</param>
    /// <param name="below">Items served but not placed; none if null.</param>
    /// <exception cref="ArgumentException">An item is out of range or stands twice, or a group is empty; the message names it.</exception>
    public static Ranking Create(int items, IEnumerable<IEnumerable<int>> groupsBestFirst, IEnumerable<int>? below = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(items, 1);
        ArgumentNullException.ThrowIfNull(groupsBestFirst);
        var seen = new bool[items];
        var groups = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
        foreach (var group in groupsBestFirst)
        {
            var members = Checked(group, seen);
            if (members.IsEmpty) throw new ArgumentException($"Group {groups.Count + 1} of the ranking is empty.", nameof(groupsBestFirst));
            groups.Add(members);
        }

        return new Ranking(items, groups.DrainToImmutable(), below is null ? [] : Checked(below, seen));
    }

    /// <summary>Makes a ranking without ties from items in order; those left out were not served. Cheap enough for millions.</summary>
    /// <param name="items">How many items there are, at least 1.</param>
    /// <param name="bestFirst">Different items, best first.</param>
    /// <exception cref="ArgumentException">An item is out of range or stands twice; the message names it.</exception>
    public static Ranking FromOrder(int items, ReadOnlySpan<int> bestFirst)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(items, 1);
        if (bestFirst.Length > items) throw new ArgumentException($"There are {bestFirst.Length} items in an order of at most {items}.", nameof(bestFirst));
        Span<bool> seen = items <= 256 ? stackalloc bool[items] : new bool[items];
        var groups = new ImmutableArray<int>[bestFirst.Length];
        for (var place = 0; place < bestFirst.Length; place++)
        {
            var item = bestFirst[place];
            if ((uint)item >= (uint)items) throw new ArgumentException($"Item {item} is not among the {items} items.", nameof(bestFirst));
            if (seen[item]) throw new ArgumentException($"Item {item} stands twice in the ranking.", nameof(bestFirst));
            seen[item] = true;
            groups[place] = SharedParts.Single(item);
        }

        return new Ranking(items, ImmutableCollectionsMarshal.AsImmutableArray(groups), []);
    }

    /// <summary>
    /// Makes a ranking from one place per item. Places are used as an order only: lower is better, equal places tie, gaps do
    /// not matter. Null means not served.
    /// </summary>
    /// <param name="places">One finite place per item, or null; at least one item.</param>
    /// <exception cref="ArgumentException">A place is not a finite number; the message names the item.</exception>
    public static Ranking FromPlaces(ReadOnlySpan<double?> places)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(places.Length, 1);
        var order = new List<int>(places.Length);
        for (var item = 0; item < places.Length; item++)
        {
            if (places[item] is not { } place) continue;
            if (!double.IsFinite(place)) throw new ArgumentException($"The place of item {item} is not a finite number.", nameof(places));
            order.Add(item);
        }

        var keys = places.ToArray();
        order.Sort((a, b) => keys[a]!.Value.CompareTo(keys[b]!.Value) is var c && c != 0 ? c : a.CompareTo(b));
        var groups = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
        for (var start = 0; start < order.Count;)
        {
            var end = start + 1;
            while (end < order.Count && keys[order[end]]!.Value.Equals(keys[order[start]]!.Value)) end++;
            groups.Add(end == start + 1 ? SharedParts.Single(order[start]) : [.. order.GetRange(start, end - start)]);
            start = end;
        }

        return new Ranking(places.Length, groups.DrainToImmutable(), []);
    }

    /// <summary>
    /// Per item the average of the places its group covers among the served items (1 is best), null where not served.
    /// Items below share the last mid-place.
    /// </summary>
    public ImmutableArray<double?> Midranks()
    {
        var places = ImmutableArray.CreateBuilder<double?>(Items);
        foreach (var doubled in _doubled) places.Add(doubled == 0 ? null : doubled / 2.0);
        return places.MoveToImmutable();
    }

    /// <summary>Per item twice its mid-place, so that ties stay whole numbers; 0 where not served. At least 2 where served.</summary>
    public ImmutableArray<int> DoubledMidranks() => _doubled;

    /// <summary>
    /// The same order among fewer items. Places are re-made among the kept ones, and item <c>keepItems[i]</c> becomes item i.
    /// </summary>
    /// <param name="keepItems">Different items of this ranking, at least one, in the order of their new numbers.</param>
    /// <exception cref="ArgumentException">An item is out of range or named twice; the message names it.</exception>
    public Ranking Restrict(ReadOnlySpan<int> keepItems)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(keepItems.Length, 1);
        var renumbered = new int[Items];
        Array.Fill(renumbered, -1);
        for (var i = 0; i < keepItems.Length; i++)
        {
            var item = keepItems[i];
            if (item < 0 || item >= Items) throw new ArgumentException($"Item {item} is not among the {Items} items.", nameof(keepItems));
            if (renumbered[item] >= 0) throw new ArgumentException($"Item {item} is kept twice.", nameof(keepItems));
            renumbered[item] = i;
        }

        var groups = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
        foreach (var group in Groups)
        {
            var kept = Kept(group, renumbered);
            if (!kept.IsEmpty) groups.Add(kept);
        }

        return new Ranking(keepItems.Length, groups.DrainToImmutable(), Kept(Below, renumbered));
    }

    /// <inheritdoc/>
    public bool Equals(Ranking? other)
    {
        if (other is null || other.Items != Items || other.Groups.Length != Groups.Length) return false;
        for (var g = 0; g < Groups.Length; g++)
        {
            if (!Groups[g].AsSpan().SequenceEqual(other.Groups[g].AsSpan())) return false;
        }

        return Below.AsSpan().SequenceEqual(other.Below.AsSpan());
    }

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Ranking);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var place in _doubled) hash.Add(place);
        hash.Add(Below.Length);
        return hash.ToHashCode();
    }

    /// <summary>The order as text, such as "1 > 0=2 | 3": best first, ties with =, items below after the bar.</summary>
    public override string ToString()
    {
        var placed = string.Join(" > ", Groups.Select(group => string.Join('=', group)));
        return Below.IsEmpty ? placed : $"{placed} | {string.Join('=', Below)}";
    }

    private static ImmutableArray<int> Checked(IEnumerable<int> members, bool[] seen)
    {
        ArgumentNullException.ThrowIfNull(members);
        var sorted = ImmutableArray.CreateBuilder<int>();
        foreach (var item in members)
        {
            if (item < 0 || item >= seen.Length) throw new ArgumentException($"Item {item} is not among the {seen.Length} items.", nameof(members));
            if (seen[item]) throw new ArgumentException($"Item {item} stands twice in the ranking.", nameof(members));
            seen[item] = true;
            sorted.Add(item);
        }

        sorted.Sort();
        return sorted.DrainToImmutable();
    }

    private static ImmutableArray<int> Kept(ImmutableArray<int> members, int[] renumbered)
    {
        var kept = ImmutableArray.CreateBuilder<int>(members.Length);
        foreach (var item in members)
        {
            if (renumbered[item] >= 0) kept.Add(renumbered[item]);
        }

        kept.Sort();
        return kept.DrainToImmutable();
    }

    private static ImmutableArray<int> Doubled(
        int items, ImmutableArray<ImmutableArray<int>> groups, ImmutableArray<int> below, out ImmutableArray<int> served)
    {
        var doubled = new int[items];
        var before = 0;
        foreach (var group in groups)
        {
            foreach (var item in group) doubled[item] = (2 * before) + group.Length + 1;
            before += group.Length;
        }

        foreach (var item in below) doubled[item] = (2 * before) + below.Length + 1;
        if (before + below.Length == items)
        {
            served = SharedParts.All(items);
            return ImmutableCollectionsMarshal.AsImmutableArray(doubled);
        }

        var present = ImmutableArray.CreateBuilder<int>(items);
        for (var item = 0; item < items; item++)
        {
            if (doubled[item] != 0) present.Add(item);
        }

        served = present.DrainToImmutable();
        return ImmutableCollectionsMarshal.AsImmutableArray(doubled);
    }
}
