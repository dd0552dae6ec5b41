using System.Diagnostics;
using System.Runtime.CompilerServices;

namespace Archwright.Mechanics.Numerics;

/// <summary>Solves a small, full system of linear equations.</summary>
internal static class DenseSystem
{
    /// <summary>Solves A x = b by elimination with row pivoting; n³/3 multiplications.</summary>
    /// <param name="matrix">A, row-major n × n; overwritten.</param>
    /// <param name="vector">b on entry, x on return; length n.</param>
    /// <exception cref="ArithmeticException">A column has no pivot: the equations do not determine x.</exception>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]      // called a few dozen times in a run, always in earnest
    public static void Solve(Span<double> matrix, Span<double> vector)
    {
        int n = vector.Length;
        Debug.Assert(matrix.Length == n * n, "The matrix must be square and as tall as the vector.");

        for (int k = 0; k < n; k++)
        {
            BringPivotUp(matrix, vector, k);
            Span<double> pivotRow = matrix.Slice(k * n, n);
            for (int i = k + 1; i < n; i++)
            {
                Span<double> row = matrix.Slice(i * n, n);
                double factor = row[k] / pivotRow[k];
                vector[i] -= factor * vector[k];
                SubtractScaled(row[(k + 1)..], pivotRow[(k + 1)..], factor);
            }
        }

        for (int i = n - 1; i >= 0; i--)
        {
            Span<double> row = matrix.Slice(i * n, n);
            double sum = vector[i];
            for (int j = i + 1; j < n; j++)
                sum -= row[j] * vector[j];
            vector[i] = sum / row[i];
        }
    }

    private static void BringPivotUp(Span<double> matrix, Span<double> vector, int k)
    {
        int n = vector.Length;
        int best = k;
        for (int i = k + 1; i < n; i++)
        {
            if (Math.Abs(matrix[i * n + k]) > Math.Abs(matrix[best * n + k]))
                best = i;
        }

        if (!(Math.Abs(matrix[best * n + k]) > 0))
            throw new ArithmeticException($"Equation {k} of {n} has no pivot: the system is singular or not finite.");

        if (best == k)
            return;

        (vector[k], vector[best]) = (vector[best], vector[k]);
        for (int j = k; j < n; j++)
            (matrix[k * n + j], matrix[best * n + j]) = (matrix[best * n + j], matrix[k * n + j]);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void SubtractScaled(Span<double> row, ReadOnlySpan<double> other, double factor)
    {
        for (int j = 0; j < row.Length && j < other.Length; j++)
            row[j] -= factor * other[j];
    }
}
