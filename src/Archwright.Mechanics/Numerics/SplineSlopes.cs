namespace Archwright.Mechanics.Numerics;

/// <summary>Slopes of interpolating cubic splines.</summary>
internal static class SplineSlopes
{
    /// <summary>Slopes at the knots of the not-a-knot cubic spline, by the tridiagonal system for slopes:
    /// h₍ᵢ₎ d₍ᵢ₋₁₎ + 2(h₍ᵢ₋₁₎ + h₍ᵢ₎) d₍ᵢ₎ + h₍ᵢ₋₁₎ d₍ᵢ₊₁₎ = 3(h₍ᵢ₎ δ₍ᵢ₋₁₎ + h₍ᵢ₋₁₎ δ₍ᵢ₎).</summary>
    /// <param name="points">Knots, at least two.</param>
    /// <param name="chord">Length of the parameter interval between neighbours; one less.</param>
    public static Vector3[] NotAKnot(ReadOnlySpan<Vector3> points, ReadOnlySpan<double> chord)
    {
        int n = points.Length;
        var secant = new Vector3[n - 1];
        for (int i = 0; i < n - 1; i++)
            secant[i] = (points[i + 1] - points[i]) / chord[i];

        if (n == 2)
            return [secant[0], secant[0]];
        if (n == 3)
            return Parabola(secant, chord);

        var lower = new double[n];
        var middle = new double[n];
        var upper = new double[n];
        var right = new Vector3[n];
        for (int i = 1; i < n - 1; i++)
        {
            lower[i] = chord[i];
            middle[i] = 2 * (chord[i - 1] + chord[i]);
            upper[i] = chord[i - 1];
            right[i] = (secant[i - 1] * chord[i] + secant[i] * chord[i - 1]) * 3;
        }

        double a = chord[0];
        double b = chord[1];
        middle[0] = b;
        upper[0] = a + b;
        right[0] = (secant[0] * ((a + 2 * (a + b)) * b) + secant[1] * (a * a)) / (a + b);
        a = chord[n - 2];
        b = chord[n - 3];
        middle[n - 1] = b;
        lower[n - 1] = a + b;
        right[n - 1] = (secant[n - 2] * ((a + 2 * (a + b)) * b) + secant[n - 3] * (a * a)) / (a + b);
        return SolveTridiagonal(lower, middle, upper, right);
    }

    private static Vector3[] Parabola(Vector3[] secant, ReadOnlySpan<double> chord)
    {
        Vector3 bend = (secant[1] - secant[0]) / (chord[0] + chord[1]);
        return
        [
            secant[0] - bend * chord[0],
            secant[0] + bend * chord[0],
            secant[1] + bend * chord[1],
        ];
    }

    private static Vector3[] SolveTridiagonal(double[] lower, double[] middle, double[] upper, Vector3[] right)
    {
        int n = middle.Length;
        for (int i = 1; i < n; i++)
        {
            double factor = lower[i] / middle[i - 1];
            middle[i] -= factor * upper[i - 1];
            right[i] -= right[i - 1] * factor;
        }

        right[n - 1] /= middle[n - 1];
        for (int i = n - 2; i >= 0; i--)
            right[i] = (right[i] - right[i + 1] * upper[i]) / middle[i];

        return right;
    }
}
