namespace Archwright.Mechanics.Numerics;

/// <summary>Factors of a small, full matrix, for many right-hand sides; the workspace is kept.</summary>
internal sealed class DenseFactor
{
    private double[] _factor = [];
    private double[] _work = [];
    private int[] _order = [];
    private int _size;

    /// <summary>Makes room for a matrix.</summary>
    /// <returns>Row-major n × n, to be filled.</returns>
    public Span<double> Begin(int size)
    {
        _size = size;
        if (_order.Length < size)
        {
            _factor = new double[4 * size * size];
            _work = new double[2 * size];
            _order = new int[2 * size];
        }

        return _factor.AsSpan(0, size * size);
    }

    /// <summary>Factors what was filled in, by elimination with row pivoting.</summary>
    /// <returns>False when it is singular or not finite.</returns>
    public bool TryFactor()
    {
        for (int i = 0; i < _size; i++)
            _order[i] = i;

        for (int k = 0; k < _size; k++)
        {
            if (!BringPivotUp(k))
                return false;

            ReadOnlySpan<double> pivotRow = Row(k);
            for (int i = k + 1; i < _size; i++)
            {
                Span<double> row = Row(i);
                double share = row[k] / pivotRow[k];
                row[k] = share;
                if (share != 0)
                    Spans.AddScaled(row[(k + 1)..], pivotRow[(k + 1)..], -share);
            }
        }

        return true;
    }

    /// <summary>Solves for one right-hand side, in place.</summary>
    public void Solve(Span<double> x)
    {
        Span<double> work = _work.AsSpan(0, _size);
        for (int i = 0; i < _size; i++)
            work[i] = x[_order[i]];
        for (int i = 1; i < _size; i++)
            work[i] -= Spans.Dot(Row(i)[..i], work);
        for (int i = _size - 1; i >= 0; i--)
        {
            ReadOnlySpan<double> row = Row(i);
            work[i] = (work[i] - Spans.Dot(row[(i + 1)..], work[(i + 1)..])) / row[i];
        }

        work.CopyTo(x);
    }

    private bool BringPivotUp(int k)
    {
        int best = k;
        for (int i = k + 1; i < _size; i++)
        {
            if (Math.Abs(Row(i)[k]) > Math.Abs(Row(best)[k]))
                best = i;
        }

        if (!(Math.Abs(Row(best)[k]) > 0) || !double.IsFinite(Row(best)[k]))
            return false;
        if (best == k)
            return true;

        (_order[k], _order[best]) = (_order[best], _order[k]);
        Span<double> one = Row(k);
        Span<double> other = Row(best);
        for (int j = 0; j < _size; j++)
            (one[j], other[j]) = (other[j], one[j]);
        return true;
    }

    private Span<double> Row(int i) => _factor.AsSpan(i * _size, _size);
}
