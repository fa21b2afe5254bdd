using System.Runtime.Intrinsics;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.RankTests;

/// <summary>
/// Shuffles of complete ballots: a row of the table of all orders of a ballot's scores is drawn for each voice and added in packed
/// lanes of 16 bits. Exact in whole numbers.
/// </summary>
internal sealed class PackedShuffles
{
    private const int Lanes = 8;
    private const int LargestTable = 50_000;
    private const long Beyond = 1L << 40;

    private readonly int _items;
    private readonly (Vector128<ushort>[] Orders, long Count, long Flush)[] _patterns;
    private readonly long _observed;
    private readonly long _gap;
    private readonly bool _lowerIsBetter;
    private readonly ulong[][]? _words;

    private PackedShuffles(WholeBallots ballots, bool lowerIsBetter)
    {
        _items = ballots.Items;
        _observed = (long)ballots.SumOfSquares;
        _lowerIsBetter = lowerIsBetter;
        _gap = Gap(ballots.Totals);
        _patterns = [.. ballots.Patterns.Select(pattern => (Table(pattern.Sorted), pattern.Count, (long)(ushort.MaxValue / pattern.Sorted[^1])))];
        if (ballots.Range < 1L << (64 / _items)) _words = [.. ballots.Patterns.Select(pattern => Words(pattern.Sorted))];
    }

    /// <summary>The sampler, or null where a ballot has too many orders for a table or does not fit the lanes.</summary>
    public static PackedShuffles? For(WholeBallots ballots, bool lowerIsBetter) =>
        ballots.Items > Lanes || ballots.Patterns.Any(p => Arrangements.Count(p.Sorted) > LargestTable || p.Sorted[^1] > ushort.MaxValue) || (Int128)ballots.Range * ballots.Range * Lanes > long.MaxValue
            ? null
            : new PackedShuffles(ballots, lowerIsBetter);

    public Hits Draw(int draws, Generator generator)
    {
        var streams = new Stream[_patterns.Length];
        var wide = new WideXoshiro(generator);
        for (var i = 0; i < streams.Length; i++) streams[i] = new Stream((uint)_patterns[i].Orders.Length);
        return _words is not null ? DrawNarrow(draws, streams, ref wide) : DrawBroad(draws, streams, ref wide);
    }

    /// <summary>Totals that fit lanes of one 64-bit word: a voice costs one addition.</summary>
    private Hits DrawNarrow(int draws, Stream[] streams, ref WideXoshiro wide)
    {
        long statistic = 0, lead = 0;
        var (items, bits, observed, gap) = (_items, 64 / _items, _observed, _gap);
        var mask = (1L << bits) - 1;

        // Where a high total is better, the complement is sorted instead.
        var flip = _lowerIsBetter ? 0 : mask;
        for (var draw = 0; draw < draws; draw++)
        {
            var sum = 0UL;
            for (var i = 0; i < streams.Length; i++)
            {
                var words = _words![i];
                for (var left = _patterns[i].Count; left > 0; left -= Stream.Length)
                    sum = unchecked(sum + Sum(streams[i].Take((int)Math.Min(left, Stream.Length), ref wide), words));
            }

            unchecked
            {
                // No branch that chance decides: the lesser of two is one plus their difference where that is negative.
                long squares = 0, first = Beyond, second = Beyond;
                for (var i = 0; i < items; i++)
                {
                    var total = (long)sum & mask;
                    sum >>= bits;
                    squares += total * total;
                    total ^= flip;
                    var below = (total - first) & ((total - first) >> 63);
                    var other = total - below - second;
                    first += below;
                    second += other & (other >> 63);
                }

                statistic += squares >= observed ? 1 : 0;
                lead += second - first >= gap ? 1 : 0;
            }
        }

        return new Hits(statistic, lead);
    }

    private static ulong Sum(ReadOnlySpan<uint> numbers, ulong[] words)
    {
        var sum = 0UL;
        foreach (var number in numbers) sum = unchecked(sum + words[number]);
        return sum;
    }

    private static Vector128<ushort> Sum(ReadOnlySpan<uint> numbers, Vector128<ushort>[] orders)
    {
        var sum = Vector128<ushort>.Zero;
        foreach (var number in numbers) sum = Vector128.Add(sum, orders[number]);
        return sum;
    }

    private Hits DrawBroad(int draws, Stream[] streams, ref WideXoshiro wide)
    {
        Span<long> totals = stackalloc long[Lanes];
        Span<ushort> lanes = stackalloc ushort[Lanes];
        long statistic = 0, lead = 0;
        for (var draw = 0; draw < draws; draw++)
        {
            totals.Clear();
            for (var i = 0; i < streams.Length; i++)
            {
                var (orders, count, flush) = _patterns[i];
                for (var left = count; left > 0;)
                {
                    var batch = (int)Math.Min(left, Math.Min(flush, Stream.Length));
                    left -= batch;
                    Collect(Sum(streams[i].Take(batch, ref wide), orders), lanes, totals);
                }
            }

            // The totals are bounded so that their squares cannot overflow.
            var squares = 0L;
            foreach (var total in totals) squares += total * total;
            if (squares >= _observed) statistic++;
            if (Gap(totals[.._items]) >= _gap) lead++;
        }

        return new Hits(statistic, lead);
    }

    /// <summary>Numbers of orders, drawn many at a time.</summary>
    private sealed class Stream(uint bound)
    {
        public const int Length = 512;

        private readonly uint[] _numbers = new uint[Length];
        private int _next = Length;

        public ReadOnlySpan<uint> Take(int count, ref WideXoshiro wide)
        {
            if (_next + count > Length)
            {
                wide.FillBelow(_numbers, bound);
                _next = 0;
            }

            _next += count;
            return _numbers.AsSpan(_next - count, count);
        }
    }

    private static void Collect(Vector128<ushort> sum, Span<ushort> lanes, Span<long> totals)
    {
        sum.CopyTo(lanes);
        for (var i = 0; i < lanes.Length && i < totals.Length; i++) totals[i] += lanes[i];
    }

    private static Vector128<ushort>[] Table(int[] sorted)
    {
        var all = Arrangements.All(sorted);
        var k = sorted.Length;
        var table = new Vector128<ushort>[all.Length / k];
        Span<ushort> lanes = stackalloc ushort[Lanes];
        for (var order = 0; order < table.Length; order++)
        {
            lanes.Clear();
            for (var i = 0; i < k; i++) lanes[i] = (ushort)all[(order * k) + i];
            table[order] = Vector128.Create<ushort>(lanes);
        }

        return table;
    }

    private static ulong[] Words(int[] sorted)
    {
        var all = Arrangements.All(sorted);
        var k = sorted.Length;
        var words = new ulong[all.Length / k];
        for (var order = 0; order < words.Length; order++)
        {
            for (var i = 0; i < k; i++) words[order] |= (ulong)all[(order * k) + i] << (i * (64 / k));
        }

        return words;
    }

    private long Gap(ReadOnlySpan<long> totals)
    {
        var first = long.MaxValue;
        var second = long.MaxValue;
        foreach (var total in totals)
        {
            var value = _lowerIsBetter ? total : -total;
            if (value < first) (first, second) = (value, first);
            else if (value < second) second = value;
        }

        return second - first;
    }
}
