using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Trier.Statistics.RankTests;

/// <summary>
/// The exact chance that shuffling every ballot gives a sum of squared column totals at least as large as the observed one.
/// Ballots are added one at a time to a table of states. Because each ballot is shuffled over all items, states that differ only in the
/// order of their totals are equally likely and are kept once, sorted and packed into one 64-bit word. States whose tail is certain or out of
/// reach, by the triangle inequality on centred norms, are settled early; the last ballot is never stored.
/// </summary>
internal static class ShuffleConvolution
{
    // Sums of two parts in a fixed order: the result does not depend on how many threads run.
    private const int StatesWorthSplitting = 2048;

    private const int Width = ShuffleStep.Width;

    /// <summary>
    /// The work formula: sum over ballots of states(i) x orders(i), with states(i) = k^(k-2) (R_i/(u_i (k-1)))^(k-1)/k!, the lattice volume of a
    /// permutohedron of total range R_i over the k! orders, u_i the step of the lattice that the ballots before i span. Infinite where a state does not fit 64 bits.
    /// </summary>
    public static double Work(WholeBallots ballots)
    {
        var k = ballots.Items;
        if (k is < 2 or > 10 || ballots.Range >= 1L << (64 / k) || (double)k * ballots.Range * ballots.Range >= int.MaxValue) return double.PositiveInfinity;
        var factor = Math.Pow(k, k - 2);
        for (var i = 2; i <= k; i++) factor /= i;
        var work = 0.0;
        var range = 0.0;
        var unit = 0L;
        foreach (var (sorted, count) in Ordered(ballots))
        {
            var orders = Arrangements.Count(sorted);
            for (var i = 0L; i < count; i++)
            {
                work += Math.Max(1, factor * Math.Pow(range / (Math.Max(1, unit) * (k - 1)), k - 1)) * orders;
                range += sorted[^1] - sorted[0];
                unit = Gcd.Of(unit, Unit(sorted));
                if (work > 1e18) return work;
            }
        }

        return work;
    }

    /// <summary>
    /// The ballots in the order they are added: those of the coarsest lattice first, because one half place among them would spread the states over a lattice 2^(k-1) times as fine for all
    /// that come after; the tied one last, which is never stored.
    /// </summary>
    private static IEnumerable<(int[] Sorted, long Count)> Ordered(WholeBallots ballots) =>
        ballots.Patterns.OrderByDescending(pattern => Unit(pattern.Sorted) is > 0 and var unit ? unit : long.MaxValue).ThenBy(pattern => Arrangements.Count(pattern.Sorted));

    /// <summary>The largest step that every difference within a ballot is a multiple of; 0 where all are tied, which spans no lattice.</summary>
    private static long Unit(int[] sorted) => sorted.Skip(1).Aggregate(0L, (unit, score) => Gcd.Of(unit, score - sorted[0]));

    /// <summary>P(sum of squares >= observed), for 2 to 10 items within the work formula.</summary>
    public static double UpperTail(WholeBallots ballots)
    {
        var k = ballots.Items;
        var steps = new List<ShuffleStep>();
        foreach (var (sorted, count) in Ordered(ballots))
        {
            var step = new ShuffleStep(sorted);
            for (var i = 0L; i < count; i++) steps.Add(step);
        }

        if (steps.Count == 0) return 1;
        var bits = 64 / k;
        var remaining = steps.Sum(step => step.Norm);
        var total = steps.Sum(step => step.Total);
        var observed = (double)ballots.SumOfSquares;
        var norm = Math.Sqrt(Math.Max(0, observed - (total * total / k)));
        var start = new StateTable(4);
        start.Add(Pack(steps[0].Sorted, bits), 1);
        remaining -= steps[0].Norm;
        var soFar = steps[0].Total;
        var tail = 0.0;
        var states = start;
        var mirrored = steps.All(step => step.IsMirrored);
        var reach = steps[0].Sorted[^1];
        for (var n = 1; n < steps.Count - 1; n++)
        {
            reach += steps[n].Sorted[^1];
            remaining -= steps[n].Norm;
            soFar += steps[n].Total;
            var settle = new Settling(norm, remaining, soFar * soFar / k);
            states = Advance(states, steps[n], bits, k, mirrored ? reach : -1, settle, ref tail);
        }

        if (steps.Count == 1) return 1;
        return tail + Finish(states, steps[^1], bits, k, observed);
    }

