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
    private const int StatesWorthSplitting = 512;

    /// <summary>
    /// The work formula: sum over ballots of states(i) x orders(i), with states(i) = k^(k-2) (R_i/(k-1))^(k-1)/k!, the lattice volume of a
    /// permutohedron of total range R_i over the k! orders. Infinite where a state does not fit 64 bits.
    /// </summary>
    public static double Work(WholeBallots ballots)
    {
        var k = ballots.Items;
        if (k is < 3 or > 10 || ballots.Range >= 1L << (64 / k)) return k == 2 && ballots.Range < 1L << 31 ? (double)ballots.Range * ballots.Voices : double.PositiveInfinity;
        var factor = Math.Pow(k, k - 2);
        for (var i = 2; i <= k; i++) factor /= i;
        var work = 0.0;
        var range = 0.0;
        foreach (var (sorted, count) in ballots.Patterns)
        {
            var orders = Arrangements.Count(sorted);
            for (var i = 0L; i < count; i++)
            {
                work += Math.Max(1, factor * Math.Pow(range / (k - 1), k - 1)) * orders;
                range += sorted[^1];
                if (work > 1e18) return work;
            }
        }

        return work;
    }

    /// <summary>P(sum of squares >= observed), for 2 to 10 items within the work formula.</summary>
    public static double UpperTail(WholeBallots ballots)
    {
        var k = ballots.Items;
        var steps = new List<Step>();
        foreach (var (sorted, count) in ballots.Patterns.OrderBy(pattern => Arrangements.Count(pattern.Sorted)))
        {
            var step = new Step(sorted);
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
        for (var n = 1; n < steps.Count - 1; n++)
        {
            remaining -= steps[n].Norm;
            soFar += steps[n].Total;
            var settle = new Settling(norm, remaining, soFar * soFar / k);
            states = Advance(states, steps[n], bits, k, settle, ref tail);
        }

        if (steps.Count == 1) return 1;
        return tail + Finish(states, steps[^1], bits, k, observed);
    }

    /// <summary>Every attainable sum of squared totals with its chance, rising.</summary>
    public static SortedDictionary<long, double> Distribution(WholeBallots ballots)
    {
        var k = ballots.Items;
        var bits = 64 / k;
        var never = new Settling(double.PositiveInfinity, double.PositiveInfinity, 0);
        var states = new StateTable(4);
        var first = true;
        var ignored = 0.0;
        foreach (var (sorted, count) in ballots.Patterns)
        {
            var step = new Step(sorted);
            for (var i = 0L; i < count; i++)
            {
                if (first) states.Add(Pack(sorted, bits), 1);
                else states = Advance(states, step, bits, k, never, ref ignored);
                first = false;
            }
        }

        var (keys, weights) = states.Entries();
        var result = new SortedDictionary<long, double>();
        Span<int> lanes = stackalloc int[k];
        for (var s = 0; s < keys.Length; s++)
        {
            Unpack(keys[s], bits, lanes);
            var squares = 0L;
            foreach (var lane in lanes) squares += (long)lane * lane;
            result[squares] = result.GetValueOrDefault(squares) + weights[s];
        }

        return result;
    }

    private static StateTable Advance(StateTable states, Step step, int bits, int k, Settling settle, ref double tail)
    {
        var (keys, weights) = states.Entries();
        if (keys.Length < StatesWorthSplitting)
        {
            var only = new StateTable(keys.Length * 2);
            tail += AdvancePart(keys, weights, 0, keys.Length, step, bits, k, settle, only);
            return only;
        }

        var middle = keys.Length / 2;
        var first = new StateTable(keys.Length);
        var second = new StateTable(keys.Length);
        double firstTail = 0, secondTail = 0;
        Parallel.Invoke(
            () => firstTail = AdvancePart(keys, weights, 0, middle, step, bits, k, settle, first),
            () => secondTail = AdvancePart(keys, weights, middle, keys.Length, step, bits, k, settle, second));
        tail += firstTail + secondTail;
        first.AddAll(second);
        return first;
    }

    private static double AdvancePart(
        ulong[] keys, double[] weights, int from, int to, Step step, int bits, int k, Settling settle, StateTable next)
    {
        var tail = 0.0;
        Span<int> lanes = stackalloc int[k];
        var orders = step.Orders;
        Span<int> sum = stackalloc int[k];
        for (var s = from; s < to; s++)
        {
            Unpack(keys[s], bits, lanes);
            var weight = weights[s] * step.Chance;
            for (var start = 0; start < orders.Length; start += k)
            {
                var squares = 0L;
                for (var i = 0; i < k; i++)
                {
                    var lane = lanes[i] + orders[start + i];
                    sum[i] = lane;
                    squares += (long)lane * lane;
                }

                var centred = squares - settle.Centre;
                if (centred < settle.Hopeless) continue;
                if (centred > settle.Certain)
                {
                    tail += weight;
                    continue;
                }

                SortSmall.Sort(sum);
                next.Add(Pack(sum, bits), weight);
            }
        }

        return tail;
    }

    private static double Finish(StateTable states, Step step, int bits, int k, double observed)
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

    private static double FinishPart(ulong[] keys, double[] weights, int from, int to, Step step, int bits, int k, double observed)
    {
        var tail = 0.0;
        Span<int> lanes = stackalloc int[k];
        var orders = step.Orders;
        var threshold = (long)observed - step.Squares;
        for (var s = from; s < to; s++)
        {
            Unpack(keys[s], bits, lanes);
            var squares = 0L;
            foreach (var lane in lanes) squares += (long)lane * lane;
            var hits = 0;
            for (var start = 0; start < orders.Length; start += k)
            {
                var dot = 0L;
                for (var i = 0; i < k; i++) dot += (long)lanes[i] * orders[start + i];
                if ((2 * dot) + squares >= threshold) hits++;
            }

            tail += weights[s] * step.Chance * hits;
        }

        return tail;
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

    /// <summary>One ballot to be shuffled.</summary>
    private sealed class Step
    {
        public Step(int[] sorted)
        {
            Sorted = sorted;
            Orders = Arrangements.All(sorted);
            Chance = (double)sorted.Length / Orders.Length;
            foreach (var score in sorted)
            {
                Total += score;
                Squares += (long)score * score;
            }

            Norm = Math.Sqrt(Squares - (Total * Total / sorted.Length));
        }

        public int[] Sorted { get; }

        public int[] Orders { get; }

        public double Chance { get; }

        public double Total { get; }

        public long Squares { get; }

        /// <summary>Length of the centred vector.</summary>
        public double Norm { get; }
    }

    /// <summary>
    /// When a state's fate is settled: with centred length r and ballots of total length rest to come, the end lies between r - rest and r + rest.
    /// The margins keep rounding from settling a state that could land exactly on the observed value.
    /// </summary>
    private sealed class Settling
    {
        private const double Margin = 1e-9;

        public Settling(double observedNorm, double rest, double centre)
        {
            Centre = centre;
            var low = (observedNorm * (1 - Margin)) - rest - Margin;
            Hopeless = low > 0 ? low * low : double.NegativeInfinity;
            var high = (observedNorm * (1 + Margin)) + rest + Margin;
            Certain = high * high;
        }

        public double Centre { get; }

        public double Hopeless { get; }

        public double Certain { get; }
    }
}
