using System.Numerics;

namespace Trier.Statistics.RankTests;

/// <summary>A flat hash from a packed state, never 0, to its probability. Linear probing, at most half full.</summary>
internal sealed class StateTable
{
    private ulong[] _keys;
    private double[] _weights;
    private int _shift;
    private int _count;

    public StateTable(int expected)
    {
        var size = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(16, expected * 2));
        _keys = new ulong[size];
        _weights = new double[size];
        _shift = 64 - BitOperations.Log2((uint)size);
    }

    public int Count => _count;

    public void Add(ulong key, double weight)
    {
        unchecked
        {
            var keys = _keys;
            var mask = keys.Length - 1;
            var slot = (int)((key * 0x9E3779B97F4A7C15UL) >> _shift);
            while (true)
            {
                var found = keys[slot];
                if (found == key)
                {
                    _weights[slot] += weight;
                    return;
                }

                if (found == 0) break;
                slot = (slot + 1) & mask;
            }

            keys[slot] = key;
            _weights[slot] = weight;
            if (++_count * 2 > keys.Length) Grow();
        }
    }

    public void AddAll(StateTable other)
    {
        for (var slot = 0; slot < other._keys.Length; slot++)
        {
            if (other._keys[slot] != 0) Add(other._keys[slot], other._weights[slot]);
        }
    }

    public (ulong[] Keys, double[] Weights) Entries()
    {
        var keys = new ulong[_count];
        var weights = new double[_count];
        var next = 0;
        for (var slot = 0; slot < _keys.Length; slot++)
        {
            if (_keys[slot] == 0) continue;
            keys[next] = _keys[slot];
            weights[next++] = _weights[slot];
        }

        return (keys, weights);
    }

    private void Grow()
    {
        var keys = _keys;
        var weights = _weights;
        _keys = new ulong[keys.Length * 2];
        _weights = new double[keys.Length * 2];
        _shift--;
        _count = 0;
        for (var slot = 0; slot < keys.Length; slot++)
        {
            if (keys[slot] != 0) Add(keys[slot], weights[slot]);
        }
    }
}

/// <summary>Sorting networks for short spans; insertion sort beyond six. Sources: optimal networks, [Knuth1998].</summary>
internal static class SortSmall
{
    public static void Sort(Span<int> v)
    {
        switch (v.Length)
        {
            case 3:
                Swap(ref v[0], ref v[2]); Swap(ref v[0], ref v[1]); Swap(ref v[1], ref v[2]);
                return;
            case 4:
                Swap(ref v[0], ref v[2]); Swap(ref v[1], ref v[3]); Swap(ref v[0], ref v[1]); Swap(ref v[2], ref v[3]); Swap(ref v[1], ref v[2]);
                return;
            case 5:
                Swap(ref v[0], ref v[3]); Swap(ref v[1], ref v[4]); Swap(ref v[0], ref v[2]); Swap(ref v[1], ref v[3]); Swap(ref v[0], ref v[1]);
                Swap(ref v[2], ref v[4]); Swap(ref v[1], ref v[2]); Swap(ref v[3], ref v[4]); Swap(ref v[2], ref v[3]);
                return;
            case 6:
                Swap(ref v[0], ref v[5]); Swap(ref v[1], ref v[3]); Swap(ref v[2], ref v[4]); Swap(ref v[1], ref v[2]); Swap(ref v[3], ref v[4]);
                Swap(ref v[0], ref v[3]); Swap(ref v[2], ref v[5]); Swap(ref v[0], ref v[1]); Swap(ref v[2], ref v[3]); Swap(ref v[4], ref v[5]);
                Swap(ref v[1], ref v[2]); Swap(ref v[3], ref v[4]);
                return;
            default:
                v.Sort();
                return;
        }
    }

    private static void Swap(ref int a, ref int b)
    {
        var low = Math.Min(a, b);
        b = Math.Max(a, b);
        a = low;
    }
}
