using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>Which walls the wire touches after a Newton step: the complementarity problem of all walls at once, with
/// the wire linear.</summary>
/// <remarks>
/// With F the factored tangent (walls held now are in it with the number ρ), d the step, J the derivative of a wall's
/// depth and μ what is added to the forces of the walls that change,
/// <code>
///     F d = −g − Σ Jⱼᵀ μⱼ,
///     held and staying:  p = f + ρ J·d ≥ 0,
///     let go:            p + μ = 0,            μ ≥ 0  (the wire stands free of it),
///     free and staying:  depth + J·d ≤ 0,
///     taken in:          depth + J·d = 0,      μ ≥ 0.
/// </code>
/// Walls that would have to pull let go first. Then the wall that has been run into the deepest is pushed back until
/// the wire just touches it; a wall whose force falls to nil on the way lets go. Each wall that is taken in raises the
/// energy that the walls hold back, so no set comes twice and the search ends (D. Goldfarb, A. Idnani, Math. Program.
/// 27 (1983) 1–33, from memory). Friction is two such walls a slot: what is left of its bound either way is the force
/// of a held one, with the stiffness κ for ρ; to slip is to let go. A wall that changes costs one solve with factors
/// that are there already.
/// A tail of the wire that lies in its slots without load has many walls that bear next to nothing; looked at one by
/// one between Newton steps, each that lets go lets the tail swing into the next, and the search never ends.
/// Where slots give way in the same step, <see cref="GivingWire"/> adds their part to J·d and to the answers.
/// </remarks>
internal sealed class TouchingSet
{
    private const int MostChanges = 96;
    private const int MostAnswers = 128;
    private const int MostSteps = 400;
    private const double LeastDepth = 1e-10;
    private const double LeastShareOfForce = 1e-10;
    private const double LeastRate = 1e-14;

    private readonly int[] _sides;
    private readonly int[] _elements;
    private readonly ElementVector[] _derivatives;
    private readonly bool[] _isHeld;
    private readonly bool[] _isChanged;

    // Force of a held wall and depth of a free one before the step; J·d with the walls as they were, and as they are
    // now; its change along the present direction.
    private readonly double[] _rho;
    private readonly double[] _before;
    private readonly double[] _free;
    private readonly double[] _moved;
    private readonly double[] _rates;
    private readonly double[] _added;
    private readonly int[] _columnOf;
    private readonly int[] _changed = new int[MostChanges];
    private readonly double[] _vector = new double[MostChanges];
    private readonly GrowingFactor _factor;
    private readonly double[] _answers;
    private readonly double[] _column;
    private GivingWire? _giving;
    private int _count;
    private int _solved;

    /// <param name="mostRows">Most rows of contacts.</param>
    /// <param name="mostNodes">Most nodes of the wire.</param>
    /// <param name="room">Where its arrays come from; null for the heap.</param>
    public TouchingSet(int mostRows, int mostNodes, Room? room)
    {
        // Few of them are ever asked for, and what is used is written first: nothing is cleared.
        _factor = new GrowingFactor(MostChanges, room);
        _sides = Room.Take<int>(room, 2 * mostRows);
        _elements = Room.Take<int>(room, 2 * mostRows);
        _derivatives = Room.Take<ElementVector>(room, 2 * mostRows);
        _isHeld = Room.Take<bool>(room, 2 * mostRows);
        _isChanged = Room.Take<bool>(room, 2 * mostRows);
        _rho = Room.Take<double>(room, 2 * mostRows);
        _before = Room.Take<double>(room, 2 * mostRows);
        _free = Room.Take<double>(room, 2 * mostRows);
        _moved = Room.Take<double>(room, 2 * mostRows);
        _rates = Room.Take<double>(room, 2 * mostRows);
        _added = Room.Take<double>(room, 2 * mostRows);
        _columnOf = Room.Take<int>(room, 2 * mostRows);
        _column = Room.Take<double>(room, 8 * mostNodes);
        _answers = Room.Take<double>(room, 2 * mostRows * MostAnswers);
    }

    /// <summary>Walls that changed in the last <see cref="TryRevise"/>.</summary>
    public int Changes { get; private set; }

    /// <summary>Finds the walls that will be touched, and holds them.</summary>
    /// <param name="rod">Evaluated; its factor is that of the tangent.</param>
    /// <param name="step">The step with the walls as they are.</param>
    /// <returns>False when no consistent set was found; then nothing is changed.</returns>
    /// <param name="giving">Slots that give way in the same step; null where they stand.</param>
    public bool TryRevise(Equilibrium rod, ReadOnlySpan<double> step, GivingWire? giving = null)
    {
        _giving = giving;
        Collect(rod, step);
        double leastForce = LeastShareOfForce * Math.Max(rod.Contacts.LargestForce(), 0.1);
        if (!TryLetGo(rod, leastForce))
            return false;

        for (int pass = 0; pass < MostSteps; pass++)
        {
            int i = Deepest(leastForce);
            if (i < 0)
            {
                Apply(rod);
                return true;
            }

            if (!TryPushBack(rod, i, ref pass))
                return false;
        }

        return false;
    }

