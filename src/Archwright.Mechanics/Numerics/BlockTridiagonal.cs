using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Archwright.Mechanics.Numerics;

/// <summary>A symmetric block-tridiagonal matrix of 8 × 8 blocks and its L·D·Lᵀ factors.</summary>
/// <remarks>
/// A wire is one chain of nodes, so its tangent stiffness has this shape. A row of a block is one 512-bit vector; on
/// machines with narrower vectors the runtime splits it. Cost of a block: 28 row operations to eliminate, 28 more on
/// the coupling and 64 for the Schur complement, about 2 kflop. There is no exchange of rows: the caller adds to the
/// diagonal until every pivot is positive (<see cref="Factor"/> says whether one is not).
/// Cross-checked against a general dense solver in the tests.
/// </remarks>
internal sealed class BlockTridiagonal
{
    public const int Size = 8;
    private const int Square = Size * Size;

    private readonly double[] _diagonal;
    private readonly double[] _coupling;
    private readonly double[] _lower;

    /// <param name="most">Largest number of block rows that will be used.</param>
    public BlockTridiagonal(int most)
    {
        // What is used is written before it is read, and much of the room never is: nothing is cleared.
        _diagonal = GC.AllocateUninitializedArray<double>(most * Square);
        _coupling = GC.AllocateUninitializedArray<double>(most * Square);
        _lower = GC.AllocateUninitializedArray<double>(most * Square);
    }

    /// <summary>Number of block rows in use.</summary>
    public int Count { get; private set; }

    /// <summary>Diagonal block, row-major 8 × 8, symmetric; after <see cref="Factor"/>: D·Lᵀ in its upper
    /// part.</summary>
    public Span<double> Diagonal(int block) => _diagonal.AsSpan(block * Square, Square);

    /// <summary>Block that couples <paramref name="block"/> (rows) with the next one (columns), row-major 8 × 8;
    /// after <see cref="Factor"/>: L⁻¹ times it.</summary>
    public Span<double> Coupling(int block) => _coupling.AsSpan(block * Square, Square);

    /// <summary>Sets every entry to zero, and the number of block rows.</summary>
    public void Clear(int count)
    {
        Count = count;
        _diagonal.AsSpan(0, count * Square).Clear();
        _coupling.AsSpan(0, count * Square).Clear();
    }

    /// <summary>Copies the entries of another matrix, which must fit.</summary>
    public void CopyFrom(BlockTridiagonal other)
    {
        Count = other.Count;
        other._diagonal.AsSpan(0, Count * Square).CopyTo(_diagonal);
        other._coupling.AsSpan(0, Count * Square).CopyTo(_coupling);
    }

    /// <summary>Adds a number to every diagonal entry.</summary>
    public void AddToDiagonal(double value)
    {
        for (int block = 0; block < Count; block++)
        {
            for (int i = 0; i < Size; i++)
                _diagonal[block * Square + i * (Size + 1)] += value;
        }
    }

    /// <summary>y = A·x, before factoring.</summary>
    /// <param name="x">Length 8·<see cref="Count"/>.</param>
    /// <param name="y">Length 8·<see cref="Count"/>, overwritten.</param>
    public void Multiply(ReadOnlySpan<double> x, Span<double> y)
    {
        y[..(Count * Size)].Clear();
        for (int block = 0; block < Count; block++)
        {
            ReadOnlySpan<double> d = Diagonal(block);
            ReadOnlySpan<double> e = Coupling(block);
            int at = block * Size;
            for (int i = 0; i < Size; i++)
            {
                for (int j = 0; j < Size; j++)
                {
                    y[at + i] += d[i * Size + j] * x[at + j];
                    if (block == Count - 1)
                        continue;

                    y[at + i] += e[i * Size + j] * x[at + Size + j];
                    y[at + Size + j] += e[i * Size + j] * x[at + i];
                }
            }
        }
    }

    /// <summary>Factors in place.</summary>
    /// <returns>False when a pivot is not positive: the matrix is not positive definite and the factor of no
    /// use.</returns>
    public bool Factor()
    {
        ref double diagonal = ref MemoryMarshal.GetArrayDataReference(_diagonal);
        ref double coupling = ref MemoryMarshal.GetArrayDataReference(_coupling);
        ref double lower = ref MemoryMarshal.GetArrayDataReference(_lower);
        for (int block = 0; block < Count; block++)
        {
            int at = block * Square;
            ref double d = ref Unsafe.Add(ref diagonal, at);
            ref double e = ref Unsafe.Add(ref coupling, at);
            if (!EliminateBlock(ref d, ref e, ref Unsafe.Add(ref lower, at)))
                return false;

            if (block < Count - 1)
                SubtractSchur(ref d, ref e, ref Unsafe.Add(ref d, Square));
        }

        return true;
    }

