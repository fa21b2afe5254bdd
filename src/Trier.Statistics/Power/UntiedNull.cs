using Trier.Statistics.Randomness;
using Trier.Statistics.RankTests;

namespace Trier.Statistics.Power;

/// <summary>
/// The gate's p for complete untied ballots by average place, looked up: it depends on the sum of squared totals alone. Exact where all arrangements can be counted, else from a million panels of random orders.
/// </summary>
internal sealed class UntiedNull
{
    private const int Draws = 1_000_000;

    /// <summary>The usual limit of counting, under a second.</summary>
    public const double UsualWork = 1e8;

    private readonly long[] _squares;
    private readonly double[] _tails;

    private UntiedNull(long[] squares, double[] tails, bool exact) => (_squares, _tails, IsExact) = (squares, tails, exact);

    public bool IsExact { get; }

    public static UntiedNull Of(int items, int judges, Seed seed, double largestWork = UsualWork)
    {
        if (items == 2 || Friedman.NullWork(items, judges) <= largestWork) return Counted(items, judges);
        var drawn = FriedmanSimulation.Run(PanelModel.Of(Enumerable.Repeat(1.0, items)), judges, Draws, seed).Value.Squares.ToArray();
        Array.Sort(drawn);
        var squares = new List<long>();
        var tails = new List<double>();
        for (var i = 0; i < drawn.Length; i++)
        {
            if (i > 0 && drawn[i] == drawn[i - 1]) continue;
            squares.Add(drawn[i]);
            tails.Add((1.0 + drawn.Length - i) / (1.0 + drawn.Length));
        }

        return new UntiedNull([.. squares], [.. tails], exact: false);
    }

    /// <summary>P(sum of squares of totals >= this one), places counted from 0.</summary>
    public double P(long squares)
    {
        var at = Array.BinarySearch(_squares, squares);
        if (at < 0) at = ~at;
        return at < _tails.Length ? _tails[at] : _tails[^1];
    }

    private static UntiedNull Counted(int items, int judges)
    {
        var distribution = Friedman.NullSquares(items, judges);
        var squares = distribution.Keys.ToArray();
        var tails = new double[squares.Length];
        var tail = 0.0;
        for (var i = squares.Length - 1; i >= 0; i--)
        {
            tail += distribution[squares[i]];
            tails[i] = Math.Min(1, tail);
        }

        return new UntiedNull(squares, tails, exact: true);
    }
}