    private void Collect(Equilibrium rod, ReadOnlySpan<double> step)
    {
        GivingWire? giving = _giving;
        ContactSet contacts = rod.Contacts;
        _count = 0;
        _solved = 0;
        Changes = 0;
        _factor.Clear();
        for (int side = 0; side < 2 * contacts.RowCount; side++)
        {
            if (!contacts.IsSide(side))
                continue;

            int i = _count++;
            (_elements[i], _derivatives[i]) = contacts.DepthDerivative(side, rod.State, rod.Frames, rod.Mesh);
            _sides[i] = side;
            _rho[i] = contacts.StiffnessOf(side);
            _isHeld[i] = contacts.IsHeld(side);
            _isChanged[i] = false;
            _before[i] = _isHeld[i] ? contacts.ForceOf(side) : contacts.Depth(side);
            _free[i] = _derivatives[i].Dot(step, _elements[i]) + (giving?.Begin(rod, i, side) ?? 0);
            _moved[i] = _free[i];
            _added[i] = 0;
            _columnOf[i] = -1;
        }
    }

    private double HeldForce(int i) => _before[i] + _rho[i] * _moved[i];

    // Walls only let go here, so this ends; what is left pushes.
    private bool TryLetGo(Equilibrium rod, double least)
    {
        bool more = true;
        while (more)
        {
            more = false;
            for (int i = 0; i < _count; i++)
            {
                if (!_isHeld[i] || _isChanged[i] || HeldForce(i) >= -least)
                    continue;
                if (!TryAdd(rod, i))
                    return false;
                more = true;
            }

            if (more && !TrySolve())
                return false;
        }

        return true;
    }

    // The wall that the wire would stand in the deepest; −1 when it stands in none.
    private int Deepest(double leastForce)
    {
        int deepest = -1;
        double most = 0;
        for (int i = 0; i < _count; i++)
        {
            double depth = 0;
            if (!_isHeld[i] && !_isChanged[i])
                depth = _before[i] + _moved[i] - LeastDepth;
            else if (_isHeld[i] && _isChanged[i])
                depth = (-_added[i] - leastForce) / _rho[i];

            if (depth <= most)
                continue;

            most = depth;
            deepest = i;
        }

        return deepest;
    }

    // Pushes one wall back until it is just touched; walls whose force falls to nil before that let go.
    private bool TryPushBack(Equilibrium rod, int i, ref int pass)
    {
        for (; pass < MostSteps; pass++)
        {
            if (!TryDirection(rod, i))
                return false;

            double rate = _isHeld[i] ? _vector[Array.IndexOf(_changed, i, 0, Changes)] : -_rates[i];
            if (!(rate > LeastRate))
                return false;

            double whole = (_isHeld[i] ? -_added[i] : _before[i] + _moved[i]) / rate;
            (int blocker, double length) = Blocker(i, whole);
            Take(i, length);
            if (blocker < 0)
            {
                return (_isHeld[i] ? TryRemove(i) : TryAdd(rod, i)) && TrySolve();
            }

            if (!TryChangeRole(rod, blocker))
                return false;
        }

        return false;
    }

    // What changes for a unit of force on wall i while the others keep their roles.
    private bool TryDirection(Equilibrium rod, int i)
    {
        Span<double> vector = _vector.AsSpan(0, Changes);
        ReadOnlySpan<double> own = _isHeld[i] ? default : Answer(rod, i);
        if (own.IsEmpty && !_isHeld[i])
            return false;

        for (int a = 0; a < Changes; a++)
        {
            int j = _changed[a];
            vector[a] = !_isHeld[i] ? -own[j] : j == i ? -1 / _rho[i] : 0;
        }

        if (!TrySolveFactored(vector))
            return false;

        Span<double> rates = _rates.AsSpan(0, _count);
        rates.Clear();
        if (!_isHeld[i])
            Spans.AddScaled(rates, own, -1);
        for (int a = 0; a < Changes; a++)
            Spans.AddScaled(rates, Kept(_changed[a]), -vector[a]);

        return true;
    }

