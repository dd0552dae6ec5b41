using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Rods;

/// <summary>Rest frame and rest curvature at one place of the wire.</summary>
internal struct RestPoint
{
    /// <summary>Tangent, width direction and thickness direction of the rest shape; orthonormal,
    /// right-handed.</summary>
    public Vector3 D1, D2, D3;

    /// <summary>|dr/ds| of the interpolated rest shape; one but for the interpolation.</summary>
    public double Stretch;

    /// <summary>Rest curvatures: −d1′·d3 about the outward director, d1′·d2 about the third [1/mm].</summary>
    public double OverThickness, OverWidth;

    /// <summary>Rest twist d2′·d3 [1/mm].</summary>
    public double Twist;

    /// <summary>Builds the frame from the interpolated rest shape.</summary>
    /// <param name="slope">dr/ds.</param>
    /// <param name="bend">d²r/ds².</param>
    /// <param name="outward">Direction of the width; any length, not along the slope.</param>
    /// <param name="outwardRate">Its derivative.</param>
    public static RestPoint From(Vector3 slope, Vector3 bend, Vector3 outward, Vector3 outwardRate)
    {
        double stretch = slope.Length;
        Vector3 d1 = slope / stretch;
        Vector3 d1Rate = (bend - d1 * Vector3.Dot(d1, bend)) / stretch;
        Vector3 across = outward - d1 * Vector3.Dot(d1, outward);
        double size = across.Length;
        Vector3 d2 = across / size;
        Vector3 d3 = Vector3.Cross(d1, d2);
        return new RestPoint
        {
            D1 = d1,
            D2 = d2,
            D3 = d3,
            Stretch = stretch,
            OverThickness = -Vector3.Dot(d1Rate, d3),
            OverWidth = Vector3.Dot(d1Rate, d2),
            Twist = (Vector3.Dot(outwardRate, d3) - Vector3.Dot(d1, outward) * Vector3.Dot(d1Rate, d3)) / size,
        };
    }
}

/// <summary>Nodes of a wire, and everything about its rest shape that the elements need. Constant while
/// the wire moves; rebuilt in place when the nodes move along the wire.</summary>
internal sealed class RodMesh
{
    /// <summary>Gauss points an element.</summary>
    public const int Points = 2;

    /// <summary>Position of the two Gauss points in an element, from 0 to 1.</summary>
    public static readonly double[] GaussAt = [0.5 - 0.5 / Math.Sqrt(3), 0.5 + 0.5 / Math.Sqrt(3)];

    private readonly double[] _s;
    private readonly Vector3[] _position;
    private readonly Vector3[] _tangent;
    private readonly Vector3[] _outward;
    private readonly RestPoint[] _rest;
    private readonly double[] _weights;

    /// <param name="mostNodes">Most nodes.</param>
    /// <param name="room">Where its arrays come from; null for the heap.</param>
    public RodMesh(int mostNodes, Room? room = null)
    {
        // A wire rarely fills its room, and what it fills is written before it is read: nothing is cleared.
        _s = Room.Take<double>(room, mostNodes);
        _position = Room.Take<Vector3>(room, mostNodes);
        _tangent = Room.Take<Vector3>(room, mostNodes);
        _outward = Room.Take<Vector3>(room, mostNodes);
        _rest = Room.Take<RestPoint>(room, Points * mostNodes);
        _weights = Room.Take<double>(room, Points * mostNodes * HermiteWeights.Count);
    }

    /// <summary>Number of nodes.</summary>
    public int Nodes { get; private set; }

    /// <summary>Number of elements.</summary>
    public int Elements => Nodes - 1;

    /// <summary>Places of the nodes along the rest shape [mm], ascending.</summary>
    public ReadOnlySpan<double> S => _s.AsSpan(0, Nodes);

    /// <summary>Rest data at Gauss points, two an element.</summary>
    public ReadOnlySpan<RestPoint> Rest => _rest.AsSpan(0, Points * Elements);

    /// <summary>Weights that turn nodal values into the slope and the bend of the centre line at each Gauss
    /// point.</summary>
    public ReadOnlySpan<double> Weights => _weights;

    /// <summary>Rest position of a node [mm].</summary>
    public Vector3 RestPosition(int node) => _position[node];

    /// <summary>Rest tangent of a node.</summary>
    public Vector3 RestTangent(int node) => _tangent[node];

    /// <summary>Length of an element [mm].</summary>
    public double Length(int element) => _s[element + 1] - _s[element];

