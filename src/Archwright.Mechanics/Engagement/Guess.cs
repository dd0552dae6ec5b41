using System.Collections.Immutable;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>A first shape for a wire in displaced slots: a smooth curve through them, with the wire's own length
/// kept.</summary>
/// <remarks>It stretches nothing and violates little, so Newton's method only has to settle the bending. That is where
/// the time of a cold solve is won.</remarks>
internal sealed class Guess
{
    private readonly CubicPath _path;
    private readonly List<double> _along = [];
    private readonly List<double> _wire = [];

    private Guess(CubicPath path)
    {
        _path = path;
    }

    /// <summary>Place along the wire of both edges (or the centre) of each slot that holds it: (slot, place),
    /// ascending.</summary>
    public List<(int Slot, double S)> Anchors { get; } = [];

    /// <summary>Makes the guess; null where no slot takes the wire in, so that there is nothing to guess
    /// from.</summary>
    public static Guess? For(Arrangement arrangement, Layout layout, ReadOnlySpan<SlotFrame> frames)
    {
        var points = new List<Vector3>();
        var tangents = new List<Vector3>();
        var owners = new List<int>();
        double wireWidth = arrangement.Wire.Section.Width;
        for (int i = 0; i < frames.Length; i++)
        {
            Slot slot = arrangement.Slots[i];
            if (!Layout.TakesIn(slot))
                continue;

            Vector3 centre = frames[i].Centre + frames[i].Outward * Layout.Seat(slot, wireWidth);
            double half = Layout.HasEdges(slot) ? slot.Width / 2 : 0;
            points.Add(centre - frames[i].Along * half);
            tangents.Add(frames[i].Along);
            owners.Add(i);
            if (half > 0)
            {
                points.Add(centre + frames[i].Along * half);
                tangents.Add(frames[i].Along);
                owners.Add(i);
            }
        }

        if (points.Count == 0)
            return null;

        if (points.Count == 1)
        {
            points.Add(points[0] + tangents[0]);
            tangents.Add(tangents[0]);
            owners.Add(owners[0]);
        }

        var guess = new Guess(CubicPath.WithTangents(points.ToArray(), tangents.ToArray()));
        guess.Match(arrangement.Slots, layout, owners);
        for (int k = 0; k < owners.Count; k++)
            guess.Anchors.Add((owners[k], guess.WireAt(guess._path.LengthAt(k))));

        return guess;
    }

    /// <summary>Point and slope of the guessed shape at a place along the wire [mm].</summary>
    public (Vector3 Point, Vector3 Slope) At(double s)
    {
        int i = 0;
        while (i < _wire.Count - 2 && s > _wire[i + 1])
            i++;

        double rate = (_along[i + 1] - _along[i]) / (_wire[i + 1] - _wire[i]);
        if (s < _wire[0] || s > _wire[^1])
        {
            rate = 1;
            i = s < _wire[0] ? 0 : _wire.Count - 1;
        }

        (Vector3 point, Vector3 tangent) = _path.At(_along[i] + (s - _wire[i]) * rate);
        return (point, tangent * rate);
    }

    private double WireAt(double along)
    {
        int i = 0;
        while (i < _along.Count - 2 && along > _along[i + 1])
            i++;

        if (along < _along[0] || along > _along[^1])
        {
            i = along < _along[0] ? 0 : _along.Count - 1;
            return _wire[i] + along - _along[i];
        }

        return _wire[i] + (along - _along[i]) * (_wire[i + 1] - _wire[i]) / (_along[i + 1] - _along[i]);
    }

    // Which point of the wire lies where: held points stay with their slots; otherwise the middle of the wire stays in
    // the middle of the slots and the lengths are the wire's own.
    private void Match(ImmutableArray<Slot> slots, Layout layout, List<int> owners)
    {
        for (int k = 0; k < owners.Count; k++)
        {
            bool again = k > 0 && owners[k] == owners[k - 1];
            if (!again && slots[owners[k]].Hold is (Hold.Clamped or Hold.Glide))
            {
                _along.Add(_path.LengthAt(k));
                _wire.Add(layout.Places[owners[k]]);
            }
        }

        if (_along.Count >= 2)
            return;

        if (_along.Count == 0)
        {
            double along = 0;
            double wire = 0;
            int from = owners[(owners.Count - 1) / 2];
            int to = owners[owners.Count / 2];
            int count = 0;
            for (int k = 0; k < owners.Count; k++)
            {
                if (owners[k] != from && owners[k] != to)
                    continue;

                along += _path.LengthAt(k);
                count++;
            }

            wire = (layout.Places[from] + layout.Places[to]) / 2;
            _along.Add(along / count);
            _wire.Add(wire);
        }

        _along.Add(_along[0] + 1);
        _wire.Add(_wire[0] + 1);
    }
}
