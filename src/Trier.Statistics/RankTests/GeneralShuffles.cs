using Trier.Statistics.Randomness;

namespace Trier.Statistics.RankTests;

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
