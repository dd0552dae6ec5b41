using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Tests.Numerics;

[Trait("basis", "law")]
public sealed class DenseFactorTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(40)]
    public void What_is_solved_gives_the_right_hand_side_again(int size)
    {
        var random = new Random(size);
        var factor = new DenseFactor();
        factor.Begin(2 * size); // room that was larger before
        Span<double> matrix = factor.Begin(size);
        for (int i = 0; i < matrix.Length; i++)
            matrix[i] = random.NextDouble() - 0.5;
        matrix[0] = 0; // a pivot has to be brought up, but for a single equation
        if (size == 1)
            matrix[0] = 3;
        double[] copy = matrix.ToArray();
        double[] wanted = [.. Enumerable.Range(0, size).Select(_ => random.NextDouble())];
        double[] x = new double[size];
        for (int i = 0; i < size; i++)
            x[i] = Spans.Dot(copy.AsSpan(i * size, size), wanted);

        Assert.True(factor.TryFactor());
        factor.Solve(x);

        for (int i = 0; i < size; i++)
            Assert.Equal(wanted[i], x[i], 1e-9);
    }

    [Fact]
    public void A_singular_matrix_and_one_that_is_not_finite_have_no_factors()
    {
        var factor = new DenseFactor();
        factor.Begin(2).Fill(1);
        Assert.False(factor.TryFactor());

        factor.Begin(2).Fill(double.NaN);
        Assert.False(factor.TryFactor());
    }
}
