using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Archwright.Mechanics.Numerics;

/// <summary>A symmetric block-tridiagonal matrix of 8 × 8 blocks, and its block factors.</summary>
/// <remarks>
/// <para>
/// A wire is one chain of nodes, so its tangent stiffness has this shape. With D the diagonal blocks and E those that
/// couple a block with the next,
/// <code>
///     S₀ = D₀,   Hᵢ = Sᵢ⁻¹ Eᵢ,   Sᵢ₊₁ = Dᵢ₊₁ − Eᵢᵀ Hᵢ,
///     b → bᵢ₊₁ − Hᵢᵀ bᵢ, forward;   xᵢ = Sᵢ⁻¹ bᵢ − Hᵢ xᵢ₊₁, backward.
/// </code>
/// S⁻¹ and H are formed in full. That doubles the work of factoring, but a solution then takes three products of a
/// block with a vector, each a sum of eight rows that do not wait for each other, in place of triangular solutions
/// where every number waits for the one before; and an iteration solves from three to a dozen times with the same
/// factors. S is eliminated without exchange of rows: the caller adds to the diagonal until every pivot is positive
/// (<see cref="Factor"/> says whether one is not).
/// </para>
/// <para>
/// A row of a block is one 512-bit vector; on machines with narrower vectors the runtime splits it. Cross-checked
/// against a general dense solver in the tests.
/// </para>
/// </remarks>
internal sealed class BlockTridiagonal
{
    public const int Size = 8;
    private const int Square = Size * Size;

    private readonly double[] _diagonal;
    private readonly double[] _coupling;
    private readonly double[] _inverse;
    private readonly double[] _carry;
    private readonly double[] _carryTransposed;

    /// <param name="most">Largest number of block rows that will be used.</param>
    /// <param name="room">Where its arrays come from; null for the heap.</param>
    public BlockTridiagonal(int most, Room? room = null)
    {
        // What is used is written before it is read, and much of the room never is: nothing is cleared.
        _diagonal = Room.Take<double>(room, most * Square);
        _coupling = Room.Take<double>(room, most * Square);
        _inverse = Room.Take<double>(room, most * Square);
        _carry = Room.Take<double>(room, most * Square);
        _carryTransposed = Room.Take<double>(room, most * Square);
    }

    /// <summary>Number of block rows in use.</summary>
    public int Count { get; private set; }

    /// <summary>Diagonal block, row-major 8 × 8, symmetric; of no use after <see cref="Factor"/>.</summary>
    public Span<double> Diagonal(int block) => _diagonal.AsSpan(block * Square, Square);

