using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>A wire in slots that give way: which walls it will touch once wire and slots have moved, and how it answers
/// between those.</summary>
/// <remarks>
/// With F the factored tangent of the wire (walls held now are in it with ρ, springs with their k), J and b the
/// derivatives of the restraints by the unknowns of the wire and by the motions x of the slots, and G = Σ ρ J bᵀ, wire
/// and slots answer a force on wall i together:
/// <code>
///     F z + G x = J_i,    Gᵀ z + H x = b_i,    so x = M (b_i − Gᵀ F⁻¹ J_i),  z = F⁻¹ (J_i − G x),
/// </code>
/// M being what <see cref="IGivingSlots"/> says. So <see cref="TouchingSet"/> solves the complementarity problem
/// of all walls for wire and slots at once. Then the wire's answer is that of the walls found, and its loads with the
/// slots where they are follow from one step of Newton's method with them held.
/// </remarks>
internal sealed class GivingWire(TouchedRestraints restraints, TouchedStiffness touched)
{
    private double[] _bySide = [];
    private int[] _slotOf = [];
    private double[] _motions = [];
    private double[] _loads = [];
    private double[] _answer = [];
    private double[] _step = [];
    private double[] _column = [];
    private ContactRow[] _rows = [];
    private IGivingSlots? _slots;

    /// <summary>Foresees the walls, holds them, and tells how the wire answers between them.</summary>
    /// <param name="rod">In equilibrium, or with the walls foreseen before.</param>
    /// <param name="motions">How the slots are about to move, six a slot.</param>
    /// <param name="slots">How they give way.</param>
    /// <param name="stiffness">Takes the wire's stiffness at its slots, row-major 6n × 6n.</param>
    /// <param name="loads">Takes the loads on the teeth at the present places, if the walls foreseen, and no others,
    /// were touched there.</param>
    /// <returns>False when no other walls were foreseen than those that are held, or none that the wire stands between;
    /// then nothing is known.</returns>
    public bool TryForesee(
        Equilibrium rod, ReadOnlySpan<double> motions, IGivingSlots slots, Span<double> stiffness,
        Span<Wrench> loads)
    {
        _slots = slots;
        if (!TryRevise(rod, motions) || !touched.TryFind(rod, stiffness))
            return false;

        Span<double> step = Unbalanced(rod);
        restraints.Solve(rod, step);
        ReadLoads(rod, step, loads);
        return true;
    }

    private bool TryRevise(Equilibrium rod, ReadOnlySpan<double> motions)
    {
        if (!rod.TryFactorHere())
            return false;

        MakeRoom(rod);
        motions.CopyTo(_motions);
        restraints.Collect(rod);
        Span<double> step = Unbalanced(rod);
        AddPull(rod, _motions, step, -1);
        restraints.Solve(rod, step);
        return rod.TryReviseTouched(step, this);
    }

    private Span<double> Unbalanced(Equilibrium rod)
    {
        Span<double> step = _step.AsSpan(0, rod.State.Length);
        for (int i = 0; i < step.Length; i++)
            step[i] = -rod.Gradient[i];
        return step;
    }

    /// <summary>Takes in wall i of a search.</summary>
    /// <returns>How its depth changes by the motions alone [mm].</returns>
    public double Begin(Equilibrium rod, int i, int side)
    {
        Span<double> by = _bySide.AsSpan(6 * i, 6);
        rod.Contacts.DepthByMotion(side, rod.State, rod.Frames, by);
        _slotOf[i] = rod.Contacts.Rows[side / 2].Slot;
        return Spans.Dot(by, _motions.AsSpan(6 * _slotOf[i], 6));
    }

