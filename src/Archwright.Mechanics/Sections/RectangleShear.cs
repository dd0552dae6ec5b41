namespace Archwright.Mechanics.Sections;

/// <summary>Shear in a twisted rectangle with sharp edges.</summary>
/// <remarks>
/// Prandtl's stress function for the sides a (along x) and b (along y), n = 1, 3, 5 …:
/// <code>
///     φ = b²/4 − y² − (8b²/π³) Σ (−1)^((n−1)/2)/n³ · cosh(nπx/b)/cosh(nπa/2b) · cos(nπy/b),
/// </code>
/// ∇²φ = −2, φ = 0 on the edge; the shear of a twist τ is τ |∇φ|. S. P. Timoshenko, J. N. Goodier, <i>Theory of
/// Elasticity</i>, 3rd ed., McGraw-Hill 1970, chapter on torsion (from memory).
/// </remarks>
internal static class RectangleShear
{
    private const int Terms = 40;

    /// <summary>|∇φ| at a point [mm].</summary>
    public static double Lever(double a, double b, double x, double y)
    {
        double alongX = 0;
        double alongY = -2 * y;
        double factor = 8 * b / (Math.PI * Math.PI);
        for (int k = 0; k < Terms; k++)
        {
            int n = 2 * k + 1;
            double sign = k % 2 == 0 ? 1 : -1;
            double u = n * Math.PI * Math.Abs(x) / b;
            double edge = n * Math.PI * a / (2 * b);

            // cosh u / cosh edge and sinh u / cosh edge, without overflow.
            double grow = Math.Exp(u - edge) / (1 + Math.Exp(-2 * edge));
            double cosh = grow * (1 + Math.Exp(-2 * u));
            double sinh = grow * (1 - Math.Exp(-2 * u)) * Math.Sign(x);
            double angle = n * Math.PI * y / b;
            alongX -= factor * sign / (n * n) * sinh * Math.Cos(angle);
            alongY += factor * sign / (n * n) * cosh * Math.Sin(angle);
        }

        return Math.Sqrt(alongX * alongX + alongY * alongY);
    }
}
