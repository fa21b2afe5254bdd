using System.Numerics;

namespace Trier.Statistics.ChoiceModels;

/// <summary>
/// Which items some ballot places above which. Finite worths exist only where every split of the items has such a placing each way, which is to say
/// that each item reaches each other along them. Source: [Ford1957].
/// </summary>
internal sealed class Dominance
{
    private readonly ulong[][] _under;

    public Dominance(int items) => _under = [.. Enumerable.Range(0, items).Select(_ => new ulong[(items + 63) / 64])];

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
        var over = new Dominance(Items);
        var either = new Dominance(Items);
        for (var item = 0; item < Items; item++)
        {
            for (var other = 0; other < Items; other++)
            {
                if ((_under[item][other >> 6] & (1UL << (other & 63))) == 0) continue;
                over.Add(other, item);
                either.Add(item, other);
                either.Add(other, item);
            }
        }

        if (either.ReachedFromFirst() < Items) return new Refusal(RefusalKind.Disconnected, "The items fall into pieces that no ballot compares.");
        return ReachedFromFirst() < Items || over.ReachedFromFirst() < Items
            ? new Refusal(RefusalKind.Separated, "Some items are never placed above some others, so no finite worths exist.")
            : null;
    }

    private int ReachedFromFirst()
    {
        var seen = new ulong[_under[0].Length];
        seen[0] = 1;
        var reach = new Stack<int>([0]);
        var reached = 1;
        while (reach.TryPop(out var item))
        {
            for (var word = 0; word < seen.Length; word++)
            {
                for (var fresh = _under[item][word] & ~seen[word]; fresh != 0; fresh &= fresh - 1)
                {
                    reach.Push((word * 64) + BitOperations.TrailingZeroCount(fresh));
                    reached++;
                }

                seen[word] |= _under[item][word];
            }
        }

        return reached;
    }
}