    /// <summary>Turns the answer of the wire in slots that stand to a unit of force on wall i into that of wire and
    /// slots.</summary>
    public void Answer(Equilibrium rod, int i, Span<double> z)
    {
        Span<double> loads = _loads.AsSpan(0, 6 * rod.Frames.Length);
        loads.Clear();
        _bySide.AsSpan(6 * i, 6).CopyTo(loads[(6 * _slotOf[i])..]);
        restraints.LetSlide(rod, z);
        for (int a = 0; a < restraints.Count; a++)
        {
            int row = restraints.Row(a);
            (int element, ElementVector derivative) = rod.Contacts.Derivative(row);
            Spans.AddScaled(
                loads.Slice(6 * rod.Contacts.Rows[row].Slot, 6), restraints.ByMotion(a),
                -rod.Contacts.StiffnessOfRow(row) * derivative.Dot(z, element));
        }

        _slots!.Answer(loads, _answer.AsSpan(0, loads.Length));
        Span<double> back = _column.AsSpan(0, z.Length);
        back.Clear();
        AddPull(rod, _answer, back, 1);
        restraints.Solve(rod, back);
        Spans.AddScaled(z, back, -1);
    }

    /// <summary>How the depth of wall k changes by the motions of the slots in the last <see cref="Answer"/>.</summary>
    public double ByAnswer(int k) => Spans.Dot(_bySide.AsSpan(6 * k, 6), _answer.AsSpan(6 * _slotOf[k], 6));

    /// <summary>Keeps how the walls are held, for <see cref="PutBack"/>.</summary>
    public void Keep(ContactSet contacts)
    {
        if (_rows.Length < contacts.RowCount)
            _rows = new ContactRow[contacts.RowCount];
        contacts.Rows.CopyTo(_rows);
    }

    /// <summary>Puts the walls back as they were kept.</summary>
    public void PutBack(ContactSet contacts) => _rows.AsSpan(0, contacts.RowCount).CopyTo(contacts.Rows);

    private void MakeRoom(Equilibrium rod)
    {
        int sides = 2 * rod.Contacts.RowCount;
        if (_slotOf.Length < sides)
        {
            _slotOf = new int[sides];
            _bySide = new double[6 * sides];
        }

        if (_motions.Length < 6 * rod.Frames.Length)
        {
            _motions = new double[6 * rod.Frames.Length];
            _loads = new double[6 * rod.Frames.Length];
            _answer = new double[6 * rod.Frames.Length];
        }

        if (_step.Length < rod.State.Length)
        {
            _step = new double[2 * rod.State.Length];
            _column = new double[2 * rod.State.Length];
        }
    }

    // Adds G x.
    private void AddPull(Equilibrium rod, ReadOnlySpan<double> motions, Span<double> to, double sign)
    {
        for (int a = 0; a < restraints.Count; a++)
        {
            int row = restraints.Row(a);
            double gap = Spans.Dot(restraints.ByMotion(a), motions.Slice(6 * rod.Contacts.Rows[row].Slot, 6));
            (int element, ElementVector derivative) = rod.Contacts.Derivative(row);
            derivative.AddTo(to, element, sign * rod.Contacts.StiffnessOfRow(row) * gap);
        }
    }

    private void ReadLoads(Equilibrium rod, ReadOnlySpan<double> step, Span<Wrench> loads)
    {
        ContactSet contacts = rod.Contacts;
        for (int i = 0; i < loads.Length; i++)
            loads[i] = new Wrench(default, default, rod.Frames[i].Centre);
        for (int a = 0; a < restraints.Count; a++)
        {
            int i = restraints.Row(a);
            ref readonly ContactRow row = ref contacts.Rows[i];
            (int element, ElementVector derivative) = contacts.Derivative(i);
            double force = row.Effective + contacts.StiffnessOfRow(i) * derivative.Dot(step, element);
            ReadOnlySpan<double> by = restraints.ByMotion(a);
            Wrench so = loads[row.Slot];
            loads[row.Slot] = so with
            {
                Force = so.Force - new Vector3(by[0], by[1], by[2]) * force,
                Moment = so.Moment - new Vector3(by[3], by[4], by[5]) * force,
            };
        }
    }
}
