using System.Collections.Immutable;
using Trier.Statistics.RankTests;

namespace Trier.Statistics.Power;

/// <summary>All orders of up to 7 items, each as its packed places: item i's place less one in lane i.</summary>
internal sealed class OrderTable
{
    public const int LargestItems = 7;

    public OrderTable(int items)
    {
        Items = items;
        LaneBits = 64 / items;
        var flat = Arrangements.All([.. Enumerable.Range(0, items)]);
        Count = flat.Length / items;
        Places = flat;
        Packed = new ulong[Count];
        for (var order = 0; order < Count; order++)
        {
            for (var item = 0; item < items; item++) Packed[order] |= (ulong)flat[(order * items) + item] << (item * LaneBits);
        }
    }

    public int Items { get; }

    /// <summary>Bits of a lane.</summary>
    public int LaneBits { get; }

    public int Count { get; }

    /// <summary>Order after order, per item its place less one.</summary>
    public int[] Places { get; }

    public ulong[] Packed { get; }

    /// <summary>As many ballots as a lane can add up without overflow.</summary>
    public int Room => (int)Math.Min(int.MaxValue, ((1UL << LaneBits) - 1) / (ulong)(Items - 1));

    public ReadOnlySpan<int> PlacesOf(int order) => Places.AsSpan(order * Items, Items);

    /// <summary>The chance of every order for a judge with these worths: the next item is always chosen with chance w/sum of w left.</summary>
    public double[] Chances(ImmutableArray<double> worths)
    {
        var chances = new double[Count];
        Span<int> at = stackalloc int[Items];
        for (var order = 0; order < Count; order++)
        {
            var places = PlacesOf(order);
            for (var item = 0; item < Items; item++) at[places[item]] = item;
            double chance = 1, left = 0;
            for (var place = Items - 1; place >= 0; place--)
            {
                left += worths[at[place]];
                chance *= worths[at[place]] / left;
            }

            chances[order] = chance;
        }

        return chances;
    }
}
