using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Trier.Statistics.RankTests;

/// <summary>A flat hash from a packed state, never 0, to its probability. Linear probing, at most half full.</summary>
internal sealed class StateTable
{
    // From here on a look-up is likely to leave the caches.
    private const int Large = 1 << 14;

    private Cell[] _cells;
    private int _shift;
    private int _count;

    public StateTable(int expected)
    {
        var size = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(16, expected * 2));
        _cells = new Cell[size];
        _shift = 64 - BitOperations.Log2((uint)size);
    }

    public bool IsLarge => _cells.Length >= Large;

    public void Add(ulong key, double weight)
    {
        unchecked
        {
            var cells = _cells;
            var mask = cells.Length - 1;
            var slot = (int)((key * 0x9E3779B97F4A7C15UL) >> _shift);
            while (true)
            {
                ref var cell = ref cells[slot];
                if (cell.Key == key)
                {
                    cell.Weight += weight;
                    return;
                }

                if (cell.Key == 0)
                {
                    cell = new Cell { Key = key, Weight = weight };
                    if (++_count * 2 > cells.Length) Grow();
                    return;
                }

                slot = (slot + 1) & mask;
            }
        }
    }

    /// <summary>Asks the processor for the cells of some keys ahead of adding them; changes nothing.</summary>
    public unsafe void Prefetch(ReadOnlySpan<ulong> keys)
    {
        if (!Sse.IsSupported) return;
        unchecked
        {
            ref var first = ref MemoryMarshal.GetArrayDataReference(_cells);
            foreach (var key in keys)
                Sse.Prefetch0(Unsafe.AsPointer(ref Unsafe.Add(ref first, (int)((key * 0x9E3779B97F4A7C15UL) >> _shift))));
        }
    }

    public void AddAll(StateTable other)
    {
        foreach (var cell in other._cells)
        {
            if (cell.Key != 0) Add(cell.Key, cell.Weight);
        }
    }

    public (ulong[] Keys, double[] Weights) Entries()
    {
        var keys = new ulong[_count];
        var weights = new double[_count];
        var next = 0;
        foreach (var cell in _cells)
        {
            if (cell.Key == 0) continue;
            keys[next] = cell.Key;
            weights[next++] = cell.Weight;
        }

        return (keys, weights);
    }

    private void Grow()
    {
        var cells = _cells;
        _cells = new Cell[cells.Length * 2];
        _shift--;
        _count = 0;
        foreach (var cell in cells)
        {
            if (cell.Key != 0) Add(cell.Key, cell.Weight);
        }
    }

    [StructLayout(LayoutKind.Sequential)]
    private struct Cell
    {
        public ulong Key;
        public double Weight;
    }
}

/// <summary>Sorts across vectors: element j of all of them, for every j at once, by a network of exchanges. Source: [Knuth1998], section 5.3.4.</summary>
internal static class SortSmall
{
    private static readonly (byte Low, byte High)[][] Networks = [.. Enumerable.Range(0, 11).Select(Network)];

    public static void Sort(Span<Vector256<int>> v)
    {
        foreach (var (low, high) in Networks[v.Length])
        {
            var smaller = Vector256.Min(v[low], v[high]);
            v[high] = Vector256.Max(v[low], v[high]);
            v[low] = smaller;
        }
    }

    private static (byte Low, byte High)[] Network(int n) => n switch
    {
        3 => [(0, 2), (0, 1), (1, 2)],
        4 => [(0, 2), (1, 3), (0, 1), (2, 3), (1, 2)],
        5 => [(0, 3), (1, 4), (0, 2), (1, 3), (0, 1), (2, 4), (1, 2), (3, 4), (2, 3)],
        6 => [(0, 5), (1, 3), (2, 4), (1, 2), (3, 4), (0, 3), (2, 5), (0, 1), (2, 3), (4, 5), (1, 2), (3, 4)],
        _ => Insertion(n),
    };

    private static (byte Low, byte High)[] Insertion(int n)
    {
        var exchanges = new List<(byte Low, byte High)>();
        for (var i = 1; i < n; i++)
        {
            for (var j = i; j > 0; j--) exchanges.Add(((byte)(j - 1), (byte)j));
        }

        return [.. exchanges];
    }
}
