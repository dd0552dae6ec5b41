using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Rods;

/// <summary>A wire's rest shape, measured along the wire, with the direction of the section's width.</summary>
internal sealed class RestCurve
{
    private readonly CubicPath _path;
    private readonly double[] _at;
    private readonly Vector3[] _outward;

    /// <param name="path">Centre line.</param>
    /// <param name="at">Ascending lengths along the path at which the width's direction is known [mm].</param>
    /// <param name="outward">The directions there; between them they turn smoothly, outside they stay.</param>
    public RestCurve(CubicPath path, double[] at, Vector3[] outward)
    {
        _path = path;
        _at = at;
        _outward = outward;
    }

    /// <summary>The centre line.</summary>
    public CubicPath Path => _path;

    /// <summary>Point and unit tangent at <paramref name="s"/> [mm] along the wire.</summary>
    public (Vector3 Point, Vector3 Tangent) At(double s) => _path.At(s);

    /// <summary>Direction of the section's width at <paramref name="s"/>, at right angles to the tangent.</summary>
    public Vector3 OutwardAt(double s)
    {
        Vector3 tangent = _path.At(s).Tangent;
        Vector3 o = Blend(s);
        return (o - tangent * Vector3.Dot(o, tangent)).Unit();
    }

    private Vector3 Blend(double s)
    {
        if (s <= _at[0])
            return _outward[0];
        if (s >= _at[^1])
            return _outward[^1];

        int i = Array.BinarySearch(_at, s);
        i = i < 0 ? ~i - 1 : Math.Min(i, _at.Length - 2);
        double span = _at[i + 1] - _at[i];
        double u = span > 0 ? (s - _at[i]) / span : 0;
        double smooth = u * u * (3 - 2 * u);
        return _outward[i] * (1 - smooth) + _outward[i + 1] * smooth;
    }
}
