using System.Numerics;

namespace Trier.Statistics.ChoiceModels;

/// <summary>
/// Which items some ballot places above which. Finite worths exist only where every split of the items has such a placing each way, which is to say
/// that each item reaches each other along them. Source: [Ford1957].
/// </summary>
internal sealed class Dominance
{
    private readonly ulong[][] _under;

    public Dominance(int items)
    {
        _under = new ulong[items][];
        for (var item = 0; item < items; item++) _under[item] = new ulong[(items + 63) / 64];
    }

    public int Items => _under.Length;

    public void Add(int above, int under) => _under[above][under >> 6] |= 1UL << (under & 63);

    public void AddMask(int above, uint under) => _under[above][0] |= under;

    public void AddOrder(ReadOnlySpan<int> order, int stages)
    {
        var mask = new ulong[_under[0].Length];
        for (var place = order.Length - 1; place >= 0; place--)
        {
            var item = order[place];
            if (place < stages)
            {
                for (var word = 0; word < mask.Length; word++) _under[item][word] |= mask[word];
            }

            mask[item >> 6] |= 1UL << (item & 63);
        }
    }

    public void AddTie(ReadOnlySpan<int> group, ReadOnlySpan<int> rest)
    {
        foreach (var above in group)
        {
            foreach (var under in rest) Add(above, under);
        }
    }

    public void Take(Dominance other)
    {
        for (var item = 0; item < Items; item++)
        {
            for (var word = 0; word < _under[item].Length; word++) _under[item][word] |= other._under[item][word];
        }
    }

    /// <summary>The reason why no finite worths exist, or null.</summary>
    public Refusal? Obstacle()
    {
        var over = Turned();
        if (Reached(over, both: true) < Items) return new Refusal(RefusalKind.Disconnected, "The items fall into pieces that no ballot compares.");
        return Reached(over, both: false) < Items || over.Reached(this, both: false) < Items
            ? new Refusal(RefusalKind.Separated, "Some items are never placed above some others, so no finite worths exist.")
            : null;
    }

    private Dominance Turned()
    {
        var over = new Dominance(Items);
        for (var item = 0; item < Items; item++)
        {
            for (var word = 0; word < _under[item].Length; word++)
            {
                for (var left = _under[item][word]; left != 0; left &= left - 1) over.Add((word * 64) + BitOperations.TrailingZeroCount(left), item);
            }
        }

        return over;
    }

    /// <summary>How many items the first reaches downwards, or where both ways count along any placing.</summary>
    private int Reached(Dominance over, bool both)
    {
        Span<ulong> seen = stackalloc ulong[_under[0].Length];
        Span<int> reach = Items <= 256 ? stackalloc int[Items] : new int[Items];
        seen[0] = 1;
        reach[0] = 0;
        var reached = 1;
        for (var next = 0; next < reached; next++)
        {
            var item = reach[next];
            for (var word = 0; word < seen.Length; word++)
            {
                var fresh = (_under[item][word] | (both ? over._under[item][word] : 0)) & ~seen[word];
                seen[word] |= fresh;
                for (; fresh != 0; fresh &= fresh - 1) reach[reached++] = (word * 64) + BitOperations.TrailingZeroCount(fresh);
            }
        }

        return reached;
    }
}
