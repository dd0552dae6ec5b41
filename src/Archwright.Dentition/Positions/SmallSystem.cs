namespace Archwright.Dentition.Positions;

/// <summary>Shortest solution of a few linear equations with more unknowns than equations.</summary>
internal static class SmallSystem
{
    /// <summary>The shortest x with A x = b: x = Aᵀ (A Aᵀ)⁻¹ b.</summary>
    /// <param name="a">Row-major, one row an equation.</param>
    /// <param name="b">Right-hand sides.</param>
    /// <returns>Null when the equations depend on each other.</returns>
    public static double[]? Shortest(double[,] a, double[] b)
    {
        int rows = a.GetLength(0);
        int columns = a.GetLength(1);
        var normal = new double[rows, rows];
        for (int i = 0; i < rows; i++)
        {
            for (int j = 0; j < rows; j++)
            {
                for (int k = 0; k < columns; k++)
                    normal[i, j] += a[i, k] * a[j, k];
            }
        }

        if (Solve(normal, [.. b]) is not double[] weights)
            return null;

        var x = new double[columns];
        for (int k = 0; k < columns; k++)
        {
            for (int i = 0; i < rows; i++)
                x[k] += a[i, k] * weights[i];
        }

        return x;
    }

    // Gauss elimination with row exchange; overwrites both arguments.
    private static double[]? Solve(double[,] a, double[] b)
    {
        int n = b.Length;
        for (int p = 0; p < n; p++)
        {
            int best = p;
            for (int i = p + 1; i < n; i++)
                best = Math.Abs(a[i, p]) > Math.Abs(a[best, p]) ? i : best;
            if (Math.Abs(a[best, p]) < 1e-12)
                return null;

            Exchange(a, b, p, best);
            for (int i = p + 1; i < n; i++)
            {
                double factor = a[i, p] / a[p, p];
                for (int j = p; j < n; j++)
                    a[i, j] -= factor * a[p, j];
                b[i] -= factor * b[p];
            }
        }

        for (int i = n - 1; i >= 0; i--)
        {
            for (int j = i + 1; j < n; j++)
                b[i] -= a[i, j] * b[j];
            b[i] /= a[i, i];
        }

        return b;
    }

    private static void Exchange(double[,] a, double[] b, int one, int other)
    {
        if (one == other)
            return;

        (b[one], b[other]) = (b[other], b[one]);
        for (int j = 0; j < b.Length; j++)
            (a[one, j], a[other, j]) = (a[other, j], a[one, j]);
    }
}
