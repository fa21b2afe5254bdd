using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.RankTests;

/// <summary>How often random shuffles reached what was observed.</summary>
/// <param name="Statistic">Draws with at least the observed statistic.</param>
/// <param name="Lead">Draws with at least the observed gap between first and second.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Hits(long Statistic, long Lead)
{
    public static Hits operator +(Hits a, Hits b) => new(a.Statistic + b.Statistic, a.Lead + b.Lead);
}

/// <summary>Draws in a fixed number of parts, each with its own stream, so that serial and parallel runs agree.</summary>
internal static class DrawParts
{
    private const int Parts = 16;

    public static Hits Run(int draws, Seed seed, Func<int, Generator, Hits> part) =>
        Streams.Run(Parts, seed, (i, generator) => part(Streams.Share(draws, Parts, i), generator)).Aggregate((a, b) => a + b);
}

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

/// <summary>Shuffles of any ballots: each voice's items are shuffled one by one and the sums kept in doubles.</summary>
internal sealed class GeneralShuffles
{
    // Values equal but for rounding count as reached.
    private const double Slack = 1e-9;

    private readonly VoiceTable _table;
    private readonly double[,] _form;
    private readonly double[,]? _adjusting;
    private readonly bool _lowerIsBetter;
    private readonly double _observed;
    private readonly double _gap;

    public GeneralShuffles(VoiceTable table, double[,] form, double[,]? adjusting, bool lowerIsBetter)
    {
        _table = table;
        _form = form;
        _adjusting = adjusting;
        _lowerIsBetter = lowerIsBetter;
        var weighted = new double[table.Items];
        var adjusted = new double[table.Items];
        foreach (var voice in table.Voices)
        {
            for (var i = 0; i < table.Items; i++)
            {
                weighted[i] += voice.Count * voice.Weighted[i];
                adjusted[i] += voice.Count * voice.Adjusted[i];
            }
        }

        Statistic = Quadratic(weighted);
        _observed = Statistic * (1 - Slack);
        _gap = Gap(adjusted) - Slack;
    }

    /// <summary>The observed Q = A' V^+ A.</summary>
    public double Statistic { get; }

    /// <summary>Product of the numbers of orders, the work of trying all.</summary>
    public double Combinations
    {
        get
        {
            var product = 1.0;
            foreach (var voice in _table.Voices)
            {
                for (var m = 2; m <= voice.Common.Length; m++) product *= Math.Pow(m, voice.Count);
            }

            return product;
        }
    }

    public Hits Draw(int draws, Generator generator)
    {
        var k = _table.Items;
        var weighted = new double[k];
        var adjusted = new double[k];
        var order = new int[k];
        long statistic = 0, lead = 0;
        for (var draw = 0; draw < draws; draw++)
        {
            Array.Clear(weighted);
            Array.Clear(adjusted);
            foreach (var voice in _table.Voices)
            {
                var common = voice.Common;
                for (var copy = 0L; copy < voice.Count; copy++)
                {
                    common.CopyTo(order, 0);
                    generator.Shuffle(order.AsSpan(0, common.Length));
                    Add(voice, order, weighted, adjusted);
                }
            }

            if (Quadratic(weighted) >= _observed) statistic++;
            if (Gap(adjusted) >= _gap) lead++;
        }

        return new Hits(statistic, lead);
    }

    /// <summary>Tries every combination of orders; for products of a few million at most.</summary>
    public double UpperTail()
    {
        var flat = _table.Voices.SelectMany(voice => Enumerable.Repeat(voice, (int)voice.Count)).Where(voice => voice.Common.Length > 1).ToArray();
        var fixedPart = new double[_table.Items];
        foreach (var voice in _table.Voices.Where(voice => voice.Common.Length <= 1))
        {
            for (var i = 0; i < fixedPart.Length; i++) fixedPart[i] += voice.Count * voice.Weighted[i];
        }

        var (hits, all) = Walk(flat, 0, fixedPart);
        return (double)hits / all;
    }

    private (long Hits, long All) Walk(Voice[] voices, int depth, double[] sum)
    {
        if (depth == voices.Length) return (Quadratic(sum) >= _observed ? 1 : 0, 1);
        var voice = voices[depth];
        var orders = Arrangements.All([.. Enumerable.Range(0, voice.Common.Length)]);
        long hits = 0, all = 0;
        var next = new double[sum.Length];
        for (var start = 0; start < orders.Length; start += voice.Common.Length)
        {
            for (var i = 0; i < sum.Length; i++) next[i] = sum[i] + voice.Weighted[i];
            for (var i = 0; i < voice.Common.Length; i++)
                next[voice.Common[i]] += voice.Weighted[voice.Common[orders[start + i]]] - voice.Weighted[voice.Common[i]];
            var (h, a) = Walk(voices, depth + 1, next);
            hits += h;
            all += a;
        }

        return (hits, all);
    }

    private static void Add(Voice voice, int[] order, double[] weighted, double[] adjusted)
    {
        var common = voice.Common;
        if (common.Length < weighted.Length)
        {
            // Items outside the shuffled set stay where they are; they are 0 unless a joined voice's ballots differ.
            for (var i = 0; i < weighted.Length; i++)
            {
                weighted[i] += voice.Weighted[i];
                adjusted[i] += voice.Adjusted[i];
            }

            foreach (var i in common)
            {
                weighted[i] -= voice.Weighted[i];
                adjusted[i] -= voice.Adjusted[i];
            }
        }

        for (var i = 0; i < common.Length; i++)
        {
            weighted[common[i]] += voice.Weighted[order[i]];
            adjusted[common[i]] += voice.Adjusted[order[i]];
        }
    }

    private double Quadratic(double[] sums)
    {
        var q = 0.0;
        for (var i = 0; i < sums.Length; i++)
        {
            var row = 0.0;
            for (var j = 0; j < sums.Length; j++) row += _form[i, j] * sums[j];
            q += row * sums[i];
        }

        return q;
    }

    private double Gap(double[] sums)
    {
        if (_adjusting is null) return double.PositiveInfinity;
        var first = double.PositiveInfinity;
        var second = double.PositiveInfinity;
        for (var i = 0; i < sums.Length; i++)
        {
            var effect = 0.0;
            for (var j = 0; j < sums.Length; j++) effect += _adjusting[i, j] * sums[j];
            if (!_lowerIsBetter) effect = -effect;
            if (effect < first) (first, second) = (effect, first);
            else if (effect < second) second = effect;
        }

        return second - first;
    }
}
