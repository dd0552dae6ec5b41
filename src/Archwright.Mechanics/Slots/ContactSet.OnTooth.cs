using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;

namespace Archwright.Mechanics.Slots;

/// <content>What the restraints do to the teeth, now and with a slot elsewhere.</content>
internal sealed partial class ContactSet
{
    /// <summary>Force and moment of the wire on the tooth through one restraint, moment about the slot's
    /// centre.</summary>
    public (Vector3 Force, Vector3 Moment) OnTooth(
        int index, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames, RodMesh mesh)
    {
        ref readonly ContactRow row = ref _rows[index];
        ref readonly SlotFrame frame = ref frames[row.Slot];
        if (row.Effective == 0)
            return default;

        if (row.IsAtStation)
            return AtStation(row, _stations[row.Station], frame);

        return AtFixedPoint(row, q, frame);
    }

    /// <summary>The same for a force of one in the row's positive direction, on the side that is touched now.</summary>
    public (Vector3 Force, Vector3 Moment) OfUnitForce(
        int index, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames)
    {
        ref readonly ContactRow row = ref _rows[index];
        bool isHeld = HoldsSet && row.Touched != 0 && MayLetGo(row);
        return OfUnitForce(index, isHeld ? row.Touched : row.Effective < 0 ? -1 : 1, q, frames);
    }

    /// <summary>How the gap of a restraint changes for small motions of its slot: the opposite of what a unit of its
    /// force does to the tooth.</summary>
    /// <param name="index">Row; it must be active.</param>
    /// <param name="q">State of the wire.</param>
    /// <param name="frames">Where the slots are.</param>
    /// <param name="by">Takes the derivatives by shift, then by turn about the slot's centre.</param>
    public void GapByMotion(int index, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames, Span<double> by) =>
        Put(OfUnitForce(index, q, frames), -1, by);

    /// <summary>The same of the depth of a side, touched or not.</summary>
    public void DepthByMotion(int side, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames, Span<double> by) =>
        Put(OfUnitForce(side / 2, Sign(side), q, frames), -Sign(side), by);

    private static void Put((Vector3 Force, Vector3 Moment) load, double sign, Span<double> to)
    {
        (to[0], to[1], to[2]) = (sign * load.Force.X, sign * load.Force.Y, sign * load.Force.Z);
        (to[3], to[4], to[5]) = (sign * load.Moment.X, sign * load.Moment.Y, sign * load.Moment.Z);
    }

    private (Vector3 Force, Vector3 Moment) OfUnitForce(
        int index, double sign, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames)
    {
        ContactRow row = _rows[index];
        row.Effective = sign;
        ref readonly SlotFrame frame = ref frames[row.Slot];
        (Vector3 force, Vector3 moment) = row.IsAtStation
            ? AtStation(row, _stations[row.Station], frame)
            : AtFixedPoint(row, q, frame);
        return (force * sign, moment * sign);
    }

    private static (Vector3 Force, Vector3 Moment) AtFixedPoint(in ContactRow row, ReadOnlySpan<double> q,
        in SlotFrame frame)
    {
        if (row.Kind == RowKind.Pin)
            return default;

        double p = row.Effective;
        Vector3 axis = Axis(frame, row.Axis);
        Vector3 force = row.Kind == RowKind.Place ? axis * p : default;
        Vector3 arm = RodAssembly.Position(q, row.Node) - frame.Centre;
        Vector3 couple = row.Kind switch
        {
            RowKind.Direction => Vector3.Cross(RodAssembly.Slope(q, row.Node), axis) * p,
            RowKind.Turn => RodAssembly.Slope(q, row.Node).Unit() * p,
            _ => default,
        };
        return (force, Vector3.Cross(arm, force) + couple);
    }

    private static (Vector3 Force, Vector3 Moment) AtStation(in ContactRow row, in Station at, in SlotFrame frame)
    {
        (Vector3 axis, double byTurn, _) = Touched(row, at, frame);
        Vector3 force = (row.Kind == RowKind.Friction ? axis : NormalToWire(axis, at, frame, byTurn)) * row.Effective;
        return (force, Vector3.Cross(at.R - frame.Centre, force) + at.TurnAxis * (row.Effective * byTurn));
    }

    /// <summary>A restraint as it would be with its slot elsewhere, the wire unmoved and the same side
    /// touching.</summary>
    /// <param name="index">Row; it must be active.</param>
    /// <param name="q">State of the wire.</param>
    /// <param name="frame">Where the slot would be.</param>
    /// <param name="mesh">Nodes.</param>
    /// <param name="value">Gap of the row [mm, rad].</param>
    /// <param name="element">Element that is touched.</param>
    /// <returns>Derivative of the gap by the unknowns of that element.</returns>
    public ElementVector WithSlotAt(
        int index, ReadOnlySpan<double> q, in SlotFrame frame, RodMesh mesh, out double value, out int element)
    {
        ref readonly ContactRow row = ref _rows[index];
        if (!row.IsAtStation)
        {
            FixedGap(row, q, frame, mesh, out value, out ElementVector fixedDerivative, out element);
            return fixedDerivative;
        }

        Station at = _stations[row.Station];
        at.Locate(mesh, q, frame);
        (Vector3 axis, double first, double gap) = Touched(row, at, frame);
        value = gap;
        element = at.Element;
        Vector3 normal = row.Kind == RowKind.Friction ? axis : NormalToWire(axis, at, frame, first);
        ElementVector derivative = ElementVector.OfPoint(normal, at.Shape);
        if (first != 0)
            derivative += ElementVector.OfSlope(at.TurnByP * first, first, at.TurnShape);

        return derivative;
    }

    /// <summary>Force and moment on the tooth through one restraint with its slot elsewhere, the wire and the
    /// multiplier unmoved.</summary>
    public (Vector3 Force, Vector3 Moment) OnToothAt(int index, ReadOnlySpan<double> q, in SlotFrame frame,
        RodMesh mesh)
    {
        ref readonly ContactRow row = ref _rows[index];
        if (row.IsAtStation)
        {
            Station at = _stations[row.Station];
            at.Locate(mesh, q, frame);
            return AtStation(row, at, frame);
        }

        return AtFixedPoint(row, q, frame);
    }

    // The side of the row that is touched now: axis, derivative of the gap by the turn, and the gap itself.
    private static (Vector3 Axis, double ByTurn, double Gap) Touched(in ContactRow row, in Station at,
        in SlotFrame frame)
    {
        if (row.Kind == RowKind.Friction)
            return (PlaceByPoint(at, frame), 0, at.S - row.StuckAt);

        Vector3 arm = at.R - frame.Centre;
        if (row.Kind == RowKind.Thread)
        {
            Vector3 out2 = arm - frame.Along * Vector3.Dot(arm, frame.Along);
            return (out2 / row.Room, 0, Vector3.Dot(out2, out2) / (2 * row.Room) - row.Room / 2);
        }

        Vector3 axis = Axis(frame, row.Axis);
        double place = Vector3.Dot(axis, arm);
        if (row.Kind == RowKind.Seating)
            return (axis, 0, place - row.Seat);

        double side = row.Effective >= 0 ? 1 : -1;
        (double sin, double cos) = row.Corner != 0 || row.Across != 0 ? (at.Sin, at.Cos) : (0, 1);
        double across = side * row.Across;
        return (axis, row.Corner * cos - across * sin, place + row.Corner * sin + across * cos - side * row.Room);
    }

    internal static Vector3 Axis(in SlotFrame frame, int axis) => axis switch
    {
        0 => frame.Along,
        1 => frame.Outward,
        _ => frame.Third,
    };
}
