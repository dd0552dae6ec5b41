using Archwright.Mechanics.Numerics;
using CsCheck;
using MathNet.Numerics.LinearAlgebra;

namespace Archwright.Mechanics.Tests.Numerics;

/// <summary>The chain solver against the dense solver and eigenvalues of MathNet.Numerics: another algorithm (with
/// exchange of rows), another author. Random symmetric matrices of the chain's shape; MathNet and the chain solver
/// round alike, so the tolerance is that of double precision times the condition number, which the draw keeps below
/// 10⁴.</summary>
[Trait("basis", "independent")]
public sealed class BlockTridiagonalTests
{
    private const int Size = BlockTridiagonal.Size;

    private static readonly Gen<(int Blocks, int Seed)> Systems = Gen.Select(Gen.Int[1, 12], Gen.Int[0, int.MaxValue]);

    [Fact]
    public void It_solves_positive_definite_chains_as_a_general_library_does() => Systems.Sample(draw =>
    {
        Matrix<double> dense = Chain(draw.Blocks, draw.Seed, smallest: 0.01);
        Vector<double> right = Vector(Size * draw.Blocks, draw.Seed);
        Vector<double> expected = dense.LU().Solve(right);
        double[] x = right.ToArray();
        BlockTridiagonal chain = Of(dense);

        Assert.True(chain.Factor());
        chain.Solve(x);

        for (int i = 0; i < x.Length; i++)
            Assert.Equal(expected[i], x[i], tolerance: 1e-10 * expected.InfinityNorm());
    });

    [Fact]
    public void A_right_hand_side_that_begins_late_is_solved_from_there() => Systems.Sample(draw =>
    {
        BlockTridiagonal chain = Of(Chain(draw.Blocks, draw.Seed, smallest: 0.01));
        int first = draw.Seed % draw.Blocks;
        double[] whole = Vector(Size * draw.Blocks, draw.Seed).ToArray();
        whole.AsSpan(0, Size * first).Clear();
        double[] late = [.. whole];

        Assert.True(chain.Factor());
        chain.Solve(whole);
        chain.Solve(late, first);

        for (int i = 0; i < whole.Length; i++)
            Assert.Equal(whole[i], late[i], tolerance: 1e-12 * (1 + whole.Max(Math.Abs)));
    });

    [Fact]
    public void It_refuses_a_chain_with_a_negative_eigenvalue() => Systems.Sample(draw =>
        Assert.False(Of(Chain(draw.Blocks, draw.Seed, smallest: -0.01)).Factor()));

    [Fact]
    public void It_refuses_what_is_not_a_number() => Systems.Sample(draw =>
    {
        Matrix<double> dense = Chain(draw.Blocks, draw.Seed, smallest: 0.01);
        int at = draw.Seed % dense.RowCount;
        dense[at, at] = double.NaN;

        Assert.False(Of(dense).Factor());
    });

    [Fact]
    public void Its_product_is_the_dense_product() => Systems.Sample(draw =>
    {
        Matrix<double> dense = Chain(draw.Blocks, draw.Seed, smallest: -1);
        Vector<double> x = Vector(dense.RowCount, draw.Seed);
        double[] y = new double[dense.RowCount];

        Of(dense).Multiply(x.ToArray(), y);

        Vector<double> expected = dense * x;
        for (int i = 0; i < y.Length; i++)
            Assert.Equal(expected[i], y[i], tolerance: 1e-12 * (1 + expected.InfinityNorm()));
    });

    [Fact]
    public void A_number_added_to_the_diagonal_raises_every_eigenvalue_by_it() => Systems.Sample(draw =>
    {
        BlockTridiagonal chain = Of(Chain(draw.Blocks, draw.Seed, smallest: -0.01));
        chain.AddToDiagonal(0.02);

        Assert.True(chain.Factor());
    });

    // A used workspace is cleared and filled again with fewer blocks: nothing of the larger system may be left.
    [Fact]
    public void What_was_solved_before_leaves_no_trace()
    {
        var chain = new BlockTridiagonal(9);
        foreach (int blocks in (int[])[9, 3, 7])
        {
            Matrix<double> dense = Chain(blocks, seed: blocks, smallest: 0.1);
            Vector<double> right = Vector(dense.RowCount, blocks);
            double[] x = right.ToArray();
            Fill(chain, dense);

            Assert.True(chain.Factor());
            chain.Solve(x);

            Assert.Equal(0, (dense * Vector<double>.Build.Dense(x) - right).InfinityNorm(), tolerance: 1e-11);
        }
    }

    // Random entries in the band, shifted so that the smallest eigenvalue is the wanted one.
    private static Matrix<double> Chain(int blocks, int seed, double smallest)
    {
        var random = new Random(seed);
        int n = Size * blocks;
        Matrix<double> dense = Matrix<double>.Build.Dense(n, n);
        for (int i = 0; i < n; i++)
        {
            for (int j = i; j < Math.Min(n, (i / Size + 2) * Size); j++)
                dense[i, j] = dense[j, i] = 2 * random.NextDouble() - 1;
        }

        double least = dense.Evd(Symmetricity.Symmetric).EigenValues.Real().Minimum();
        return dense + Matrix<double>.Build.DenseIdentity(n) * (smallest - least);
    }

    private static Vector<double> Vector(int size, int seed)
    {
        var random = new Random(seed ^ 0x5eed);
        return Vector<double>.Build.Dense(size, _ => 2 * random.NextDouble() - 1);
    }

    private static BlockTridiagonal Of(Matrix<double> dense)
    {
        var chain = new BlockTridiagonal(dense.RowCount / Size);
        Fill(chain, dense);
        return chain;
    }

    private static void Fill(BlockTridiagonal chain, Matrix<double> dense)
    {
        int blocks = dense.RowCount / Size;
        chain.Clear(blocks);
        for (int b = 0; b < blocks; b++)
        {
            for (int i = 0; i < Size; i++)
            {
                for (int j = 0; j < Size; j++)
                {
                    chain.Diagonal(b)[Size * i + j] = dense[Size * b + i, Size * b + j];
                    if (b + 1 < blocks)
                        chain.Coupling(b)[Size * i + j] = dense[Size * b + i, Size * (b + 1) + j];
                }
            }
        }
    }
}
