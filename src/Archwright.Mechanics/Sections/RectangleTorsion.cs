using System.Runtime.CompilerServices;
using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Sections;

/// <summary>Saint-Venant torsion constant of rectangles with sharp or rounded edges.</summary>
/// <remarks>
/// Prandtl's stress function φ is nil on the edge of the section and ∇²φ = −2 inside; then J = 2 ∫ φ dA
/// (S. P. Timoshenko, J. N. Goodier, <i>Theory of Elasticity</i>, 3rd ed., McGraw-Hill 1970, chapter on torsion,
/// from memory). Below, a ≥ b are the sides and r is the edge radius; the same with a table of accuracy stands in
/// docs/theory/sections.md, equations 1 to 4.
/// <para><b>Sharp edges</b>: Saint-Venant's series, to rounding.</para>
/// <para><b>Rounded edges</b>: φ = u − |z|²/2 with z = x + iy, u harmonic and u = |z|²/2 on the edge. Take
/// u = Re (1/2πi) ∮ μ(t) dt/(t − z), a double layer of real density μ on the edge. Letting z come to the edge from
/// inside gives an integral equation of the second kind for μ,
/// <code>
///     μ(z)/2 + ∮ K(z, t) μ(t) = |z|²/2,      K = Re dt / (2πi (t − z)),
/// </code>
/// where K is, but for 1/2π, the angle under which z sees the element dt: nil for two points of one flat side, and
/// |dt|/(4πr) for two points of one arc (the angle at the circumference is half of the angle at the centre). Then
/// <code>
///     J = 2 ∫ u dA − ∫ |z|² dA,
///     2 ∫ u dA = 2 Re ∮ μ(t) G(t) dt/(2πi),     G(t) = ∫ dA/(t − z) = (1/2i) ∮ conj(z − t)/(t − z) dz
/// </code>
/// (the last step is Green's theorem: ∂/∂z̄ of conj(z − t) is 1). Both axes are axes of symmetry, so a quarter of the
/// edge carries the unknowns and its mirror images are summed. The integrals become sums over the Gauss points of
/// <see cref="RoundedOutline"/> (Nyström's method: K. E. Atkinson, <i>The Numerical Solution of Integral Equations of
/// the Second Kind</i>, Cambridge 1997, chapters 7 and 8, from memory): 64 equations, whatever the shape.
/// </para>
/// <para><b>Two short cuts</b>. Below r = b/500 the edges count as sharp: rounding takes 2e-9 of J at most there. And
/// the two ends of a long section do not feel each other: what rounding takes away from a rectangle longer than 5 : 1
/// is what it takes away from 5 : 1, but for 3e-8 of J.</para>
/// <para><b>Accuracy</b> (relative, against 128 equations; the tests repeat it): 5e-10 for r ≥ b/20 and 5e-9 for
/// r ≥ b/100 where a ≤ 4b, which holds every wire of the trade; 1e-7 for any admissible section.</para>
/// </remarks>
internal static class RectangleTorsion
{
    private const double Sharp = 2e-3;      // edge radius / shorter side
    private const double Slender = 5;       // longer side / shorter side

    // (31/32) ζ(5) = Σ 1/n⁵ over odd n
    private const double SumOfOddFifthPowers = 31.0 / 32 * 1.0369277551433699;

    /// <summary>J [mm⁴].</summary>
    /// <param name="thickness">One side [mm].</param>
    /// <param name="width">The other side [mm].</param>
    /// <param name="edgeRadius">At least 0 and below half of the shorter side [mm].</param>
    public static double Constant(double thickness, double width, double edgeRadius)
    {
        double b = Math.Min(thickness, width);
        double ratio = Math.Max(thickness, width) / b;
        double radius = edgeRadius / b;

        double scaled = SharpEdges(ratio);
        if (radius >= Sharp)
        {
            double near = Math.Min(ratio, Slender);
            scaled -= SharpEdges(near) - RoundedEdges(new RoundedOutline(near / 2, 0.5, radius), near, radius);
        }

        return scaled * b * b * b * b;
    }

