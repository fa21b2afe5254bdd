namespace Trier.Statistics;

/// <summary>Small symmetric positive definite systems, by Cholesky's factor.</summary>
internal static class SymmetricMatrix
{
    /// <summary>The lower Cholesky factor, or null where the matrix is not positive definite.</summary>
    public static double[,]? Factor(double[,] matrix)
    {
        var n = matrix.GetLength(0);
        var lower = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = matrix[i, j];
                for (var m = 0; m < j; m++) sum -= lower[i, m] * lower[j, m];
                if (i != j) lower[i, j] = sum / lower[j, j];
                else if (sum > 1e-13 * Math.Abs(matrix[i, i])) lower[i, i] = Math.Sqrt(sum);
                else return null;
            }
        }

        return lower;
    }

    /// <summary>Solves L L' x = b in place.</summary>
    public static void Solve(double[,] lower, Span<double> vector)
    {
        var n = vector.Length;
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < i; j++) vector[i] -= lower[i, j] * vector[j];
            vector[i] /= lower[i, i];
        }

        for (var i = n - 1; i >= 0; i--)
        {
            for (var j = i + 1; j < n; j++) vector[i] -= lower[j, i] * vector[j];
            vector[i] /= lower[i, i];
        }
    }

    /// <summary>The inverse.</summary>
    /// <exception cref="InvalidOperationException">The matrix is not positive definite.</exception>
    public static double[,] Inverse(double[,] matrix)
    {
        var lower = Factor(matrix) ?? throw new InvalidOperationException("The matrix is not positive definite.");
        var n = matrix.GetLength(0);
        var inverse = new double[n, n];
        var column = new double[n];
        for (var j = 0; j < n; j++)
        {
            Array.Clear(column);
            column[j] = 1;
            Solve(lower, column);
            for (var i = 0; i < n; i++) inverse[i, j] = column[i];
        }

        return inverse;
    }

    /// <summary>x' M^- x of a positive semidefinite M, by elimination; directions in which M is 0 but for rounding drop out.</summary>
    public static double InverseForm(double[,] matrix, ReadOnlySpan<double> vector)
    {
        var n = vector.Length;
        var lower = new double[n, n];
        var solved = new double[n];
        var form = 0.0;
        for (var i = 0; i < n; i++)
        {
            var right = vector[i];
            for (var j = 0; j < i; j++)
            {
                if (lower[j, j] == 0) continue;
                var sum = matrix[i, j];
                for (var m = 0; m < j; m++) sum -= lower[i, m] * lower[j, m];
                lower[i, j] = sum / lower[j, j];
                right -= lower[i, j] * solved[j];
            }

            var pivot = matrix[i, i];
            for (var m = 0; m < i; m++) pivot -= lower[i, m] * lower[i, m];
            if (pivot <= 1e-10 * Math.Abs(matrix[i, i])) continue;
            lower[i, i] = Math.Sqrt(pivot);
            solved[i] = right / lower[i, i];
            form += solved[i] * solved[i];
        }

        return form;
    }
}
