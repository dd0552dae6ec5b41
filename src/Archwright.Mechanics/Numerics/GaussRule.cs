namespace Archwright.Mechanics.Numerics;

/// <summary>Gauss–Legendre quadrature on the interval from 0 to 1.</summary>
internal static class GaussRule
{
    /// <summary>Points in rising order and their weights, which sum to 1; exact for polynomials up to degree
    /// 2 <paramref name="count"/> − 1.</summary>
    /// <param name="count">Number of points, at least 1.</param>
    /// <remarks>The points are the roots of the Legendre polynomial P, found by Newton's method from
    /// x ≈ cos(π (i + 3/4) / (n + 1/2)); the weights are 2 / ((1 − x²) P′(x)²). M. Abramowitz, I. A. Stegun,
    /// <i>Handbook of Mathematical Functions</i>, 1964, 25.4.29 (from memory).</remarks>
    public static (double[] Points, double[] Weights) Legendre(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);

        var points = new double[count];
        var weights = new double[count];
        for (int i = 0; i < count; i++)
        {
            double x = Math.Cos(Math.PI * (i + 0.75) / (count + 0.5));
            double slope = 1;
            for (int step = 0; step < 8; step++)    // quadratic from a start good to 1e-3: four steps reach rounding
            {
                (double value, slope) = LegendrePolynomial(count, x);
                x -= value / slope;
            }

            points[count - 1 - i] = (1 + x) / 2;
            weights[count - 1 - i] = 1 / ((1 - x * x) * slope * slope);
        }

        return (points, weights);
    }

    // k Pₖ = (2k − 1) x Pₖ₋₁ − (k − 1) Pₖ₋₂,   (x² − 1) Pₙ′ = n (x Pₙ − Pₙ₋₁)
    private static (double Value, double Slope) LegendrePolynomial(int degree, double x)
    {
        double before = 1;
        double value = x;
        for (int k = 2; k <= degree; k++)
            (before, value) = (value, ((2 * k - 1) * x * value - (k - 1) * before) / k);

        return (value, degree * (x * value - before) / (x * x - 1));
    }
}
