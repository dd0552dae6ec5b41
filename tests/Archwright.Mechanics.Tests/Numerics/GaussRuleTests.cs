using Archwright.Mechanics.Numerics;
using MathNet.Numerics.Integration;

namespace Archwright.Mechanics.Tests.Numerics;

public sealed class GaussRuleTests
{
    [Theory, Trait("basis", "independent")]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(16)]
    [InlineData(32)]
    [InlineData(64)]
    public void It_is_the_rule_of_a_general_library(int count)
    {
        var expected = new GaussLegendreRule(0, 1, count);

        (double[] points, double[] weights) = GaussRule.Legendre(count);

        (double Point, double Weight)[] inOrder = [.. Enumerable.Range(0, count)
            .Select(i => (expected.GetAbscissa(i), expected.GetWeight(i)))
            .OrderBy(p => p.Item1)];
        for (int i = 0; i < count; i++)
        {
            Assert.Equal(inOrder[i].Point, points[i], tolerance: 1e-15);
            Assert.Equal(inOrder[i].Weight, weights[i], tolerance: 1e-14);
        }
    }

    [Fact, Trait("basis", "law")]
    public void It_integrates_polynomials_of_degree_2n_minus_1_exactly_and_not_the_next()
    {
        (double[] points, double[] weights) = GaussRule.Legendre(4);

        double Integral(int degree) => points.Zip(weights, (x, w) => w * Math.Pow(x, degree)).Sum();

        for (int degree = 0; degree <= 7; degree++)
            Assert.Equal(1.0 / (degree + 1), Integral(degree), tolerance: 1e-15);
        Assert.NotEqual(1.0 / 9, Integral(8), tolerance: 1e-6);
    }

    [Fact, Trait("basis", "law")]
    public void A_rule_without_points_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => GaussRule.Legendre(0));
}
