using Archwright.Mechanics.Numerics;

namespace Archwright.Dentition.ArchForms;

/// <summary>An arch curve laid through points as well as it goes.</summary>
/// <param name="Form">The curve.</param>
/// <param name="Front">y of its front point in the patient's frame [mm].</param>
/// <param name="Residual">Root mean square distance of the points from it, forward or backward [mm].</param>
public sealed record ArchFit(PolynomialArch Form, double Front, double Residual)
{
    private const double Scale = 30;

    /// <summary>Fits a polynomial arch to points by least squares: y = front − A x⁶ − B x², the midline at x = 0.
    /// </summary>
    /// <param name="points">At least four; their x and y are used [mm].</param>
    /// <returns>Null when there are too few points, or the best curve does not run backward all the way.</returns>
    public static ArchFit? ToPoints(IReadOnlyList<Vector3> points)
    {
        if (points.Count < 4 || points.Any(point => !point.IsFinite))
            return null;

        // Unknowns front, −A Scale⁶ and −B Scale², so that the equations are well scaled.
        var normal = new double[3, 4];
        foreach (Vector3 point in points)
        {
            double square = point.X * point.X / (Scale * Scale);
            ReadOnlySpan<double> row = [1, square * square * square, square, point.Y];
            for (int i = 0; i < 3; i++)
            {
                for (int j = 0; j < 4; j++)
                    normal[i, j] += row[i] * row[j];
            }
        }

        if (Solved(normal) is not { } found)
            return null;

        double a = -found[1] / Math.Pow(Scale, 6);
        double b = -found[2] / (Scale * Scale);
        double width = Math.Clamp(2 * points.Max(point => Math.Abs(point.X)) + 12, 10, 120);
        if (!(b > 0) || !(3 * a * Math.Pow(width / 2, 4) + b > 0))
            return null;

        var form = new PolynomialArch(a, b, width);
        double sum = points.Sum(point =>
        {
            double off = point.Y - (found[0] - form.DepthAt(Math.Abs(point.X)));
            return off * off;
        });
        return new ArchFit(form, found[0], Math.Sqrt(sum / points.Count));
    }

    // Gauss elimination with row exchange.
    private static double[]? Solved(double[,] m)
    {
        for (int p = 0; p < 3; p++)
        {
            int best = p;
            for (int i = p + 1; i < 3; i++)
                best = Math.Abs(m[i, p]) > Math.Abs(m[best, p]) ? i : best;
            if (Math.Abs(m[best, p]) < 1e-9)
                return null;

            for (int j = 0; j < 4; j++)
                (m[p, j], m[best, j]) = (m[best, j], m[p, j]);
            for (int i = 0; i < 3; i++)
            {
                double factor = i == p ? 0 : m[i, p] / m[p, p];
                for (int j = p; j < 4; j++)
                    m[i, j] -= factor * m[p, j];
            }
        }

        return [m[0, 3] / m[0, 0], m[1, 3] / m[1, 1], m[2, 3] / m[2, 2]];
    }
}
