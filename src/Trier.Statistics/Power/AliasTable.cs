using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.Power;

/// <summary>
/// Draws one of many payloads with stated chances in constant time: one random word picks a cell and which of its two payloads. Chances are kept to a part in 2^32. Source: [Walker1977], built as in [Vose1991].
/// </summary>
internal sealed class AliasTable
{
    private readonly Cell[] _cells;

    /// <param name="chances">Not negative, of sum 1 but for rounding.</param>
    /// <param name="payloads">What each stands for.</param>
    public AliasTable(ReadOnlySpan<double> chances, ReadOnlySpan<ulong> payloads)
    {
        var n = chances.Length;
        _cells = new Cell[n];
        var scaled = new double[n];
        var (small, large) = (new Stack<int>(), new Stack<int>());
        for (var i = 0; i < n; i++)
        {
            scaled[i] = chances[i] * n;
            (scaled[i] < 1 ? small : large).Push(i);
        }

        while (small.Count > 0 && large.Count > 0)
        {
            var (low, high) = (small.Pop(), large.Pop());
            _cells[low] = new Cell { Other = payloads[high], Difference = payloads[low] ^ payloads[high], Threshold = (uint)Math.Min(uint.MaxValue, scaled[low] * (uint.MaxValue + 1.0)) };
            scaled[high] -= 1 - scaled[low];
            (scaled[high] < 1 ? small : large).Push(high);
        }

        foreach (var full in small.Concat(large)) _cells[full] = new Cell { Other = payloads[full], Threshold = uint.MaxValue };
    }

    public ulong Draw(Generator generator) => Of(generator.NextUInt64());

    /// <summary>The payload of one random word. Without a branch: which of the two it is cannot be foretold.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ulong Of(ulong word)
    {
        unchecked
        {
            ref readonly var cell = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_cells), (nint)(((word >> 32) * (uint)_cells.Length) >> 32));
            var own = (ulong)((long)((uint)word - (ulong)cell.Threshold) >> 63);
            return cell.Other ^ (cell.Difference & own);
        }
    }

    [StructLayout(LayoutKind.Sequential)]
    private struct Cell
    {
        public ulong Other;
        public ulong Difference;
        public uint Threshold;
    }
}
