using System.Collections.Immutable;

namespace Archwright.Mechanics.Numerics;

/// <summary>A smooth curve in space: a chain of cubic Hermite pieces with continuous tangent, measured by its
/// length.</summary>
/// <remarks>Straight beyond both ends. Length along the curve starts at zero at the first knot. Inside a piece,
/// r(u) = H₀ r₀ + H₁ m₀ + H₂ r₁ + H₃ m₁ for u from 0 to 1; length by five-point Gauss quadrature of |r′(u)|, inverted
/// by Newton's method.</remarks>
internal sealed class CubicPath
{
    private readonly Vector3[] _points;
    private readonly Vector3[] _startSlopes;
    private readonly Vector3[] _endSlopes;
    private readonly double[] _lengths;

    /// <param name="points">Knots; length n.</param>
    /// <param name="startSlopes">dr/du at the start of each piece; length n − 1.</param>
    /// <param name="endSlopes">dr/du at the end of each piece; length n − 1; parallel to the next start slope.</param>
    private CubicPath(Vector3[] points, Vector3[] startSlopes, Vector3[] endSlopes)
    {
        _points = points;
        _startSlopes = startSlopes;
        _endSlopes = endSlopes;
        _lengths = new double[points.Length];
        for (int i = 0; i + 1 < points.Length; i++)
            _lengths[i + 1] = _lengths[i] + PieceLength(i, 1);
    }

    /// <summary>Length from the first knot to the last [mm].</summary>
    public double Length => _lengths[^1];

    /// <summary>Length from the first knot to knot <paramref name="index"/> [mm].</summary>
    public double LengthAt(int index) => _lengths[index];

    /// <summary>A curve through knots with given unit tangents. Each piece's slopes have the length of the piece, found
    /// by fixed-point iteration, so that the curve runs through at nearly even speed.</summary>
    public static CubicPath WithTangents(ReadOnlySpan<Vector3> points, ReadOnlySpan<Vector3> tangents)
    {
        int pieces = points.Length - 1;
        var start = new Vector3[pieces];
        var end = new Vector3[pieces];
        for (int i = 0; i < pieces; i++)
        {
            double length = (points[i + 1] - points[i]).Length;
            for (int pass = 0; pass < 4; pass++)
            {
                start[i] = tangents[i] * length;
                end[i] = tangents[i + 1] * length;
                length = Gauss(points[i], start[i], points[i + 1], end[i], 1);
            }
        }

        return new CubicPath(points.ToArray(), start, end);
    }

    /// <summary>The cubic spline through points, its parameter the chord length, with the not-a-knot end condition
    /// (a parabola for three points, a straight line for two).</summary>
    /// <remarks>C. de Boor, <i>A Practical Guide to Splines</i>, rev. ed., Springer 2001, chapter IV (from
    /// memory).</remarks>
    public static CubicPath ThroughPoints(ImmutableArray<Vector3> points)
    {
        int n = points.Length;
        var chord = new double[n - 1];
        for (int i = 0; i < n - 1; i++)
            chord[i] = (points[i + 1] - points[i]).Length;

        Vector3[] slopes = SplineSlopes.NotAKnot(points.AsSpan(), chord);
        var start = new Vector3[n - 1];
        var end = new Vector3[n - 1];
        for (int i = 0; i < n - 1; i++)
        {
            start[i] = slopes[i] * chord[i];
            end[i] = slopes[i + 1] * chord[i];
        }

        return new CubicPath([.. points], start, end);
    }

    /// <summary>Point and unit tangent at length <paramref name="s"/> along the curve.</summary>
    public (Vector3 Point, Vector3 Tangent) At(double s)
    {
        if (s <= 0)
        {
            Vector3 first = _startSlopes[0].Unit();
            return (_points[0] + first * s, first);
        }

        if (s >= Length)
        {
            Vector3 last = _endSlopes[^1].Unit();
            return (_points[^1] + last * (s - Length), last);
        }

        int piece = Array.BinarySearch(_lengths, s);
        piece = Math.Min(piece < 0 ? ~piece - 1 : piece, _startSlopes.Length - 1);
        double u = ParameterAt(piece, s - _lengths[piece]);
        Hermite(_points[piece], _startSlopes[piece], _points[piece + 1], _endSlopes[piece], u, out Vector3 r,
            out Vector3 dr);
        return (r, dr.Unit());
    }