    /// <summary>Puts the nodes at <paramref name="s"/> along <paramref name="curve"/>.</summary>
    /// <param name="s">Ascending places [mm].</param>
    /// <param name="curve">Rest shape.</param>
    /// <param name="shift">Added to every place [mm].</param>
    public void Build(ReadOnlySpan<double> s, RestCurve curve, double shift = 0)
    {
        Nodes = s.Length;
        for (int i = 0; i < Nodes; i++)
            PutNode(i, s[i] + shift, curve);

        for (int e = 0; e < Elements; e++)
            BuildElement(e);
    }

    /// <summary>Moves one node along the curve; it must stay between its neighbours.</summary>
    public void MoveNode(int node, double s, RestCurve curve)
    {
        PutNode(node, s, curve);
        if (node > 0)
            BuildElement(node - 1);
        if (node < Elements)
            BuildElement(node);
    }

    private void PutNode(int node, double s, RestCurve curve)
    {
        _s[node] = s;
        (_position[node], _tangent[node]) = curve.At(s);
        _outward[node] = curve.OutwardAt(s, _tangent[node]);
    }

    private void BuildElement(int element)
    {
        BuildRest(element);
        for (int g = 0; g < Points; g++)
        {
            int point = Points * element + g;
            HermiteWeights.Fill(
                GaussAt[g], Length(element), _weights.AsSpan(point * HermiteWeights.Count, HermiteWeights.Count));
        }
    }

    private void BuildRest(int element)
    {
        for (int g = 0; g < Points; g++)
            _rest[Points * element + g] = RestAt(element, GaussAt[g]);
    }

    /// <summary>The nodes of another mesh, each a little farther along: what a slide of the wire under its shape
    /// changes. The lengths of the elements stay, and with them the weights.</summary>
    /// <param name="other">A mesh of the same room.</param>
    /// <param name="curve">Rest shape.</param>
    /// <param name="shift">[mm]</param>
    public void BuildSlid(RodMesh other, RestCurve curve, double shift)
    {
        Nodes = other.Nodes;
        for (int i = 0; i < Nodes; i++)
            PutNode(i, other._s[i] + shift, curve);

        other._weights.AsSpan(0, Points * Elements * HermiteWeights.Count).CopyTo(_weights);
        for (int e = 0; e < Elements; e++)
            BuildRest(e);
    }

    /// <summary>Takes over another mesh of the same room.</summary>
    public void CopyFrom(RodMesh other)
    {
        Nodes = other.Nodes;
        other._s.AsSpan(0, Nodes).CopyTo(_s);
        other._position.AsSpan(0, Nodes).CopyTo(_position);
        other._tangent.AsSpan(0, Nodes).CopyTo(_tangent);
        other._outward.AsSpan(0, Nodes).CopyTo(_outward);
        other._rest.AsSpan(0, Points * Elements).CopyTo(_rest);
        other._weights.AsSpan(0, Points * Elements * HermiteWeights.Count).CopyTo(_weights);
    }

    /// <summary>Rest frame inside an element.</summary>
    /// <param name="element">Index.</param>
    /// <param name="u">From 0 to 1.</param>
    public RestPoint RestAt(int element, double u)
    {
        double h = Length(element);
        var shape = new Hermite(u, h);
        Vector3 r0 = _position[element];
        Vector3 r1 = _position[element + 1];
        Vector3 t0 = _tangent[element];
        Vector3 t1 = _tangent[element + 1];
        Vector3 o0 = _outward[element];
        Vector3 o1 = _outward[element + 1];
        return RestPoint.From(
            shape.Slope(r0, t0, r1, t1), shape.Bend(r0, t0, r1, t1), o0 * (1 - u) + o1 * u, (o1 - o0) / h);
    }

    /// <summary>The node nearest to a place along the wire; the earlier of two as near.</summary>
    /// <param name="s">[mm]</param>
    public int NearestNode(double s)
    {
        int nearest = 0;
        for (int i = 1; i < Nodes; i++)
        {
            if (Math.Abs(_s[i] - s) < Math.Abs(_s[nearest] - s))
                nearest = i;
        }

        return nearest;
    }

    /// <summary>The element that holds a place along the wire; the first or last one outside.</summary>
    /// <param name="s">[mm]</param>
    /// <param name="near">Where to start looking.</param>
    public int Find(double s, int near)
    {
        int e = Math.Clamp(near, 0, Elements - 1);
        while (e > 0 && s < _s[e])
            e--;
        while (e < Elements - 1 && s > _s[e + 1])
            e++;

        return e;
    }
}
