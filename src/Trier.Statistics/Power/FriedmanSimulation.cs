using System.Collections.Immutable;
using Trier.Statistics.Randomness;

namespace Trier.Statistics.Power;

/// <summary>A share found by simulation.</summary>
/// <param name="Share">Hits over panels.</param>
/// <param name="Error">The Monte Carlo standard error, sqrt(p(1-p)/panels).</param>
public sealed record Simulated(double Share, double Error)
{
    internal static Simulated Of(long hits, long panels)
    {
        var share = (double)hits / panels;
        return new Simulated(share, Math.Sqrt(share * (1 - share) / panels));
    }
}

/// <summary>
/// Friedman's statistic over simulated panels of complete, untied ballots: the power of any rule of the form "at least so much", and how often the first item leads. An alias table over all orders draws each ballot with one
/// random word; places are added in packed lanes, which are emptied before they can overflow.
/// </summary>
public sealed class FriedmanSimulation
{
    private const int Parts = 16;
    private const int Words = 512;

    private readonly long[] _squares;

    private FriedmanSimulation(int items, int judges, long[] sortedSquares, long first, long firstTied)
    {
        Items = items;
        Judges = judges;
        _squares = sortedSquares;
        FirstAlone = Simulated.Of(first, sortedSquares.Length);
        FirstTied = Simulated.Of(firstTied, sortedSquares.Length);
    }

    /// <summary>k.</summary>
    public int Items { get; }

    /// <summary>n.</summary>
    public int Judges { get; }

    /// <summary>How many panels.</summary>
    public int Panels => _squares.Length;

    /// <summary>How often the first item alone has the lowest rank sum.</summary>
    public Simulated FirstAlone { get; }

    /// <summary>How often it shares the lowest rank sum.</summary>
    public Simulated FirstTied { get; }

    /// <summary>Simulates.</summary>
    /// <param name="model">Plain, of 3 to 7 items.</param>
    /// <param name="judges">At least 2.</param>
    /// <param name="panels">At least 1.</param>
    /// <param name="seed">Fixes every draw; the number of threads changes nothing.</param>
    /// <param name="threads">The most threads at once; null for all processors.</param>
    /// <returns>Refused beyond 7 items, or for a model with ties, partial ballots or joined voices.</returns>
    public static Answer<FriedmanSimulation> Run(PanelModel model, int judges, int panels, Seed seed, int? threads = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentOutOfRangeException.ThrowIfLessThan(judges, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(panels, 1);
        if (model.Items > OrderTable.LargestItems) return new Refusal(RefusalKind.TooManyItems, $"The table of all orders goes to {OrderTable.LargestItems} items.");
        if (!model.IsPlain) return new Refusal(RefusalKind.NotComplete, "The fast simulation draws complete, untied ballots, each a voice of its own.");
        var draw = new PanelDraw(model);
        var parts = Streams.Run(Parts, seed, (i, generator) => Part(draw, judges, Streams.Share(panels, Parts, i), generator), threads);
        var squares = new long[panels];
        var at = 0;
        foreach (var part in parts)
        {
            part.Squares.CopyTo(squares, at);
            at += part.Squares.Length;
        }

        return new FriedmanSimulation(model.Items, judges, squares, parts.Sum(part => part.First), parts.Sum(part => part.Tied));
    }

    /// <summary>Q of every panel, in the order drawn.</summary>
    public ImmutableArray<double> Statistics => [.. _squares.Select(Statistic)];

    /// <summary>How often Q is at least a value (but for rounding).</summary>
    /// <param name="statistic">The critical value.</param>
    public Simulated AtLeast(double statistic) => Simulated.Of(_squares.Count(squares => Statistic(squares) >= statistic - 1e-9), Panels);

    /// <summary>How often Iman and Davenport's F is at least a value.</summary>
    /// <param name="f">The critical value.</param>
    public Simulated FAtLeast(double f)
    {
        // F rises with Q: F >= f where Q >= n(k-1) f/(n - 1 + f).
        return AtLeast(Judges * (Items - 1.0) * f / (Judges - 1 + f));
    }

    internal ReadOnlySpan<long> Squares => _squares;

    /// <summary>With places from 0 the totals have mean n(k-1)/2.</summary>
    private double Statistic(long squares)
    {
        var mean = Judges * (Items - 1) / 2.0;
        return 12 * (squares - (Items * mean * mean)) / (Judges * Items * (Items + 1.0));
    }

    private static (long[] Squares, long First, long Tied) Part(PanelDraw draw, int judges, int panels, Generator generator)
    {
        var (k, bits, room) = (draw.Orders!.Items, draw.Orders.LaneBits, draw.Orders.Room);
        var alias = draw.Packed!;
        var squares = new long[panels];
        Span<long> totals = stackalloc long[k];
        var mask = (1UL << bits) - 1;
        long first = 0, tied = 0;
        var wide = new WideXoshiro(generator);
        Span<ulong> words = stackalloc ulong[Words];
        var next = Words;
        unchecked
        {
            for (var panel = 0; panel < panels; panel++)
            {
                totals.Clear();
                for (var left = judges; left > 0;)
                {
                    if (next == Words)
                    {
                        wide.Fill(words);
                        next = 0;
                    }

                    var sum = 0UL;
                    var batch = Math.Min(left, Math.Min(room, Words - next));
                    foreach (var word in words.Slice(next, batch)) sum += alias.Of(word);
                    next += batch;
                    for (var i = 0; i < k; i++) totals[i] += (long)((sum >> (i * bits)) & mask);
                    left -= batch;
                }

                long all = totals[0] * totals[0], least = long.MaxValue;
                for (var i = 1; i < k; i++)
                {
                    all += totals[i] * totals[i];
                    least = Math.Min(least, totals[i]);
                }

                squares[panel] = all;
                if (totals[0] < least) first++;
                if (totals[0] == least) tied++;
            }
        }

        return (squares, first, tied);
    }
}
