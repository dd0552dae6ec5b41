using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Sections;

/// <summary>Quadrature points on a quarter of the outline of a rectangle with rounded edges.</summary>
/// <remarks>
/// The outline runs counter-clockwise from the middle of the right side (x = half length) over the rounded edge to the
/// middle of the upper side. Where a flat side meets the arc the curvature jumps, and whatever lives on the outline
/// has a mild singularity there (s² log s). Each of the four pieces (flat, half arc, half arc, flat) is therefore
/// mapped by s = 1 − (1 − t)³, which gathers the points of its Gauss rule at the joint. The same mapping resolves
/// an edge radius that is tiny beside the sides.
/// </remarks>
internal sealed class RoundedOutline
{
    /// <summary>Gauss points on each of the four pieces.</summary>
    public const int PointsPerPiece = 16;

    private static readonly (double[] Points, double[] Weights) Rule = GaussRule.Legendre(PointsPerPiece);

    private int _filled;

    /// <summary>Places the points.</summary>
    /// <param name="halfLength">Half of the side along x.</param>
    /// <param name="halfHeight">Half of the side along y.</param>
    /// <param name="radius">Edge radius, above 0 and below both halves.</param>
    /// <param name="rule">Points and weights on (0, 1); the Gauss rule of <see cref="PointsPerPiece"/> points when
    /// left out.</param>
    public RoundedOutline(
        double halfLength, double halfHeight, double radius, (double[] Points, double[] Weights)? rule = null)
    {
        (double[] points, double[] weights) = rule ?? Rule;
        int n = points.Length;
        Count = 4 * n;
        X = new double[Count];
        Y = new double[Count];
        Dx = new double[Count];
        Dy = new double[Count];
        Piece = new int[Count];
        Curvature = new double[Count];

        double right = halfLength - radius;
        double top = halfHeight - radius;
        for (int i = 0; i < n; i++)
        {
            (double s, double ds) = Gathered(points[i], weights[i]);
            Add(0, halfLength, top * s, 0, top * ds, 0);
        }

        for (int i = n - 1; i >= 0; i--)
        {
            (double s, double ds) = Gathered(points[i], weights[i]);
            AddOnArc(right, top, radius, Math.PI / 4 * Rest(points[i]), ds);
        }

        for (int i = 0; i < n; i++)
        {
            (double s, double ds) = Gathered(points[i], weights[i]);
            AddOnArc(right, top, radius, Math.PI / 4 * (1 + s), ds);
        }

        for (int i = n - 1; i >= 0; i--)
        {
            (double s, double ds) = Gathered(points[i], weights[i]);
            Add(2, right * s, halfHeight, -right * ds, 0, 0);
        }
    }

    /// <summary>How many points.</summary>
    public int Count { get; }

    /// <summary>Where the points are.</summary>
    public double[] X { get; }

    /// <summary>Where the points are.</summary>
    public double[] Y { get; }

    /// <summary>Element of the outline at each point: its direction times its share of the length.</summary>
    public double[] Dx { get; }

    /// <summary>Element of the outline at each point: its direction times its share of the length.</summary>
    public double[] Dy { get; }

    /// <summary>Right side 0, arc 1, upper side 2.</summary>
    public int[] Piece { get; }

    /// <summary>1/radius on the arc, 0 on the flat sides.</summary>
    public double[] Curvature { get; }

    private static double Rest(double t) => (1 - t) * (1 - t) * (1 - t);

    // s = 1 − (1 − t)³ and its share of the length
    private static (double S, double Ds) Gathered(double t, double weight) =>
        (1 - Rest(t), 3 * (1 - t) * (1 - t) * weight);

    private void AddOnArc(double centreX, double centreY, double radius, double angle, double share)
    {
        (double sin, double cos) = Math.SinCos(angle);
        double length = radius * Math.PI / 4 * share;
        Add(1, centreX + radius * cos, centreY + radius * sin, -length * sin, length * cos, 1 / radius);
    }

    private void Add(int piece, double x, double y, double dx, double dy, double curvature)
    {
        int i = _filled++;
        Piece[i] = piece;
        X[i] = x;
        Y[i] = y;
        Dx[i] = dx;
        Dy[i] = dy;
        Curvature[i] = curvature;
    }
}