    /// <summary>Block that couples <paramref name="block"/> (rows) with the next one (columns), row-major 8 × 8; of no
    /// use after <see cref="Factor"/>.</summary>
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
        ref double diagonal = ref MemoryMarshal.GetArrayDataReference(_diagonal);
        ref double coupling = ref MemoryMarshal.GetArrayDataReference(_coupling);
        ref double from = ref Unsafe.AsRef(in MemoryMarshal.GetReference(x[..(Count * Size)]));
        Span<double> to = y[..(Count * Size)];
        Vector512<double> carried = Vector512<double>.Zero;
        for (int block = 0; block < Count; block++)
        {
            int at = block * Size;
            ref double e = ref Unsafe.Add(ref coupling, block * Square);
            (Product(ref Unsafe.Add(ref diagonal, block * Square), ref Unsafe.Add(ref from, at)) + carried)
                .StoreUnsafe(ref to[at]);
            if (block == Count - 1)
                break;

            carried = Product(ref e, ref Unsafe.Add(ref from, at));
            Vector512<double> next = Vector512.LoadUnsafe(ref from, (nuint)(at + Size));
            for (int i = 0; i < Size; i++)
                to[at + i] += Vector512.Sum(Vector512.LoadUnsafe(ref e, (nuint)(i * Size)) * next);
        }
    }

    /// <summary>Factors in place.</summary>
    /// <returns>False when a pivot is not positive: the matrix is not positive definite and the factor of no
    /// use.</returns>
    public bool Factor()
    {
        ref double diagonal = ref MemoryMarshal.GetArrayDataReference(_diagonal);
        ref double coupling = ref MemoryMarshal.GetArrayDataReference(_coupling);
        ref double inverse = ref MemoryMarshal.GetArrayDataReference(_inverse);
        ref double carry = ref MemoryMarshal.GetArrayDataReference(_carry);
        ref double transposed = ref MemoryMarshal.GetArrayDataReference(_carryTransposed);
        Span<double> reciprocals = stackalloc double[Size];
        ref double r = ref MemoryMarshal.GetReference(reciprocals);
        for (int block = 0; block < Count; block++)
        {
            int at = block * Square;
            ref double s = ref Unsafe.Add(ref diagonal, at);
            ref double e = ref Unsafe.Add(ref coupling, at);
            ref double i = ref Unsafe.Add(ref inverse, at);
            ref double h = ref Unsafe.Add(ref carry, at);
            if (!Eliminate(ref s, ref e, ref i, ref r))
                return false;

            Scale(ref e, ref i, ref h, ref r);
            if (block < Count - 1)
                SubtractSchur(ref e, ref h, ref Unsafe.Add(ref s, Square));

            BackSubstitute(ref s, ref h, ref i, ref r);
            Transpose(ref h, ref Unsafe.Add(ref transposed, at));
        }

        return true;
    }

    /// <summary>Solves A·x = b after <see cref="Factor"/>, in place.</summary>
    /// <param name="b">On entry the right-hand side, on return the solution; length 8·<see cref="Count"/>.</param>
    /// <param name="first">First block of the right-hand side that is not zero.</param>
    public void Solve(Span<double> b, int first = 0)
    {
        ref double inverse = ref MemoryMarshal.GetArrayDataReference(_inverse);
        ref double carry = ref MemoryMarshal.GetArrayDataReference(_carry);
        ref double transposed = ref MemoryMarshal.GetArrayDataReference(_carryTransposed);
        ref double x = ref MemoryMarshal.GetReference(b[..(Count * Size)]);
        for (int block = first; block < Count - 1; block++)
        {
            ref double here = ref Unsafe.Add(ref x, block * Size);
            Vector512<double> next = Vector512.LoadUnsafe(ref here, Size)
                - Product(ref Unsafe.Add(ref carry, block * Square), ref here);
            next.StoreUnsafe(ref here, Size);
        }

        for (int block = Count - 1; block >= 0; block--)
        {
            ref double here = ref Unsafe.Add(ref x, block * Size);
            Vector512<double> solved = block >= first
                ? Product(ref Unsafe.Add(ref inverse, block * Square), ref here)
                : Vector512<double>.Zero;
            if (block < Count - 1)
                solved -= Product(ref Unsafe.Add(ref transposed, block * Square), ref Unsafe.Add(ref here, Size));

            solved.StoreUnsafe(ref here);
        }
    }

    // Sum of rows, each times its number of the vector; in halves that do not wait for each other.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Product(ref double rows, ref double vector)
    {
        Vector512<double> even = Vector512.LoadUnsafe(ref rows) * Vector512.Create(vector);
        Vector512<double> odd = Vector512.LoadUnsafe(ref rows, Size) * Vector512.Create(Unsafe.Add(ref vector, 1));
        for (int k = 2; k < Size; k += 2)
        {
            even += Vector512.LoadUnsafe(ref rows, (nuint)(k * Size)) * Vector512.Create(Unsafe.Add(ref vector, k));
            odd += Vector512.LoadUnsafe(ref rows, (nuint)((k + 1) * Size))
                * Vector512.Create(Unsafe.Add(ref vector, k + 1));
        }

        return even + odd;
    }

    // L⁻¹ of S = L D Lᵀ into `inverse`, L⁻¹ E in place of E, and one over the pivots. S keeps D Lᵀ in its upper part.
    private static bool Eliminate(ref double s, ref double e, ref double inverse, ref double reciprocals)
    {
        for (int k = 0; k < Size; k++)
            Vector512.LoadUnsafe(ref MemoryMarshal.GetReference(Units), (nuint)(Size - 1 - k))
                .StoreUnsafe(ref inverse, (nuint)(k * Size));

        for (int k = 0; k < Size; k++)
        {
            double pivot = Unsafe.Add(ref s, k * (Size + 1));
            if (!(pivot > 0))
                return false;

            double reciprocal = 1 / pivot;
            Unsafe.Add(ref reciprocals, k) = reciprocal;
            Vector512<double> row = Vector512.LoadUnsafe(ref s, (nuint)(k * Size));
            Vector512<double> ofCoupling = Vector512.LoadUnsafe(ref e, (nuint)(k * Size));
            Vector512<double> ofInverse = Vector512.LoadUnsafe(ref inverse, (nuint)(k * Size));
            for (int i = k + 1; i < Size; i++)
            {
                // By symmetry the entries below the pivot equal those to its right.
                Vector512<double> factor = Vector512.Create(Unsafe.Add(ref s, k * Size + i) * reciprocal);
                nuint target = (nuint)(i * Size);
                (Vector512.LoadUnsafe(ref s, target) - factor * row).StoreUnsafe(ref s, target);
                (Vector512.LoadUnsafe(ref e, target) - factor * ofCoupling).StoreUnsafe(ref e, target);
                (Vector512.LoadUnsafe(ref inverse, target) - factor * ofInverse).StoreUnsafe(ref inverse, target);
            }
        }

        return true;
    }

    // D⁻¹ L⁻¹ E into `carry`, and D⁻¹ L⁻¹ in place of L⁻¹.
    private static void Scale(ref double e, ref double inverse, ref double carry, ref double reciprocals)
    {
        for (int k = 0; k < Size; k++)
        {
            nuint row = (nuint)(k * Size);
            Vector512<double> reciprocal = Vector512.Create(Unsafe.Add(ref reciprocals, k));
            (Vector512.LoadUnsafe(ref e, row) * reciprocal).StoreUnsafe(ref carry, row);
            (Vector512.LoadUnsafe(ref inverse, row) * reciprocal).StoreUnsafe(ref inverse, row);
        }
    }

    // Eᵀ S⁻¹ E from the next diagonal block.
    private static void SubtractSchur(ref double e, ref double scaled, ref double next)
    {
        for (int j = 0; j < Size; j++)
        {
            nuint target = (nuint)(j * Size);
            Vector512<double> row = Vector512.LoadUnsafe(ref next, target);
            for (int k = 0; k < Size; k++)
            {
                row -= Vector512.Create(Unsafe.Add(ref e, k * Size + j))
                    * Vector512.LoadUnsafe(ref scaled, (nuint)(k * Size));
            }

            row.StoreUnsafe(ref next, target);
        }
    }

    // L⁻ᵀ on both.
    private static void BackSubstitute(ref double s, ref double carry, ref double inverse, ref double reciprocals)
    {
        for (int k = Size - 2; k >= 0; k--)
        {
            nuint target = (nuint)(k * Size);
            double reciprocal = Unsafe.Add(ref reciprocals, k);
            Vector512<double> ofCarry = Vector512.LoadUnsafe(ref carry, target);
            Vector512<double> ofInverse = Vector512.LoadUnsafe(ref inverse, target);
            for (int i = k + 1; i < Size; i++)
            {
                Vector512<double> factor = Vector512.Create(Unsafe.Add(ref s, k * Size + i) * reciprocal);
                ofCarry -= factor * Vector512.LoadUnsafe(ref carry, (nuint)(i * Size));
                ofInverse -= factor * Vector512.LoadUnsafe(ref inverse, (nuint)(i * Size));
            }

            ofCarry.StoreUnsafe(ref carry, target);
            ofInverse.StoreUnsafe(ref inverse, target);
        }
    }

    private static void Transpose(ref double from, ref double to)
    {
        for (int i = 0; i < Size; i++)
        {
            for (int j = 0; j < Size; j++)
                Unsafe.Add(ref to, j * Size + i) = Unsafe.Add(ref from, i * Size + j);
        }
    }

    // Rows of the unit matrix, from one place on.
    private static ReadOnlySpan<double> Units => [0, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0];
}
