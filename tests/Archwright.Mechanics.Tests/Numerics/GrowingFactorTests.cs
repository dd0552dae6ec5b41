using Archwright.Mechanics.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Archwright.Mechanics.Tests.Numerics;

public sealed class GrowingFactorTests
{
    private const int Size = 24;

    [Fact, Trait("basis", "independent")]
    public void Rows_that_come_and_go_leave_what_a_general_library_solves()
    {
        var random = new Random(5);
        Matrix<double> whole = QuasiDefinite(random);
        var factor = new GrowingFactor(Size);
        var inside = new List<int>();
        for (int pass = 0; pass < 200; pass++)
        {
            if (inside.Count > 0 && (inside.Count == Size || random.NextDouble() < 0.4))
            {
                int at = random.Next(inside.Count);
                inside.RemoveAt(at);
                Assert.True(factor.TryRemove(at));
            }
            else
            {
                int next = Enumerable.Range(0, Size).Except(inside).OrderBy(_ => random.Next()).First();
                inside.Add(next);
                Fill(factor.Next(), whole, inside);
                Assert.True(factor.TryAdd());
            }

            Assert.Equal(inside.Count, factor.Count);
            AssertSolves(factor, whole, inside, random);
        }
    }

    [Fact, Trait("basis", "law")]
    public void A_row_that_depends_on_the_others_is_not_taken_in()
    {
        var factor = new GrowingFactor(3);
        new double[] { 2 }.CopyTo(factor.Next());
        Assert.True(factor.TryAdd());
        new double[] { 4, 8 }.CopyTo(factor.Next());

        Assert.False(factor.TryAdd());

        Assert.Equal(1, factor.Count);
    }

    [Theory, Trait("basis", "law")]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(11)]
    public void Sums_over_spans_are_those_of_single_products(int length)
    {
        var random = new Random(length);
        double[] a = [.. Enumerable.Range(0, length).Select(_ => random.NextDouble() - 0.5)];
        double[] b = [.. Enumerable.Range(0, length + 2).Select(_ => random.NextDouble() - 0.5)];
        double[] sum = [.. a];

        Spans.AddScaled(sum, b, -0.7);

        Assert.Equal(a.Zip(b, (x, y) => x * y).Sum(), Spans.Dot(a, b), tolerance: 1e-15);
        Assert.Equal(a.Zip(b, (x, y) => x - 0.7 * y), sum, (x, y) => Math.Abs(x - y) < 1e-15);
    }

    // Positive on the first half of the unknowns, negative on the others, whatever couples them.
    private static Matrix<double> QuasiDefinite(Random random)
    {
        Matrix<double> half = Matrix<double>.Build.Dense(Size, Size, (_, _) => random.NextDouble() - 0.5);
        Matrix<double> definite = half * half.Transpose() + Matrix<double>.Build.DenseIdentity(Size) * 0.1;
        return Matrix<double>.Build.Dense(Size, Size, (i, j) => i < Size / 2 == j < Size / 2
            ? i < Size / 2 ? definite[i, j] : -definite[i, j]
            : half[Math.Min(i, j), Math.Max(i, j)]);
    }

    private static void Fill(Span<double> row, Matrix<double> whole, List<int> inside)
    {
        for (int a = 0; a < row.Length; a++)
            row[a] = whole[inside[^1], inside[a]];
    }

    private static void AssertSolves(GrowingFactor factor, Matrix<double> whole, List<int> inside, Random random)
    {
        if (inside.Count == 0)
            return;

        Matrix<double> part = Matrix<double>.Build.Dense(
            inside.Count, inside.Count, (i, j) => whole[inside[i], inside[j]]);
        Vector<double> right = Vector<double>.Build.Dense(inside.Count, _ => random.NextDouble() - 0.5);
        Vector<double> expected = part.LU().Solve(right);
        double[] x = right.ToArray();
        factor.Solve(x);
        for (int i = 0; i < x.Length; i++)
            Assert.Equal(expected[i], x[i], tolerance: 1e-9 * Math.Max(1, expected.InfinityNorm()));
    }
}
