using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;

namespace Archwright.Mechanics.Sections;

/// <summary>History of a wire's fibres. It belongs to stations that are fixed on the wire, evenly spaced; what an
/// integration point needs of it is interpolated, because the nodes follow the contacts along the wire and the points
/// go with them.</summary>
/// <remarks>A station sees the strain of its own material point at every converged step, so nothing of its history is
/// smeared out by moving nodes (docs/decisions). A point that has not moved since the last converged step goes on from
/// its own state, so that a step that changes nothing changes nothing; one that has moved takes along what its state
/// had over that of the stations, less as it goes (<see cref="PointSurplus"/>), so that a small slide changes little.
/// All arrays are sized once.</remarks>
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
    private readonly PointSurplus _surplus;
    private readonly PointSurplus _keptSurplus;
    private bool _hadHistory;
    private int _filled;                    // points whose state is that of their place

    /// <param name="fibres">Fibres a section.</param>
    /// <param name="from">First place of the wire that can be strained [mm].</param>
    /// <param name="to">Last one.</param>
    /// <param name="mostPoints">Most integration points.</param>
    /// <param name="room">Where its arrays come from; null for the heap.</param>
    /// <param name="spacing">Distance of the stations [mm].</param>
    public FibreMemory(
        int fibres, double from, double to, int mostPoints, Room? room = null, double spacing = UsualSpacing)
    {
        _from = from;
        _spacing = spacing;
        _size = 2 * fibres;
        Stations = (int)Math.Ceiling((to - from) / spacing) + 1;
        _stations = Room.TakeCleared<double>(room, _size * Stations);
        _kept = Room.Take<double>(room, _size * Stations);
        _isUsed = new bool[Stations];
        _wasUsed = new bool[Stations];
        _points = Room.TakeCleared<double>(room, _size * mostPoints);
        _pointAt = new double[mostPoints];
        _isPointUsed = new bool[mostPoints];
        _surplus = new PointSurplus(_size, mostPoints, room);
        _keptSurplus = new PointSurplus(_size, mostPoints, room);
    }

    /// <summary>Whether anything has happened to the wire yet.</summary>
    public bool HasHistory { get; private set; }

    /// <summary>Number of stations.</summary>
    public int Stations { get; }

    /// <summary>Place of a station [mm].</summary>
    public double At(int station) => _from + _spacing * station;

    /// <summary>State of a station: normal parts of all fibres, then shear parts.</summary>
    public Span<double> Of(int station) => _stations.AsSpan(_size * station, _size);

    /// <summary>Whether nothing has happened to a station yet.</summary>
    public bool IsNewAt(int station) => !_isUsed[station];

    /// <summary>Marks what a committed step left at a station.</summary>
    public void Use(int station, bool used)
    {
        _isUsed[station] = used;
        HasHistory |= used;
    }

    /// <summary>State at an integration point.</summary>
    public Span<double> OfPoint(int point) => _points.AsSpan(_size * point, _size);

    /// <summary>Whether nothing has happened yet at an integration point.</summary>
    public bool IsNew(int point) => !_isPointUsed[point];

    /// <summary>Marks what a committed step left at an integration point.</summary>
    public void UsePoint(int point, bool used)
    {
        _isPointUsed[point] = used;
        HasHistory |= used;
    }

    /// <summary>Forgets everything: a new wire.</summary>
    public void Forget()
    {
        for (int i = 0; i < Stations; i++)
        {
            if (_isUsed[i])
                Of(i).Clear();
        }

        Array.Clear(_isUsed);
        _surplus.Clear();
        _filled = 0;
        HasHistory = false;
    }

    /// <summary>Keeps the present history, so that <see cref="PutBack"/> can undo what follows.</summary>
    public void Keep()
    {
        Copy(_stations, _isUsed, _kept, _wasUsed);
        _keptSurplus.CopyFrom(_surplus);
        _hadHistory = HasHistory;
    }

    /// <summary>Puts the kept history back.</summary>
    public void PutBack()
    {
        Copy(_kept, _wasUsed, _stations, _isUsed);
        _surplus.CopyFrom(_keptSurplus);
        HasHistory = _hadHistory;
        _filled = 0;
    }

    /// <summary>Takes note of what a committed step left at the integration points over what their stations say; both
    /// have been committed.</summary>
    public void Settle()
    {
        _surplus.Clear();
        for (int p = 0; p < _filled; p++)
        {
            (int before, double share) = Between(_pointAt[p]);
            bool isUsed = _isPointUsed[p] || IsUsedBeside(before);
            Span<double> more = _surplus.Add(_pointAt[p], isUsed);
            if (!isUsed)
                continue;

            Interpolate(before, share, more);
            ReadOnlySpan<double> own = OfPoint(p);
            for (int i = 0; i < more.Length; i++)
                more[i] = own[i] - more[i];
        }

        // To the last bit the same as after a step that is undone.
        _filled = 0;
    }

    /// <summary>Brings the history to the integration points of a mesh.</summary>
    public void Prepare(RodMesh mesh)
    {
        ReadOnlySpan<double> s = mesh.S;
        int points = RodMesh.Points * mesh.Elements;
        int near = 0;
        for (int p = 0; p < points; p++)
        {
            int e = p / RodMesh.Points;
            double at = s[e] + (s[e + 1] - s[e]) * RodMesh.GaussAt[p % RodMesh.Points];
            if (p < _filled && at == _pointAt[p])
                continue;

            _pointAt[p] = at;
            Fill(p, at, ref near);
        }

        _filled = points;
    }

    // What the stations say, and what the points about it had over that.
    private void Fill(int point, double at, ref int near)
    {
        (int before, double share) = Between(at);
        near = _surplus.Before(at, near);
        bool wasUsed = _isPointUsed[point];
        Span<double> state = OfPoint(point);
        _isPointUsed[point] = IsUsedBeside(before) || _surplus.IsUsedBeside(near);
        if (!_isPointUsed[point])
        {
            if (wasUsed)
                state.Clear();
            return;
        }

        Interpolate(before, share, state);
        _surplus.AddAt(at, near, state);
    }

    private (int Before, double Share) Between(double at)
    {
        double place = (at - _from) / _spacing;
        int before = (int)Math.Floor(place);
        return before >= 0 && before + 1 < Stations ? (before, place - before) : (-1, 0);
    }

    private bool IsUsedBeside(int station) => station >= 0 && (_isUsed[station] || _isUsed[station + 1]);

    private void Interpolate(int before, double share, Span<double> state)
    {
        if (!IsUsedBeside(before))
        {
            state.Clear();
            return;
        }

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
