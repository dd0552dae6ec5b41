namespace Archwright.Treatment.Numerics;

/// <summary>Dense symmetric positive definite equations, A x = b, by A = L Lᵀ; the workspace is kept.</summary>
internal sealed class SymmetricSystem(int size)
{
    private readonly double[] _factor = new double[size * size];

    /// <summary>Row-major; only the lower triangle is read. <see cref="TryFactor"/> overwrites it by L.</summary>
    public Span<double> Matrix => _factor;

    /// <summary>Factors the matrix in place.</summary>
    /// <returns>False when it is not positive definite.</returns>
    public bool TryFactor()
    {
        for (int j = 0; j < size; j++)
        {
            Span<double> row = _factor.AsSpan(j * size, j + 1);
            double pivot = row[j] - Dot(row[..j], row[..j]);
            if (!(pivot > 0))
                return false;

            pivot = Math.Sqrt(pivot);
            row[j] = pivot;
            for (int i = j + 1; i < size; i++)
            {
                ref double entry = ref _factor[i * size + j];
                entry = (entry - Dot(_factor.AsSpan(i * size, j), row[..j])) / pivot;
            }
        }

        return true;
    }

    /// <summary>Solves for one right-hand side, in place.</summary>
    public void Solve(Span<double> x)
    {
        for (int i = 0; i < size; i++)
            x[i] = (x[i] - Dot(_factor.AsSpan(i * size, i), x[..i])) / _factor[i * size + i];

        for (int i = size - 1; i >= 0; i--)
        {
            x[i] /= _factor[i * size + i];
            double xi = x[i];
            ReadOnlySpan<double> row = _factor.AsSpan(i * size, i);
            for (int j = 0; j < row.Length; j++)
                x[j] -= row[j] * xi;
        }
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        int lanes = System.Numerics.Vector<double>.Count;
        var sums = System.Numerics.Vector<double>.Zero;
        int i = 0;
        for (; i <= a.Length - lanes; i += lanes)
        {
            sums += new System.Numerics.Vector<double>(a.Slice(i, lanes))
                * new System.Numerics.Vector<double>(b.Slice(i, lanes));
        }

        double sum = System.Numerics.Vector.Sum(sums);
        for (; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }
}
