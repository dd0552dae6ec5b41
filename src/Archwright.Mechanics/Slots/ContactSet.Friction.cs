using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;

namespace Archwright.Mechanics.Slots;

/// <content>Coulomb friction along the wire.</content>
/// <remarks>
/// A wire hardly stretches, so all of it that lies in one slot slips together: one row for a slot, at the station in
/// its middle. With S the point of the wire there and S₀ the one that would stand there without a force, it acts with
/// <code>
///     T = κ (S − S₀), at most μ Σ|N| either way,
/// </code>
/// N the forces of the slot's walls and threads at right angles to the wire. That is dry friction with an elastic slip
/// of T/κ, micrometres; it is committed as the slip of a plastic body is: S₀ = S − T/κ. The bound is held while a
/// search runs, so the problem stays one of least energy (Tresca's), and taken anew from the walls after it until both
/// agree (P. Wriggers, <i>Computational Contact Mechanics</i>, 2nd ed., 2006, ch. 5 and 6, from memory). A tie presses
/// the wire against the base of the slot, and counts there, once.
/// Since T is what goes with S, its force stands along the slot; the part of it at right angles to the wire, T
/// tan(tip), goes to the walls.
/// </remarks>
internal sealed partial class ContactSet
{
    /// <summary>Stiffness κ of a wire that sticks [N/mm]: it gives 5 µm for each newton.</summary>
    public double Grip { get; set; } = 200;

    /// <summary>Whether friction holds the wire anywhere.</summary>
    public bool HasFriction
    {
        get
        {
            foreach (ref readonly ContactRow row in _rows.AsSpan(0, RowCount))
            {
                if (row.Kind == RowKind.Friction && row.Bound > 0)
                    return true;
            }

            return false;
        }
    }

    /// <summary>Takes the bounds of friction from the walls' forces as they are.</summary>
    /// <returns>Largest change of a bound [N].</returns>
    public double TakeBounds(ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames, RodMesh mesh)
    {
        double largest = 0;
        for (int i = 0; i < RowCount; i++)
        {
            ref ContactRow row = ref _rows[i];
            if (row.Kind != RowKind.Friction)
                continue;

            double bound = row.Coefficient * Pressing(row.Slot, q, frames, mesh);
            largest = Math.Max(largest, Math.Abs(bound - row.Bound));
            row.Bound = bound;
        }

        return largest;
    }

    /// <summary>Makes the slip of a converged step part of the history.</summary>
    public void CommitFriction()
    {
        foreach (ref ContactRow row in Rows)
        {
            if (row.Kind != RowKind.Friction)
                continue;

            row.StuckAt = _stations[row.Station].S - row.Effective / Grip;
            row.CommittedBound = row.Bound;
        }
    }

    /// <summary>Bounds are those of the last committed step again.</summary>
    public void PutBackBounds()
    {
        foreach (ref ContactRow row in Rows)
            row.Bound = row.CommittedBound;
    }

    // Σ|N| of a slot [N].
    private double Pressing(int slot, ReadOnlySpan<double> q, ReadOnlySpan<SlotFrame> frames, RodMesh mesh)
    {
        double sum = 0;
        for (int i = 0; i < RowCount; i++)
        {
            if (_rows[i].Slot == slot && _rows[i].CanTouch)
                sum += OnTooth(i, q, frames, mesh).Force.Length;
        }

        return sum;
    }

    private double ApplyFriction(
        ref ContactRow row, int index, ReadOnlySpan<SlotFrame> frames, Span<double> gradient, BlockTridiagonal? tangent)
    {
        ref readonly Station at = ref _stations[row.Station];
        ref readonly SlotFrame frame = ref frames[row.Slot];
        row.Over = at.S - row.StuckAt;
        double held = Grip * row.Over;
        row.Slips = HoldsSet ? row.Touched != 0 : Math.Abs(held) > row.Bound * (1 + Rounding);
        double p = !row.Slips ? held : row.Bound * (HoldsSet ? row.Touched : Math.Sign(held));
        row.Effective = p;
        row.Violation = 0;
        if (tangent is not null)
            _elementOfRow[index] = at.Element;
        if (row.Bound == 0)
        {
            row.Slips = false;
            row.Effective = 0;
            return 0;
        }

        Vector3 m = PlaceByPoint(at, frame);
        ElementVector derivative = ElementVector.OfPoint(m, at.Shape);
        derivative.AddTo(gradient, at.Element, p);
        if (tangent is null)
            return 0;

        _byRow[index] = derivative;
        if (!row.Slips)
            ElementVector.AddOuter(tangent, at.Element, derivative, derivative * Grip);
        _pulls[row.Station].Add(m, 0, 0, p);
        return row.Slips ? p * row.Over - p * p / (2 * Grip) : held * row.Over / 2;
    }

    // A wire that slipped last stands at its bound: it sticks until it moves on.
    private const double Rounding = 1e-9;

    // ∂S/∂r: a point that moves ahead leaves the station to one that lies before it.
    private static Vector3 PlaceByPoint(in Station at, in SlotFrame frame) => frame.Along * (-1 / at.Advance);
}
