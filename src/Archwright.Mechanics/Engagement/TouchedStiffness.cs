using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>The engaged wire seen from its slots with the walls that are touched kept, and the directions of their
/// forces too: quick and symmetric, and the wire always resists.</summary>
/// <remarks>
/// With F the factored tangent of the wire (walls held now are in it with the number ρ, springs with their own k; both
/// are k here), J the derivatives of the restraints by the wire's unknowns and C by the motions x of the slots,
/// A = J F⁻¹ Jᵀ, and ε what is left of the pin,
/// <code>
///     walls, springs:  ν = k C x,    change of force  p = k (C x − A ν),
///     pin:             A ν − ν/(ρ − ε) = 0,
/// </code>
/// and the load on the teeth changes by −Cᵀ p. So walls give by 1/ρ, less than a forecast could feel, and two walls at
/// one place share their force. The last line takes the pin out again but for ε: the wire slides. The pin stays where
/// the wire rests along the arch as a ball on a hill does, and where what drives it is too little to be felt. The
/// turning of the forces with the slots, which <see cref="Condensation"/> has, is left out.
/// </remarks>
internal sealed class TouchedStiffness
{
    /// <summary>What is left of the pin [N/mm]: far below what teeth oppose along the arch over a week.</summary>
    public const double LeastPin = 0.01;

    private int[] _rows = [];
    private double[] _gaps = [];
    private double[] _forces = [];
    private double[] _answers = [];
    private double[] _column = [];
    private double[] _byPin = [];
    private double _pinGive;
    private double _pinForce;
    private bool _slides;
    private int _count;

    /// <summary>Finds it.</summary>
    /// <param name="rod">In equilibrium.</param>
    /// <param name="stiffness">Takes it, row-major 6n × 6n as of <see cref="Engager.TangentStiffness"/>.</param>
    /// <returns>False when the wire does not stand by itself as it lies; then nothing is known.</returns>
    public bool TryFind(Equilibrium rod, Span<double> stiffness)
    {
        if (!rod.TryFactorHere())
            return false;

        Collect(rod);
        for (int a = 0; a < _count; a++)
            Answer(rod, _rows[a], _answers.AsSpan(a * _count, _count));
        LetSlide(rod);

        int size = 6 * rod.Frames.Length;
        stiffness.Clear();
        for (int j = 0; j < size; j++)
        {
            if (TryForces(rod.Contacts, j))
                AddLoads(rod.Contacts, j, size, stiffness);
        }

        return TryMakeSymmetric(stiffness, size);
    }

    private void Collect(Equilibrium rod)
    {
        MakeRoom(rod.Contacts.RowCount, rod.State.Length);
        _count = 0;
        for (int i = 0; i < rod.Contacts.RowCount; i++)
        {
            if (!rod.Contacts.IsActive(i) || rod.Contacts.Rows[i].Kind == RowKind.Pin)
                continue;

            rod.Contacts.GapByMotion(i, rod.State, rod.Frames, _gaps.AsSpan(6 * _count, 6));
            _rows[_count++] = i;
        }

        if (_answers.Length < _count * _count)
            _answers = new double[2 * _count * _count];
    }

    private void MakeRoom(int rows, int unknowns)
    {
        if (_rows.Length < rows)
        {
            _rows = new int[rows];
            _gaps = new double[6 * rows];
            _forces = new double[rows];
            _byPin = new double[rows];
        }

        if (_column.Length < unknowns)
            _column = new double[2 * unknowns];
    }

    // What a unit of force on a row does to the gaps of all that are touched; to its own is returned.
    private double Answer(Equilibrium rod, int row, Span<double> gaps)
    {
        Span<double> column = _column.AsSpan(0, rod.State.Length);
        column.Clear();
        (int element, ElementVector derivative) = rod.Contacts.Derivative(row);
        derivative.AddTo(column, element, 1);
        rod.Factor.Solve(column, element);
        for (int b = 0; b < _count; b++)
        {
            (int other, ElementVector along) = rod.Contacts.Derivative(_rows[b]);
            gaps[b] = along.Dot(column, other);
        }

        return derivative.Dot(column, element);
    }

    // The pin's own equation, the others being solved for: how its force follows from theirs.
    private void LetSlide(Equilibrium rod)
    {
        int pin = rod.Contacts.RowCount - 1;
        _slides = pin >= 0 && rod.Contacts.Rows[pin].Kind == RowKind.Pin && !rod.IsHeldAlong;
        if (!_slides)
            return;

        double own = Answer(rod, pin, _byPin.AsSpan(0, _count));
        _pinGive = own - 1 / (rod.Contacts.Penalty - LeastPin);
        _slides = _pinGive < 0;
    }

    // What every restraint pushes with beyond what the tangent knows, when slot j/6 moves by one along or about an
    // axis.
    private bool TryForces(ContactSet contacts, int j)
    {
        Span<double> forces = _forces.AsSpan(0, _count);
        bool any = false;
        for (int a = 0; a < _count; a++)
        {
            double gap = GapBy(contacts, a, j);
            forces[a] = contacts.StiffnessOfRow(_rows[a]) * gap;
            any |= gap != 0;
        }

        if (!any)
            return false;

        _pinForce = _slides ? -Spans.Dot(_byPin.AsSpan(0, _count), forces) / _pinGive : 0;
        return true;
    }

    private void AddLoads(ContactSet contacts, int j, int size, Span<double> stiffness)
    {
        ReadOnlySpan<double> forces = _forces.AsSpan(0, _count);
        for (int a = 0; a < _count; a++)
        {
            double given = Spans.Dot(_answers.AsSpan(a * _count, _count), forces) + _byPin[a] * _pinForce;
            double change = contacts.StiffnessOfRow(_rows[a]) * (GapBy(contacts, a, j) - given);
            int slot = contacts.Rows[_rows[a]].Slot;
            for (int k = 0; k < 6; k++)
                stiffness[(6 * slot + k) * size + j] -= _gaps[6 * a + k] * change;
        }
    }

    private double GapBy(ContactSet contacts, int a, int j) =>
        contacts.Rows[_rows[a]].Slot == j / 6 ? _gaps[6 * a + j % 6] : 0;

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
