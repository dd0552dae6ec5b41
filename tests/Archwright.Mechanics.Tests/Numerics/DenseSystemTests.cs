using Archwright.Mechanics.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Archwright.Mechanics.Tests.Numerics;

public sealed class DenseSystemTests
{
    [Theory, Trait("basis", "independent")]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(64)]
    public void It_solves_as_a_general_library_does(int size)
    {
        var random = new Random(20 + size);
        Matrix<double> matrix = Matrix<double>.Build.Dense(size, size, (_, _) => random.NextDouble() - 0.5);
        Vector<double> right = Vector<double>.Build.Dense(size, _ => random.NextDouble() - 0.5);
        Vector<double> expected = matrix.LU().Solve(right);
        double[] rows = matrix.ToRowMajorArray();
        double[] x = right.ToArray();

        DenseSystem.Solve(rows, x);

        for (int i = 0; i < size; i++)
            Assert.Equal(expected[i], x[i], tolerance: 1e-11 * expected.InfinityNorm());
    }

    [Fact, Trait("basis", "law")]
    public void A_nil_on_the_diagonal_is_no_obstacle()
    {
        double[] x = [3, 5];

        DenseSystem.Solve([0, 1, 1, 0], x);

        Assert.Equal([5, 3], x);
    }

    [Theory, Trait("basis", "law")]
    [InlineData(0)]
    [InlineData(double.NaN)]
    public void Equations_that_do_not_determine_the_unknowns_are_refused(double value)
    {
        double[] x = [1, 1];
        double[] matrix = [1, 1, 1, 1 + value];

        Assert.Throws<ArithmeticException>(() => DenseSystem.Solve(matrix, x));
    }
}
