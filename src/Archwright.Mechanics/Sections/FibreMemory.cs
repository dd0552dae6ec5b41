using Archwright.Mechanics.Rods;

namespace Archwright.Mechanics.Sections;

/// <summary>History of a wire's fibres. It belongs to stations that are fixed on the wire, evenly spaced; what an
/// integration point needs of it is interpolated, because the nodes follow the contacts along the wire and the points
/// go with them.</summary>
/// <remarks>A point that has not moved since the last converged step goes on from its own state, so that a step that
/// changes nothing changes nothing. A station sees the strain of its own material point at every converged step, so
/// nothing of its history is smeared out by moving nodes (docs/decisions). All arrays are sized once.</remarks>
internal sealed class FibreMemory
{
    /// <summary>Distance of the stations [mm].</summary>
    public const double UsualSpacing = 0.125;

    private readonly double _from;
    private readonly double _spacing;
    private readonly int _size;             // numbers a station: two a fibre
    private readonly double[] _stations;
    private readonly double[] _kept;
    private readonly bool[] _isUsed;
    private readonly bool[] _wasUsed;
    private readonly double[] _points;
    private readonly double[] _pointAt;
    private readonly bool[] _isPointUsed;
    private readonly double[] _keptPoints;
    private readonly double[] _keptPointAt;
    private readonly bool[] _wasPointUsed;
    private int _filled;                    // points whose state is that of their place
    private int _keptFilled;

    /// <param name="fibres">Fibres a section.</param>
    /// <param name="from">First place of the wire that can be strained [mm].</param>
    /// <param name="to">Last one.</param>
    /// <param name="mostPoints">Most integration points.</param>
    /// <param name="spacing">Distance of the stations [mm].</param>
    public FibreMemory(int fibres, double from, double to, int mostPoints, double spacing = UsualSpacing)
    {
        _from = from;
        _spacing = spacing;
        _size = 2 * fibres;
        Stations = (int)Math.Ceiling((to - from) / spacing) + 1;
        _stations = new double[_size * Stations];
        _kept = new double[_size * Stations];
        _isUsed = new bool[Stations];
        _wasUsed = new bool[Stations];
        _points = new double[_size * mostPoints];
        _pointAt = new double[mostPoints];
        _isPointUsed = new bool[mostPoints];
        _keptPoints = new double[_size * mostPoints];
        _keptPointAt = new double[mostPoints];
        _wasPointUsed = new bool[mostPoints];
    }

    /// <summary>Number of stations.</summary>
    public int Stations { get; }

    /// <summary>Place of a station [mm].</summary>
    public double At(int station) => _from + _spacing * station;

    /// <summary>State of a station: normal parts of all fibres, then shear parts.</summary>
    public Span<double> Of(int station) => _stations.AsSpan(_size * station, _size);

    /// <summary>Whether nothing has happened to a station yet.</summary>
    public bool IsNewAt(int station) => !_isUsed[station];

    /// <summary>Marks what a committed step left at a station.</summary>
    public void Use(int station, bool used) => _isUsed[station] = used;

    /// <summary>State at an integration point.</summary>
    public Span<double> OfPoint(int point) => _points.AsSpan(_size * point, _size);

    /// <summary>Whether nothing has happened yet at an integration point.</summary>
    public bool IsNew(int point) => !_isPointUsed[point];

    /// <summary>Marks what a committed step left at an integration point.</summary>
    public void UsePoint(int point, bool used) => _isPointUsed[point] = used;

    /// <summary>Forgets everything: a new wire.</summary>
    public void Forget()
    {
        Array.Clear(_stations);
        Array.Clear(_isUsed);
        Array.Clear(_points);
        Array.Clear(_isPointUsed);
        _filled = 0;
    }

    /// <summary>Keeps the present history, so that <see cref="PutBack"/> can undo what follows.</summary>
    public void Keep()
    {
        Copy(_stations, _isUsed, _kept, _wasUsed);
        Copy(_points, _isPointUsed, _keptPoints, _wasPointUsed);
        Array.Copy(_pointAt, _keptPointAt, _pointAt.Length);
        _keptFilled = _filled;
    }

    /// <summary>Puts the kept history back.</summary>
    public void PutBack()
    {
        Copy(_kept, _wasUsed, _stations, _isUsed);
        Copy(_keptPoints, _wasPointUsed, _points, _isPointUsed);
        Array.Copy(_keptPointAt, _pointAt, _pointAt.Length);
        _filled = _keptFilled;
    }

    /// <summary>Brings the history to the integration points of a mesh.</summary>
    public void Prepare(RodMesh mesh)
    {
        ReadOnlySpan<double> s = mesh.S;
        int points = RodMesh.Points * mesh.Elements;
        for (int p = 0; p < points; p++)
        {
            int e = p / RodMesh.Points;
            double at = s[e] + (s[e + 1] - s[e]) * RodMesh.GaussAt[p % RodMesh.Points];
            if (p < _filled && at == _pointAt[p])
                continue;

            _pointAt[p] = at;
            Interpolate(p, at);
        }

        _filled = points;
    }

    private void Interpolate(int point, double at)
    {
        double place = (at - _from) / _spacing;
        int before = (int)Math.Floor(place);
        bool isInside = before >= 0 && before + 1 < Stations;
        _isPointUsed[point] = isInside && (_isUsed[before] || _isUsed[before + 1]);
        Span<double> state = _points.AsSpan(_size * point, _size);
        if (!_isPointUsed[point])
        {
            state.Clear();
            return;
        }

        double share = place - before;
        ReadOnlySpan<double> a = Of(before);
        ReadOnlySpan<double> b = Of(before + 1);
        for (int i = 0; i < state.Length; i++)
            state[i] = a[i] + share * (b[i] - a[i]);
    }

    // A station that is new is nil, and stays so where it was.
    private void Copy(double[] from, bool[] fromUsed, double[] to, bool[] toUsed)
    {
        for (int i = 0; i < fromUsed.Length; i++)
        {
            if (fromUsed[i])
                Array.Copy(from, _size * i, to, _size * i, _size);
            else if (toUsed[i])
                Array.Clear(to, _size * i, _size);
        }

        Array.Copy(fromUsed, toUsed, fromUsed.Length);
    }
}