    /// <summary>Solves A·x = b after <see cref="Factor"/>, in place.</summary>
    /// <param name="b">On entry the right-hand side, on return the solution; length 8·<see cref="Count"/>.</param>
    public void Solve(Span<double> b)
    {
        ref double diagonal = ref MemoryMarshal.GetArrayDataReference(_diagonal);
        ref double coupling = ref MemoryMarshal.GetArrayDataReference(_coupling);
        ref double lower = ref MemoryMarshal.GetArrayDataReference(_lower);
        ref double x = ref MemoryMarshal.GetReference(b[..(Count * Size)]);

        for (int block = 0; block < Count; block++)
        {
            int at = block * Square;
            Vector512<double> v = Vector512.LoadUnsafe(ref x, (nuint)(block * Size));
            Vector512<double> onNext = Vector512<double>.Zero;
            for (int k = 0; k < Size; k++)
            {
                double value = v.GetElement(k);
                v -= Vector512.LoadUnsafe(ref lower, (nuint)(at + k * Size)) * Vector512.Create(value);
                double scaled = value / Unsafe.Add(ref diagonal, at + k * (Size + 1));
                onNext += Vector512.LoadUnsafe(ref coupling, (nuint)(at + k * Size)) * Vector512.Create(scaled);
            }

            v.StoreUnsafe(ref x, (nuint)(block * Size));
            if (block < Count - 1)
            {
                nuint next = (nuint)((block + 1) * Size);
                (Vector512.LoadUnsafe(ref x, next) - onNext).StoreUnsafe(ref x, next);
            }
        }

        BackSubstitute(ref diagonal, ref coupling, ref lower, ref x);
    }

    // x = L⁻ᵀ (D⁻¹ v − D⁻¹ (L⁻¹E) x_next), by columns: a row of the transposed blocks is one vector.
    private void BackSubstitute(ref double diagonal, ref double coupling, ref double lower, ref double x)
    {
        Span<double> right = stackalloc double[Size];
        Vector512<double> solved = Vector512<double>.Zero;
        for (int block = Count - 1; block >= 0; block--)
        {
            int at = block * Square;
            for (int k = 0; k < Size; k++)
            {
                Vector512<double> row = Vector512.LoadUnsafe(ref coupling, (nuint)(at + k * Size));
                right[k] = (Unsafe.Add(ref x, block * Size + k) - Vector512.Sum(row * solved))
                    / Unsafe.Add(ref diagonal, at + k * (Size + 1));
            }

            for (int k = Size - 2; k >= 0; k--)
            {
                double sum = right[k];
                for (int i = k + 1; i < Size; i++)
                    sum -= Unsafe.Add(ref lower, at + k * Size + i) * right[i];

                right[k] = sum;
            }

            solved = Vector512.LoadUnsafe(ref MemoryMarshal.GetReference(right));
            solved.StoreUnsafe(ref x, (nuint)(block * Size));
        }
    }

    // Row elimination. Row k of `lower` keeps the multipliers of pivot k (column k of L, zero up to the diagonal).
    private static bool EliminateBlock(ref double d, ref double e, ref double lower)
    {
        for (int k = 0; k < Size; k++)
        {
            double pivot = Unsafe.Add(ref d, k * (Size + 1));
            if (!(pivot > 0))
                return false;

            // By symmetry the entries below the pivot equal those to its right.
            Vector512<double> row = Vector512.LoadUnsafe(ref d, (nuint)(k * Size));
            Vector512<double> factors = row * Vector512.Create(1 / pivot) * After(k);
            factors.StoreUnsafe(ref lower, (nuint)(k * Size));

            Vector512<double> couplingRow = Vector512.LoadUnsafe(ref e, (nuint)(k * Size));
            for (int i = k + 1; i < Size; i++)
            {
                Vector512<double> factor = Vector512.Create(Unsafe.Add(ref lower, k * Size + i));
                nuint target = (nuint)(i * Size);
                (Vector512.LoadUnsafe(ref d, target) - factor * row).StoreUnsafe(ref d, target);
                (Vector512.LoadUnsafe(ref e, target) - factor * couplingRow).StoreUnsafe(ref e, target);
            }
        }

        return true;
    }

    private static void SubtractSchur(ref double d, ref double e, ref double next)
    {
        for (int k = 0; k < Size; k++)
        {
            Vector512<double> scaled = Vector512.LoadUnsafe(ref e, (nuint)(k * Size))
                * Vector512.Create(1 / Unsafe.Add(ref d, k * (Size + 1)));
            for (int j = 0; j < Size; j++)
            {
                nuint target = (nuint)(j * Size);
                (Vector512.LoadUnsafe(ref next, target) - Vector512.Create(Unsafe.Add(ref e, k * Size + j)) * scaled)
                    .StoreUnsafe(ref next, target);
            }
        }
    }

    // One in the lanes after k, zero before.
    private static Vector512<double> After(int k) => Vector512.LoadUnsafe(
        ref MemoryMarshal.GetReference(Steps), (nuint)(Size - 1 - k));

    private static ReadOnlySpan<double> Steps => [0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 1];
}