    /// <summary>Length at which the curve crosses the plane through <paramref name="point"/> with
    /// <paramref name="normal"/>, nearest to <paramref name="guess"/>; NaN where it does not cross near.</summary>
    public double Crossing(Vector3 point, Vector3 normal, double guess)
    {
        double s = guess;
        for (int pass = 0; pass < 60; pass++)
        {
            (Vector3 r, Vector3 t) = At(s);
            double slope = Vector3.Dot(t, normal);
            double gap = Vector3.Dot(point - r, normal);
            if (Math.Abs(gap) < 1e-13 * (1 + Math.Abs(s)))
                return s;

            if (Math.Abs(slope) < 0.05)
                return double.NaN;

            s += Math.Clamp(gap / slope, -5, 5);
        }

        (Vector3 end, _) = At(s);
        return Math.Abs(Vector3.Dot(point - end, normal)) < 1e-9 ? s : double.NaN;
    }

    /// <summary>Length of the point of the curve that is nearest to <paramref name="point"/>.</summary>
    public double Nearest(Vector3 point)
    {
        double best = double.PositiveInfinity;
        double at = 0;
        for (int i = 0; i + 1 < _points.Length; i++)
        {
            // Nearest point of the chord; close enough to start from.
            Vector3 chord = _points[i + 1] - _points[i];
            double u = Math.Clamp(Vector3.Dot(point - _points[i], chord) / Vector3.Dot(chord, chord), 0, 1);
            double distance = (_points[i] + chord * u - point).Length;
            if (distance < best)
                (best, at) = (distance, _lengths[i] + u * (_lengths[i + 1] - _lengths[i]));
        }

        for (int pass = 0; pass < 12; pass++)
        {
            (Vector3 r, Vector3 t) = At(at);
            double step = Vector3.Dot(point - r, t);
            at += step;
            if (Math.Abs(step) < 1e-12)
                break;
        }

        return at;
    }

    private double ParameterAt(int piece, double length)
    {
        double u = length / (_lengths[piece + 1] - _lengths[piece]);
        for (int pass = 0; pass < 20; pass++)
        {
            Hermite(_points[piece], _startSlopes[piece], _points[piece + 1], _endSlopes[piece], u, out _,
                out Vector3 dr);
            double error = PieceLength(piece, u) - length;
            u -= error / dr.Length;
            if (Math.Abs(error) < 1e-13)
                break;
        }

        return u;
    }

    private double PieceLength(int piece, double u) =>
        Gauss(_points[piece], _startSlopes[piece], _points[piece + 1], _endSlopes[piece], u);

    private static double Gauss(Vector3 r0, Vector3 m0, Vector3 r1, Vector3 m1, double end)
    {
        double sum = 0;
        for (int g = 0; g < 5; g++)
        {
            Hermite(r0, m0, r1, m1, end * (1 + GaussAt[g]) / 2, out _, out Vector3 dr);
            sum += GaussWeight[g] * dr.Length;
        }

        return sum * end / 2;
    }

    private static void Hermite(
        Vector3 r0, Vector3 m0, Vector3 r1, Vector3 m1, double u, out Vector3 r, out Vector3 dr)
    {
        double v = 1 - u;
        r = r0 * ((1 + 2 * u) * v * v) + m0 * (u * v * v) + r1 * (u * u * (3 - 2 * u)) - m1 * (u * u * v);
        dr = (r1 - r0) * (6 * u * v) + m0 * (v * (1 - 3 * u)) - m1 * (u * (2 - 3 * u));
    }

    private static readonly double[] GaussAt =
        [-0.906179845938664, -0.5384693101056831, 0, 0.5384693101056831, 0.906179845938664];

    private static readonly double[] GaussWeight =
        [0.23692688505618908, 0.47862867049936647, 0.5688888888888889, 0.47862867049936647, 0.23692688505618908];
}