    /// <summary>Every attainable sum of squared totals with its chance, rising. The last ballot is added to sums of squares straight away.</summary>
    public static SortedDictionary<long, double> Distribution(WholeBallots ballots)
    {
        var k = ballots.Items;
        var bits = 64 / k;
        var steps = Ordered(ballots).SelectMany(pattern => Enumerable.Repeat(new ShuffleStep(pattern.Sorted), (int)pattern.Count)).ToList();
        var states = new StateTable(4);
        var ignored = 0.0;
        states.Add(Pack(steps[0].Sorted, bits), 1);
        var mirrored = steps.All(step => step.IsMirrored);
        var reach = steps[0].Sorted[^1];
        for (var n = 1; n < steps.Count - 1; n++)
        {
            reach += steps[n].Sorted[^1];
            states = Advance(states, steps[n], bits, k, mirrored ? reach : -1, Settling.Never, ref ignored);
        }

        var range = (int)Math.Min(ballots.Range, int.MaxValue);
        var found = new double[checked((k * range * range) + 1)];
        var (keys, weights) = states.Entries();
        Span<int> lanes = stackalloc int[k];
        Span<int> cells = stackalloc int[Width];
        for (var s = 0; s < keys.Length; s++)
        {
            Unpack(keys[s], bits, lanes);
            if (steps.Count == 1)
            {
                found[Squares(lanes)] = weights[s];
                continue;
            }

            var last = steps[^1];
            var weight = weights[s] * last.Chance;
            for (var block = 0; block < last.Blocks; block++)
            {
                var squares = Vector256<int>.Zero;
                for (var i = 0; i < k; i++)
                {
                    var lane = Vector256.Create(lanes[i]) + last.Lanes[(block * k) + i];
                    squares += lane * lane;
                }

                squares.CopyTo(cells);
                var real = BitOperations.PopCount(last.Real(block));
                for (var j = 0; j < real; j++) found[cells[j]] += weight;
            }
        }

        var result = new SortedDictionary<long, double>();
        for (var squares = 0; squares < found.Length; squares++)
        {
            if (found[squares] > 0) result.Add(squares, found[squares]);
        }

        return result;
    }

    private static int Squares(ReadOnlySpan<int> lanes)
    {
        var squares = 0;
        foreach (var lane in lanes) squares += lane * lane;
        return squares;
    }

    private static StateTable Advance(StateTable states, ShuffleStep step, int bits, int k, int mirror, Settling settle, ref double tail)
    {
        var (keys, weights) = states.Entries();
        if (keys.Length < StatesWorthSplitting)
        {
            var only = new StateTable(keys.Length * 2);
            tail += AdvancePart(keys, weights, 0, keys.Length, step, bits, k, mirror, settle, only);
            return only;
        }

        var middle = keys.Length / 2;
        var first = new StateTable(keys.Length);
        var second = new StateTable(keys.Length);
        double firstTail = 0, secondTail = 0;
        Parallel.Invoke(
            () => firstTail = AdvancePart(keys, weights, 0, middle, step, bits, k, mirror, settle, first),
            () => secondTail = AdvancePart(keys, weights, middle, keys.Length, step, bits, k, mirror, settle, second));
        tail += firstTail + secondTail;
        first.AddAll(second);
        return first;
    }

    private static double AdvancePart(
        ulong[] keys, double[] weights, int from, int to, ShuffleStep step, int bits, int k, int mirror, Settling settle, StateTable next)
    {
        var settled = 0.0;
        Span<int> lanes = stackalloc int[k];
        Span<Vector256<int>> sum = stackalloc Vector256<int>[k];
        Span<ulong> packed = stackalloc ulong[Width];
        var certain = Vector256.Create(settle.Certain);
        var hopeless = Vector256.Create(settle.Hopeless);
        for (var s = from; s < to; s++)
        {
            Unpack(keys[s], bits, lanes);
            var weight = weights[s] * step.Chance;
            for (var block = 0; block < step.Blocks; block++)
            {
                var squares = Vector256<int>.Zero;
                for (var i = 0; i < k; i++)
                {
                    var lane = Vector256.Create(lanes[i]) + step.Lanes[(block * k) + i];
                    sum[i] = lane;
                    squares += lane * lane;
                }

                var real = step.Real(block);
                var sure = Vector256.GreaterThan(squares, certain).ExtractMostSignificantBits() & real;
                settled += weight * BitOperations.PopCount(sure);
                var open = real & ~sure & ~Vector256.LessThan(squares, hopeless).ExtractMostSignificantBits();
                if (open == 0) continue;
                SortSmall.Sort(sum);
                if (mirror >= 0) Fold(sum, mirror);
                Pack(sum, bits, packed);
                if (next.IsLarge) next.Prefetch(packed);
                for (; open != 0; open &= open - 1) next.Add(packed[BitOperations.TrailingZeroCount(open)], weight);
            }
        }

        return settled;
    }

