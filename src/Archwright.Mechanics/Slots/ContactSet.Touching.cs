using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;

namespace Archwright.Mechanics.Slots;

/// <content>The sides of the walls one by one, for the question which of them will be touched.</content>
/// <remarks>Sides stand two a row: the lower wall first, then the upper. The depth of a side is how far the wire stands
/// in it, negative where it stands free.</remarks>
internal sealed partial class ContactSet
{
    /// <summary>Whether the side exists and may be touched or not.</summary>
    public bool IsSide(int side)
    {
        ref readonly ContactRow row = ref _rows[side / 2];
        if (row.Kind == RowKind.Friction)
            return row.Bound > 0 && (row.Touched == 0 || row.Touched == Sign(side));

        return MayLetGo(row) && !row.BothWays && !row.Inside && (side % 2 == 1 ? row.Upper : row.Lower);
    }

    /// <summary>Whether the side is held as touched; of friction, whether the wire sticks.</summary>
    public bool IsHeld(int side)
    {
        ref readonly ContactRow row = ref _rows[side / 2];
        return row.Touched == (row.Kind == RowKind.Friction ? 0 : Sign(side));
    }

    /// <summary>Force of a held side, pushing positive, as it stands; of friction, what is left of its bound
    /// [N].</summary>
    public double ForceOf(int side)
    {
        ref readonly ContactRow row = ref _rows[side / 2];
        return row.Kind == RowKind.Friction
            ? row.Bound - Sign(side) * Grip * row.Over
            : Sign(side) * HeldForce(row);
    }

    /// <summary>Depth of a side; of friction, how far the wire is from slipping [mm].</summary>
    public double Depth(int side)
    {
        ref readonly ContactRow row = ref _rows[side / 2];
        return row.Kind == RowKind.Friction ? row.Bound / Grip - Sign(side) * row.Over
            : side % 2 == 1 ? row.Over : row.Under;
    }

    /// <summary>Stiffness with which a held side stands in the tangent [N/mm].</summary>
    public double StiffnessOf(int side) => _rows[side / 2].Kind == RowKind.Friction ? Grip : Penalty;

    /// <summary>Derivative of the depth by the unknowns of an element; <see cref="Locate"/> and <see cref="Apply"/>
    /// come first.</summary>
    public (int Element, ElementVector Derivative) DepthDerivative(
        int side, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames, RodMesh mesh)
    {
        ref readonly ContactRow row = ref _rows[side / 2];
        ref readonly SlotFrame frame = ref frames[row.Slot];
        if (row.EndStop)
        {
            FixedGap(row, q, frame, mesh, out _, out ElementVector fixedPoint, out int element);
            return (element, fixedPoint * Sign(side));
        }

        ref readonly Station at = ref _stations[row.Station];
        if (row.Kind == RowKind.Friction)
            return (at.Element, ElementVector.OfPoint(PlaceByPoint(at, frame), at.Shape) * -Sign(side));
        if (row.Kind == RowKind.Thread)
        {
            double x = Vector3.Dot(frame.Outward, at.R - frame.Centre);
            double y = Vector3.Dot(frame.Third, at.R - frame.Centre);
            Vector3 away = (frame.Outward * x + frame.Third * y) / row.Room;
            return (at.Element, AtStation(at, NormalToWire(away, at, frame, 0), 0));
        }

        bool turns = row.Corner != 0 || row.Across != 0;
        double first = turns ? row.Corner * at.Cos - Sign(side) * row.Across * at.Sin : 0;
        Vector3 normal = NormalToWire(Axis(frame, row.Axis), at, frame, first);
        return (at.Element, AtStation(at, normal, first) * Sign(side));
    }

    /// <summary>Holds a side as touched, without a force yet.</summary>
    public void TakeIn(int side)
    {
        ref ContactRow row = ref _rows[side / 2];
        row.Touched = row.Kind == RowKind.Friction ? 0 : Sign(side);
        row.Multiplier = 0;
    }

    /// <summary>Lets go of a side.</summary>
    public void LetGo(int side)
    {
        ref ContactRow row = ref _rows[side / 2];
        row.Touched = row.Kind == RowKind.Friction ? Sign(side) : 0;
        row.Multiplier = 0;
        row.Effective = 0;
    }

    /// <summary>Multipliers take the forces that a step plans: those of the linear problem, without the errors of
    /// second order that ρ would blow up.</summary>
    /// <param name="step">Step of the unknowns, whole.</param>
    /// <param name="slide">Slide of the whole wire in it [mm].</param>
    /// <param name="share">Share of it that is taken.</param>
    public void TakeForces(ReadOnlySpan<double> step, double slide, double share)
    {
        for (int i = 0; i < RowCount; i++)
        {
            ref ContactRow row = ref _rows[i];
            if (row.IsSpring || (row.Touched == 0 && !row.BothWays))
                continue;

            double planned = row.Effective
                + Penalty * (_byRow[i].Dot(step, _elementOfRow[i]) + _bySlide[i] * slide);
            row.Multiplier += share * (planned - row.Multiplier);
        }
    }

    /// <summary>Whether no held wall has to pull and no other has been run into.</summary>
    /// <param name="tolerance">Depth that does not count [mm].</param>
    public bool IsConsistent(double tolerance)
    {
        double least = PullingShare * Math.Max(LargestForce(), 0.1);
        for (int side = 0; side < 2 * RowCount; side++)
        {
            if (IsSide(side) && (IsHeld(side) ? ForceOf(side) < -least : Depth(side) > tolerance))
                return false;
        }

        return true;
    }

    // A wall that pulls by less than this share of the largest force is let be: rounding decides its sign.
    private const double PullingShare = 1e-9;

    // Derivative of a row by the unknowns, from its normal to the wire and its derivative by the turn.
    private static ElementVector AtStation(in Station at, Vector3 normal, double first)
    {
        ElementVector derivative = ElementVector.OfPoint(normal, at.Shape);
        return first != 0 ? derivative + ElementVector.OfSlope(at.TurnByP * first, first, at.TurnShape) : derivative;
    }
}