    /// <summary>J/b⁴ of a rectangle with sharp edges.</summary>
    /// <param name="ratio">a/b, at least 1.</param>
    /// <remarks>J/b⁴ = (1/3)(a/b) − (64/π⁵) Σ tanh(nπa/2b)/n⁵, n = 1, 3, 5 …; with tanh x = 1 − 2/(e²ˣ + 1) the slow
    /// part of the sum is a known number and seven terms of the rest are exact to rounding.</remarks>
    internal static double SharpEdges(double ratio)
    {
        double sum = SumOfOddFifthPowers;
        for (int n = 1; n <= 13; n += 2)
            sum -= 2 / (Math.Pow(n, 5) * (Math.Exp(n * Math.PI * ratio) + 1));

        return ratio / 3 - 64 / Math.Pow(Math.PI, 5) * sum;
    }

    /// <summary>J/b⁴ of a rectangle with rounded edges by the integral equation.</summary>
    /// <param name="outline">The points, for a shorter side of 1.</param>
    /// <param name="ratio">a/b, at least 1.</param>
    /// <param name="radius">r/b, above 0 and below 1/2.</param>
    internal static double RoundedEdges(RoundedOutline outline, double ratio, double radius)
    {
        int n = outline.Count;
        var matrix = new double[n * n];
        var density = new double[n];
        var share = new double[n];      // of each point's density in 2 ∫ u dA
        for (int i = 0; i < n; i++)
        {
            double x = outline.X[i];
            double y = outline.Y[i];
            share[i] = FillRow(outline, i, matrix.AsSpan(i * n, n));
            matrix[i * n + i] += 0.5;
            density[i] = (x * x + y * y) / 2;
        }

        DenseSystem.Solve(matrix, density);

        double twiceVolume = 0;
        for (int i = 0; i < n; i++)
            twiceVolume += share[i] * density[i];

        double polar = RoundedMoments.Second(ratio, 1, radius) + RoundedMoments.Second(1, ratio, radius);
        return twiceVolume - polar;
    }

    // Row i of K, and (2/π) Re (dtᵢ Σⱼ conj(zⱼ − tᵢ)/(zⱼ − tᵢ) dzⱼ), both summed over point j and its mirror images.
    // Optimised at the first call: a catalogue of 80 sections is read once, and would all run unoptimised, four times
    // slower.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double FillRow(RoundedOutline outline, int i, Span<double> row)
    {
        double sumX = 0;
        double sumY = 0;
        for (int j = 0; j < row.Length; j++)
        {
            double px = outline.X[j];
            double py = outline.Y[j];
            double dx = outline.Dx[j];
            double dy = outline.Dy[j];

            double angle = Seen(outline, i, -px, py, dx, -dy, ref sumX, ref sumY)
                + Seen(outline, i, -px, -py, -dx, -dy, ref sumX, ref sumY)
                + Seen(outline, i, px, -py, -dx, dy, ref sumX, ref sumY);

            if (i == j)
            {
                // the limit of conj(z − t)/(z − t) dz
                sumX += dx;
                sumY -= dy;
            }
            else
            {
                double itself = Seen(outline, i, px, py, dx, dy, ref sumX, ref sumY);
                if (outline.Piece[i] != outline.Piece[j])
                    angle += itself;
            }

            if (outline.Piece[i] == outline.Piece[j])
                angle += outline.Curvature[j] / 2 * Math.Sqrt(dx * dx + dy * dy);

            row[j] = angle / (2 * Math.PI);
        }

        return 2 / Math.PI * (outline.Dx[i] * sumX - outline.Dy[i] * sumY);
    }

    // The angle under which point i sees the element (dx, dy) at (px, py): Im dz/(z − t).
    // Adds conj(z − t)/(z − t) dz to the sum.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Seen(
        RoundedOutline outline, int i, double px, double py, double dx, double dy, ref double sumX, ref double sumY)
    {
        double x = px - outline.X[i];
        double y = py - outline.Y[i];
        double inverse = 1 / (x * x + y * y);
        double cos = (x * x - y * y) * inverse;
        double sin = -2 * x * y * inverse;
        sumX += cos * dx - sin * dy;
        sumY += cos * dy + sin * dx;
        return (x * dy - y * dx) * inverse;
    }
}