    private (int Blocker, double Length) Blocker(int pushed, double whole)
    {
        int blocker = -1;
        double length = whole;
        for (int i = 0; i < _count; i++)
        {
            if (!_isHeld[i] || _isChanged[i] || !(_rates[i] < 0))
                continue;

            double at = Math.Max(0, HeldForce(i)) / (-_rho[i] * _rates[i]);
            if (at < length)
                (blocker, length) = (i, at);
        }

        for (int a = 0; a < Changes; a++)
        {
            int i = _changed[a];
            if (_isHeld[i] || i == pushed || !(_vector[a] < 0))
                continue;

            double at = Math.Max(0, _added[i]) / -_vector[a];
            if (at < length)
                (blocker, length) = (i, at);
        }

        return (blocker, length);
    }

    private void Take(int pushed, double length)
    {
        for (int i = 0; i < _count; i++)
            _moved[i] += length * _rates[i];
        for (int a = 0; a < Changes; a++)
            _added[_changed[a]] += length * _vector[a];
        if (!_isHeld[pushed])
            _added[pushed] += length;
    }

    // All of the walls that change, exactly.
    private bool TrySolve()
    {
        Span<double> force = _vector.AsSpan(0, Changes);
        for (int a = 0; a < Changes; a++)
        {
            int i = _changed[a];
            force[a] = _free[i] + (_isHeld[i] ? _before[i] / _rho[i] : _before[i]);
        }

        if (!TrySolveFactored(force))
            return false;

        Span<double> moved = _moved.AsSpan(0, _count);
        _free.AsSpan(0, _count).CopyTo(moved);
        for (int a = 0; a < Changes; a++)
        {
            _added[_changed[a]] = force[a];
            Spans.AddScaled(moved, Kept(_changed[a]), -force[a]);
        }

        return true;
    }

    private bool TrySolveFactored(Span<double> vector)
    {
        _factor.Solve(vector);
        foreach (double value in vector)
        {
            if (!double.IsFinite(value))
                return false;
        }

        return true;
    }

    // J F⁻¹ Jᵀ: what a unit of force on a wall does to the depth of every wall; once for each that changes. Empty where
    // too many have been asked for.
    private ReadOnlySpan<double> Answer(Equilibrium rod, int i)
    {
        if (_columnOf[i] < 0)
        {
            if (_solved == MostAnswers)
                return [];

            _columnOf[i] = _solved++;
            Ask(rod, i);
        }

        return Kept(i);
    }

    private void Ask(Equilibrium rod, int i)
    {
        Span<double> z = _column.AsSpan(0, 8 * rod.Mesh.Nodes);
        z.Clear();
        _derivatives[i].AddTo(z, _elements[i], 1);
        rod.Factor.Solve(z, _elements[i]);
        _giving?.Answer(rod, i, z);
        Span<double> answer = Kept(i);
        for (int k = 0; k < _count; k++)
            answer[k] = _derivatives[k].Dot(z, _elements[k]) + (_giving?.ByAnswer(k) ?? 0);
    }

    private Span<double> Kept(int i) => _answers.AsSpan(_columnOf[i] * _count, _count);

    // The matrix of the walls that change: J F⁻¹ Jᵀ, less 1/ρ for one that lets go, whose force is in F.
    private bool TryAdd(Equilibrium rod, int i)
    {
        if (Changes == MostChanges)
            return false;

        ReadOnlySpan<double> answer = Answer(rod, i);
        if (answer.IsEmpty)
            return false;

        _changed[Changes] = i;
        Span<double> row = _factor.Next();
        for (int a = 0; a <= Changes; a++)
            row[a] = answer[_changed[a]];
        if (_isHeld[i])
            row[Changes] -= 1 / _rho[i];
        if (!_factor.TryAdd())
            return false;

        Changes++;
        _isChanged[i] = true;
        return true;
    }

    // A wall whose force has fallen to nil: a held one lets go, one that was taken in stands free again.
    private bool TryChangeRole(Equilibrium rod, int i) => _isHeld[i] ? TryAdd(rod, i) : TryRemove(i);

    private bool TryRemove(int i)
    {
        int at = Array.IndexOf(_changed, i, 0, Changes);
        Changes--;
        for (int k = at; k < Changes; k++)
            _changed[k] = _changed[k + 1];
        _isChanged[i] = false;
        _added[i] = 0;
        return _factor.TryRemove(at);
    }

    // First let go, then take in: of a pair of walls one is touched at most.
    private void Apply(Equilibrium rod)
    {
        for (int a = 0; a < Changes; a++)
        {
            if (_isHeld[_changed[a]])
                rod.Contacts.LetGo(_sides[_changed[a]]);
        }

        for (int a = 0; a < Changes; a++)
        {
            if (!_isHeld[_changed[a]])
                rod.Contacts.TakeIn(_sides[_changed[a]]);
        }
    }
}