    private static double Finish(StateTable states, ShuffleStep step, int bits, int k, double observed)
    {
        var (keys, weights) = states.Entries();
        var middle = keys.Length < StatesWorthSplitting ? keys.Length : keys.Length / 2;
        double first = 0, second = 0;
        if (middle == keys.Length) return FinishPart(keys, weights, 0, middle, step, bits, k, observed);
        Parallel.Invoke(
            () => first = FinishPart(keys, weights, 0, middle, step, bits, k, observed),
            () => second = FinishPart(keys, weights, middle, keys.Length, step, bits, k, observed));
        return first + second;
    }

    private static double FinishPart(ulong[] keys, double[] weights, int from, int to, ShuffleStep step, int bits, int k, double observed)
    {
        var tail = 0.0;
        Span<int> lanes = stackalloc int[k];
        for (var s = from; s < to; s++)
        {
            Unpack(keys[s], bits, lanes);
            var squares = 0L;
            foreach (var lane in lanes) squares += (long)lane * lane;

            // |s + a|^2 = |s|^2 + |a|^2 + 2 s.a reaches the observed value where s.a reaches half of the rest, rounded up.
            var needed = Math.Clamp(Math.Ceiling((observed - step.Squares - squares) / 2), int.MinValue / 2, int.MaxValue / 2);
            var least = Vector256.Create((int)needed);
            var hits = 0;
            for (var block = 0; block < step.Blocks; block++)
            {
                var dot = Vector256<int>.Zero;
                for (var i = 0; i < k; i++) dot += Vector256.Create(lanes[i]) * step.Lanes[(block * k) + i];
                hits += BitOperations.PopCount(Vector256.GreaterThanOrEqual(dot, least).ExtractMostSignificantBits() & step.Real(block));
            }

            tail += weights[s] * step.Chance * hits;
        }

        return tail;
    }

    /// <summary>
    /// Where every ballot's scores mirror themselves, a state and its mirror image (every total taken from the largest possible, in reverse) are equally likely and equally long: of the two the lesser is kept. Halves the states.
    /// </summary>
    private static void Fold(Span<Vector256<int>> sorted, int mirror)
    {
        var largest = Vector256.Create(mirror);
        var last = sorted.Length - 1;
        var alike = Vector256<int>.AllBitsSet;
        var turn = Vector256<int>.Zero;
        for (var i = 0; i < sorted.Length / 2; i++)
        {
            var image = largest - sorted[last - i];
            turn |= alike & Vector256.LessThan(image, sorted[i]);
            alike &= Vector256.Equals(image, sorted[i]);
        }

        for (var i = 0; i <= last - i; i++)
        {
            var (low, high) = (sorted[i], sorted[last - i]);
            sorted[i] = Vector256.ConditionalSelect(turn, largest - high, low);
            sorted[last - i] = Vector256.ConditionalSelect(turn, largest - low, high);
        }
    }

    private static void Pack(ReadOnlySpan<Vector256<int>> sorted, int bits, Span<ulong> keys)
    {
        var cells = MemoryMarshal.Cast<Vector256<int>, int>(sorted);
        for (var j = 0; j < Width; j++)
        {
            var key = 0UL;
            for (var i = j; i < cells.Length; i += Width) key = (key << bits) | (uint)cells[i];
            keys[j] = key;
        }
    }

    private static ulong Pack(ReadOnlySpan<int> lanes, int bits)
    {
        var key = 0UL;
        foreach (var lane in lanes) key = (key << bits) | (uint)lane;
        return key;
    }

    private static void Unpack(ulong key, int bits, Span<int> lanes)
    {
        var mask = (1UL << bits) - 1;
        for (var i = lanes.Length - 1; i >= 0; i--)
        {
            lanes[i] = (int)(key & mask);
            key >>= bits;
        }
    }
}
