using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>The engaged wire seen from its slots with the walls that are touched kept, and the directions of their
/// forces too: quick and symmetric, and the wire always resists.</summary>
/// <remarks>
/// With F the factored tangent of the wire (walls held now are in it with the number ρ, springs with their own k; both
/// are k here), J the derivatives of the restraints by the wire's unknowns and C by the motions x of the slots,
/// and A = J F⁻¹ Jᵀ without the pin (<see cref="TouchedRestraints"/>),
/// <code>
///     ν = k C x,    change of force  p = k (C x − A ν),
/// </code>
/// and the load on the teeth changes by −Cᵀ p. So walls give by 1/ρ, less than a forecast could feel, and two walls at
/// one place share their force. The turning of the forces with the slots, which <see cref="Condensation"/> has, is left
/// out.
/// </remarks>
internal sealed class TouchedStiffness(TouchedRestraints restraints)
{
    private double[] _forces = [];
    private double[] _answers = [];
    private double[] _column = [];

    /// <summary>Finds it.</summary>
    /// <param name="rod">In equilibrium.</param>
    /// <param name="stiffness">Takes it, row-major 6n × 6n as of <see cref="Engager.TangentStiffness"/>.</param>
    /// <returns>False when the wire does not stand by itself as it lies; then nothing is known.</returns>
    public bool TryFind(Equilibrium rod, Span<double> stiffness)
    {
        if (!rod.TryFactorHere())
            return false;

        restraints.Collect(rod);
        MakeRoom(restraints.Count, rod.State.Length);
        for (int a = 0; a < restraints.Count; a++)
            Answer(rod, a);

        int size = 6 * rod.Frames.Length;
        stiffness.Clear();
        for (int j = 0; j < size; j++)
        {
            if (TryForces(rod.Contacts, j))
                AddLoads(rod.Contacts, j, size, stiffness);
        }

        return TryMakeSymmetric(stiffness, size);
    }

    private void MakeRoom(int count, int unknowns)
    {
        if (_forces.Length < count)
        {
            _forces = new double[2 * count];
            _answers = new double[4 * count * count];
        }

        if (_column.Length < unknowns)
            _column = new double[2 * unknowns];
    }

    // What a unit of force on a restraint does to the gaps of all.
    private void Answer(Equilibrium rod, int a)
    {
        Span<double> column = _column.AsSpan(0, rod.State.Length);
        (int element, ElementVector derivative) = rod.Contacts.Derivative(restraints.Row(a));
        restraints.Solve(rod, element, derivative, column);
        Span<double> gaps = _answers.AsSpan(a * restraints.Count, restraints.Count);
        for (int b = 0; b < gaps.Length; b++)
        {
            (int other, ElementVector along) = rod.Contacts.Derivative(restraints.Row(b));
            gaps[b] = along.Dot(column, other);
        }
    }

    // What every restraint pushes with beyond what the tangent knows, when slot j/6 moves by one along or about an
    // axis.
    private bool TryForces(ContactSet contacts, int j)
    {
        Span<double> forces = _forces.AsSpan(0, restraints.Count);
        bool any = false;
        for (int a = 0; a < restraints.Count; a++)
        {
            double gap = GapBy(contacts, a, j);
            forces[a] = contacts.StiffnessOfRow(restraints.Row(a)) * gap;
            any |= gap != 0;
        }

        return any;
    }

    private void AddLoads(ContactSet contacts, int j, int size, Span<double> stiffness)
    {
        ReadOnlySpan<double> forces = _forces.AsSpan(0, restraints.Count);
        for (int a = 0; a < restraints.Count; a++)
        {
            double given = Spans.Dot(_answers.AsSpan(a * forces.Length, forces.Length), forces);
            double change = contacts.StiffnessOfRow(restraints.Row(a)) * (GapBy(contacts, a, j) - given);
            int slot = contacts.Rows[restraints.Row(a)].Slot;
            for (int k = 0; k < 6; k++)
                stiffness[(6 * slot + k) * size + j] -= restraints.ByMotion(a)[k] * change;
        }
    }

    private double GapBy(ContactSet contacts, int a, int j) =>
        contacts.Rows[restraints.Row(a)].Slot == j / 6 ? restraints.ByMotion(a)[j % 6] : 0;

    private static bool TryMakeSymmetric(Span<double> matrix, int size)
    {
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double mean = (matrix[i * size + j] + matrix[j * size + i]) / 2;
                if (!double.IsFinite(mean))
                    return false;

                matrix[i * size + j] = mean;
                matrix[j * size + i] = mean;
            }
        }

        return true;
    }
}
