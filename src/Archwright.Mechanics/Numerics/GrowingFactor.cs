namespace Archwright.Mechanics.Numerics;

/// <summary>Factors L D Lᵀ of a symmetric matrix that gains rows at its end and loses any of them.</summary>
/// <remarks>No pivots are sought: the matrix has to be quasi-definite (positive on some unknowns, negative on the
/// others), for which every order has factors (R. J. Vanderbei, "Symmetric quasi-definite matrices", SIAM J. Optim. 5
/// (1995) 100–113, from memory). A row costs n², a solution too.</remarks>
internal sealed class GrowingFactor
{
    private readonly int _most;
    private readonly double[] _matrix;
    private readonly double[] _lower;
    private readonly double[] _diagonal;
    private readonly double[] _scaled;

    /// <param name="most">Most rows.</param>
    /// <param name="room">Where its arrays come from; null for the heap.</param>
    public GrowingFactor(int most, Room? room = null)
    {
        _most = most;
        _matrix = Room.Take<double>(room, most * most);
        _lower = Room.Take<double>(room, most * most);
        _diagonal = Room.Take<double>(room, most);
        _scaled = Room.Take<double>(room, most);
    }

    /// <summary>Number of rows.</summary>
    public int Count { get; private set; }

    /// <summary>No rows.</summary>
    public void Clear() => Count = 0;

    /// <summary>Where the next row goes: what it has with the rows before it, and with itself last.</summary>
    public Span<double> Next() => _matrix.AsSpan(_most * Count, Count + 1);

    /// <summary>Takes the row in that <see cref="Next"/> holds.</summary>
    /// <returns>False where it depends on the others; then it is not taken in.</returns>
    public bool TryAdd()
    {
        if (!TryFactor(Count))
            return false;

        Count++;
        return true;
    }

    /// <summary>Leaves a row out.</summary>
    /// <returns>False where the rows after it depend on each other without it; then nothing may be solved any
    /// more.</returns>
    public bool TryRemove(int at)
    {
        for (int i = at + 1; i < Count; i++)
        {
            Span<double> row = _matrix.AsSpan(_most * i, i + 1);
            row[..at].CopyTo(_matrix.AsSpan(_most * (i - 1)));
            row[(at + 1)..].CopyTo(_matrix.AsSpan(_most * (i - 1) + at));
        }

        Count--;
        for (int i = at; i < Count; i++)
        {
            if (!TryFactor(i))
                return false;
        }

        return true;
    }

    /// <summary>Solves in place.</summary>
    public void Solve(Span<double> x)
    {
        for (int i = 0; i < Count; i++)
            x[i] -= Spans.Dot(_lower.AsSpan(_most * i, i), x[..i]);
        for (int i = 0; i < Count; i++)
            x[i] /= _diagonal[i];
        for (int i = Count - 1; i > 0; i--)
            Spans.AddScaled(x[..i], _lower.AsSpan(_most * i, i), -x[i]);
    }

    private bool TryFactor(int row)
    {
        ReadOnlySpan<double> from = _matrix.AsSpan(_most * row, row + 1);
        Span<double> lower = _lower.AsSpan(_most * row, row);
        Span<double> scaled = _scaled.AsSpan(0, row);
        double left = from[row];
        for (int j = 0; j < row; j++)
        {
            scaled[j] = from[j] - Spans.Dot(_lower.AsSpan(_most * j, j), scaled[..j]);
            lower[j] = scaled[j] / _diagonal[j];
            left -= lower[j] * scaled[j];
        }

        _diagonal[row] = left;
        return double.IsFinite(left) && Math.Abs(left) > Dependent * Math.Abs(from[row]);
    }

    // Share of a row's own entry that has to be left of it.
    private const double Dependent = 1e-12;
}
