using System.Collections.Immutable;

namespace Trier.Statistics;

/// <summary>
/// A sum of weighted (I - J/m) over the served items of ballots: the covariance of within-ballot shuffles, and the normal
/// matrix of adjusted places. Its null space is one vector a connected piece.
/// </summary>
internal sealed class Laplacian
{
    private readonly double[,] _matrix;

    public Laplacian(int items) => _matrix = new double[items, items];

    public int Items => _matrix.GetLength(0);

    public double this[int row, int column] => _matrix[row, column];

    /// <summary>Adds weight (I - J/m) over m items.</summary>
    public void Add(ReadOnlySpan<int> served, double weight)
    {
        var share = weight / served.Length;
        foreach (var i in served)
        {
            foreach (var j in served) _matrix[i, j] -= share;
            _matrix[i, i] += weight;
        }
    }

    /// <summary>The connected pieces, each in rising order, by lowest item.</summary>
    public ImmutableArray<ImmutableArray<int>> Pieces()
    {
        var piece = new int[Items];
        Array.Fill(piece, -1);
        var pieces = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
        var reach = new Stack<int>();
        for (var start = 0; start < Items; start++)
        {
            if (piece[start] >= 0) continue;
            piece[start] = pieces.Count;
            reach.Push(start);
            while (reach.TryPop(out var i))
            {
                for (var j = 0; j < Items; j++)
                {
                    if (piece[j] >= 0 || _matrix[i, j] >= 0) continue;
                    piece[j] = pieces.Count;
                    reach.Push(j);
                }
            }

            var number = pieces.Count;
            pieces.Add([.. Enumerable.Range(0, Items).Where(i => piece[i] == number)]);
        }

        return pieces.DrainToImmutable();
    }

    /// <summary>
    /// The pseudo-inverse. In a piece of c items L^+ = (L + sJ/c)^-1 - J/(sc) for any s > 0, because J/c projects on the null space.
    /// </summary>
    public double[,] PseudoInverse()
    {
        var result = new double[Items, Items];
        foreach (var piece in Pieces())
        {
            if (piece.Length == 1) continue;
            var c = piece.Length;
            var scale = 0.0;
            foreach (var i in piece) scale += _matrix[i, i] / c;
            var shifted = new double[c, c];
            for (var i = 0; i < c; i++)
            {
                for (var j = 0; j < c; j++) shifted[i, j] = _matrix[piece[i], piece[j]] + (scale / c);
            }

            var inverse = SymmetricMatrix.Inverse(shifted);
            for (var i = 0; i < c; i++)
            {
                for (var j = 0; j < c; j++) result[piece[i], piece[j]] = inverse[i, j] - (1 / (scale * c));
            }
        }

        return result;
    }
}
