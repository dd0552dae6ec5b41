using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Sections;

/// <summary>What integration points had at the last committed step over what the stations say at their
/// places.</summary>
/// <remarks>A point has seen its own strain, a station what is interpolated from two of them; where the history has a
/// kink, beside a touching place, they differ. A point that takes the stations' state as soon as it moves at all would
/// jump by that: a wire that slid by a micrometre fell out of balance by ten times its forces, and no slide could be
/// planned. So the difference goes along, fading out over <see cref="Reach"/>: farther off it belongs to another
/// place.</remarks>
internal sealed class PointSurplus(int size, int mostPoints, Room? room)
{
    /// <summary>How far from its point a surplus is felt [mm]: half the distance of two points in a usual
    /// slot.</summary>
    public const double Reach = 0.2;

    private readonly double[] _more = Room.Take<double>(room, size * mostPoints);
    private readonly double[] _at = new double[mostPoints];
    private readonly bool[] _isUsed = new bool[mostPoints];
    private int _count;

    /// <summary>Forgets all points.</summary>
    public void Clear() => _count = 0;

    /// <summary>Adds a point; points come in rising order.</summary>
    /// <param name="at">Its place [mm].</param>
    /// <param name="isUsed">Whether it has a history.</param>
    /// <returns>Its surplus, to be filled in where it has.</returns>
    public Span<double> Add(double at, bool isUsed)
    {
        _at[_count] = at;
        _isUsed[_count] = isUsed;
        return Of(_count++);
    }

    /// <summary>Takes over the points of another.</summary>
    public void CopyFrom(PointSurplus other)
    {
        _count = other._count;
        Array.Copy(other._at, _at, _count);
        Array.Copy(other._isUsed, _isUsed, _count);
        for (int p = 0; p < _count; p++)
        {
            if (_isUsed[p])
                other.Of(p).CopyTo(Of(p));
        }
    }

    /// <summary>The last point that is not beyond a place, or −1.</summary>
    /// <param name="at">Place [mm].</param>
    /// <param name="from">Answer for a place before it.</param>
    public int Before(double at, int from)
    {
        int p = Math.Max(from, 0);
        while (p < _count && _at[p] <= at)
            p++;

        return p - 1;
    }

    /// <summary>Whether a point or the one after it has a history.</summary>
    public bool IsUsedBeside(int point) => IsUsed(point) || IsUsed(point + 1);

    /// <summary>Adds the surplus of the nearest point to a state.</summary>
    /// <param name="at">Place of the state [mm].</param>
    /// <param name="before">As <see cref="Before"/>.</param>
    /// <param name="state">Added to.</param>
    public void AddAt(double at, int before, Span<double> state)
    {
        int nearest = before;
        if (before < 0 || (before + 1 < _count && _at[before + 1] - at < at - _at[before]))
            nearest = before + 1;
        if (!IsUsed(nearest))
            return;

        double share = Math.Max(0, 1 - Math.Abs(at - _at[nearest]) / Reach);
        ReadOnlySpan<double> more = Of(nearest);
        for (int i = 0; i < state.Length; i++)
            state[i] += share * more[i];
    }

    private bool IsUsed(int point) => point >= 0 && point < _count && _isUsed[point];

    private Span<double> Of(int point) => _more.AsSpan(size * point, size);
}
