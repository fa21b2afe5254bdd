using System.Runtime.Intrinsics;

namespace Trier.Statistics.RankTests;

/// <summary>One ballot to be shuffled: its orders in blocks of eight, one vector per item, the last block filled up with zeros.</summary>
internal sealed class ShuffleStep
{
    /// <summary>Orders in a block.</summary>
    public const int Width = 8;

    private readonly int _count;

    public ShuffleStep(int[] sorted)
    {
        var k = sorted.Length;
        Sorted = sorted;
        var orders = Arrangements.All(sorted);
        _count = orders.Length / k;
        Blocks = (_count + Width - 1) / Width;
        Chance = 1.0 / _count;
        Lanes = new Vector256<int>[Blocks * k];
        Span<int> cells = stackalloc int[Width];
        for (var block = 0; block < Blocks; block++)
        {
            for (var i = 0; i < k; i++)
            {
                cells.Clear();
                for (var j = 0; j < Width && (block * Width) + j < _count; j++) cells[j] = orders[(((block * Width) + j) * k) + i];
                Lanes[(block * k) + i] = Vector256.Create<int>(cells);
            }
        }

        foreach (var score in sorted)
        {
            Total += score;
            Squares += (long)score * score;
        }

        Norm = Math.Sqrt(Squares - (Total * Total / k));
        IsMirrored = Enumerable.Range(0, k).All(i => sorted[i] + sorted[k - 1 - i] == sorted[^1]);
    }

    /// <summary>True where the scores, taken from the largest, are the same scores.</summary>
    public bool IsMirrored { get; }

    public int[] Sorted { get; }

    public int Blocks { get; }

    public Vector256<int>[] Lanes { get; }

    public double Chance { get; }

    public double Total { get; }

    public long Squares { get; }

    /// <summary>Length of the centred vector.</summary>
    public double Norm { get; }

    /// <summary>One bit for each real order of a block.</summary>
    public uint Real(int block) => block < Blocks - 1 ? 0xFFu : 0xFFu >> ((Blocks * Width) - _count);
}

/// <summary>
/// When a state's fate is settled: with centred length r and ballots of total length rest to come, the end lies between r - rest and r + rest.
/// Held as bounds on the sum of squared totals. The margins keep rounding from settling a state that could land exactly on the observed value.
/// </summary>
internal sealed class Settling
{
    private const double Margin = 1e-9;

    public Settling(double observedNorm, double rest, double centre)
    {
        var low = (observedNorm * (1 - Margin)) - rest - Margin;
        Hopeless = low > 0 ? (int)Math.Min(int.MaxValue, Math.Ceiling(centre + (low * low))) : int.MinValue;
        var high = (observedNorm * (1 + Margin)) + rest + Margin;
        Certain = (int)Math.Min(int.MaxValue, Math.Floor(centre + (high * high)));
    }

    private Settling() => (Hopeless, Certain) = (int.MinValue, int.MaxValue);

    /// <summary>Settles nothing.</summary>
    public static Settling Never { get; } = new();

    /// <summary>Below this sum of squares the tail is out of reach.</summary>
    public int Hopeless { get; }

    /// <summary>Above this sum of squares the tail is certain.</summary>
    public int Certain { get; }
}
