using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>How a search for equilibrium ended.</summary>
internal enum SearchEnd
{
    /// <summary>Residual and violations are below their tolerances.</summary>
    Converged,

    /// <summary>No step lowers the energy any more, short of the tolerance.</summary>
    Stalled,

    /// <summary>The bound on the number of iterations was reached.</summary>
    OutOfIterations,

    /// <summary>The wire does not reach a slot (it has slipped out, or runs across it).</summary>
    Missed,
}

/// <summary>A dead load at a node (bench problems).</summary>
/// <param name="Node">Index.</param>
/// <param name="Force">[N]</param>
internal readonly record struct DeadLoad(int Node, Vector3 Force);

/// <summary>The workspace of one wire in its slots, and the search for equilibrium.</summary>
/// <remarks>
/// Newton's method on energy plus the augmented Lagrangian of the contacts, with a line search on that same merit function. Where the
/// tangent is not positive definite, a share of its diagonal is added until it is, so that every step goes down.
/// Multipliers follow after steps that leave the gradient small; then one iteration lowers both the gradient (quadratically) and the
/// violation (by the ratio of the wire's own stiffness to ρ). Everything is allocated once; an iteration allocates nothing.
/// </remarks>
internal sealed class Equilibrium<TLaw>
    where TLaw : struct, ISectionLaw
{
    private const double BaseShift = 1e-4;
    private const double FirstShift = 1e-3;
    private const double LargestShift = 1e7;
    private const double LargestSlopeStep = 0.5;
    private const double LargestMove = 3;
    private const double LooseForce = 3e-4;
    private const double LoosePlace = 3e-6;
    private const double EnergyGrowth = 3;
    private const double EnergyRoom = 20;
    private const double AimOfResidual = 1e-4;
    private const double AimOfResidualAgain = 1e-5;
    private const double InsideShift = 0.1;
    private const double LooseAim = 1e-6;
    private const double LastAim = 1e-8;
    private const double InsideLooseForce = 1e-3;
    private const double InsideForce = 2e-7;

    private readonly double[] _q;
    private readonly double[] _trial;
    private readonly double[] _gradient;
    private readonly double[] _step;
    private readonly BlockTridiagonal _tangent;
    private readonly BlockTridiagonal _factor;
    private readonly NodeTracking _tracking;
    private readonly double[] _past = new double[4];
    private int _next;
    private double _lastShift = BaseShift;
    private TLaw _law;

    public Equilibrium(int mostNodes, int mostStations, int mostRows, int mostSlots, TLaw law, double stretch)
    {
        Mesh = new RodMesh(mostNodes);
        Contacts = new ContactSet(mostStations, mostRows);
        Frames = new SlotFrame[mostSlots];
        _q = new double[8 * mostNodes];
        _trial = new double[8 * mostNodes];
        _gradient = new double[8 * mostNodes];
        _step = new double[8 * mostNodes];
        _tangent = new BlockTridiagonal(mostNodes);
        _factor = new BlockTridiagonal(mostNodes);
        _tracking = new NodeTracking(mostStations);
        _law = law;
        Stretch = stretch;
    }

    public RodMesh Mesh { get; }

    /// <summary>Rest shape.</summary>
    public required RestCurve Rest { get; init; }

    public ContactSet Contacts { get; }

    /// <summary>Slots as they stand now.</summary>
    public SlotFrame[] Frames { get; }

    /// <summary>Initial EA [N].</summary>
    public double Stretch { get; }

    /// <summary>Loads that do not follow (bench problems).</summary>
    public DeadLoad[] Loads { get; set; } = [];

    /// <summary>State, 8 a node.</summary>
    public Span<double> State => _q.AsSpan(0, 8 * Mesh.Nodes);

    public ref readonly TLaw Law => ref _law;

    /// <summary>Newton iterations since the workspace was made.</summary>
    public int Iterations { get; private set; }

    /// <summary>Largest out-of-balance force of the last evaluation [N, N·mm].</summary>
    public double Residual { get; private set; }

    /// <summary>Largest violation of a restraint at the last evaluation [mm].</summary>
    public double Violation { get; private set; }

    /// <summary>The number ρ [N/mm].</summary>
    public double ContactNumber { get; set; } = Engagement.ContactNumber.Usual;

    /// <summary>Residual that counts as equilibrium: this share of the largest contact force, and never less than 1e-9 N.</summary>
    public double ForceTolerance { get; set; } = 1e-7;

    /// <summary>Violation that counts as fulfilled [mm].</summary>
    public double PlaceTolerance { get; set; } = 2e-8;

    /// <summary>The tangent and its factors at the last converged state (for condensing).</summary>
    public BlockTridiagonal Factor => _factor;

    public BlockTridiagonal Tangent => _tangent;

    public Span<double> Gradient => _gradient.AsSpan(0, 8 * Mesh.Nodes);

    /// <summary>Looks for equilibrium near the present state, with the walls that are touched known but for a few: Newton's method on energy and
    /// augmented Lagrangian.</summary>
    /// <param name="mostIterations">Bound.</param>
    /// <param name="loose">Stop early: good enough to see where nodes have to go and whether the wire slides.</param>
    /// <param name="cancellation">To stop.</param>
    public SearchEnd SearchNear(int mostIterations, bool loose, CancellationToken cancellation)
    {
        Span<double> q = State;
        if (Contacts.Locate(Mesh, q, Frames))
            Contacts.Freeze(Mesh, q, Frames);
        Contacts.Penalty = ContactNumber;
        Contacts.Interior = 0;
        if (!Evaluate(q, out double merit))
            return SearchEnd.Missed;

        double forceTolerance = loose ? LooseForce : ForceTolerance;
        double placeTolerance = loose ? LoosePlace : PlaceTolerance;
        double shift = _lastShift;
        Forget();
        for (int pass = 0; pass < mostIterations; pass++)
        {
            cancellation.ThrowIfCancellationRequested();
            double force = Math.Max(Contacts.LargestForce(), 0.1);
            if (Residual <= Math.Max(forceTolerance * force, 1e-9) && Violation <= placeTolerance)
                return SearchEnd.Converged;

            if (Residual <= 0.05 * force && (LastShare >= 0.25 || pass == 0))
                merit += Contacts.UpdateMultipliers(Gradient);

            Iterations++;
            Log?.Invoke($"{pass} merit {merit:g10} res {Residual:e2} viol {Violation:e2} force {force:g4} shift {shift:e1} share {LastShare}");
            if (!Direction(ref shift))
                return SearchEnd.Stalled;

            if (!Advance(ref merit, ref shift))
                return SearchEnd.Stalled;

            _lastShift = Math.Min(shift, 1);
        }

        return SearchEnd.OutOfIterations;
    }

    /// <summary>Looks for equilibrium by a primal-dual interior-point method: every wall is felt from afar, in proportion as the wire comes near,
    /// so that the many walls of a full arch sort themselves out in some twenty iterations.</summary>
    /// <param name="mostIterations">Bound.</param>
    /// <param name="aim">First value of force times gap [N·mm].</param>
    /// <param name="restart">Slacks and forces are set anew.</param>
    /// <param name="loose">Stop early, as in <see cref="SearchNear"/>.</param>
    /// <param name="cancellation">To stop.</param>
    public SearchEnd SearchInside(int mostIterations, double aim, bool restart, bool loose, CancellationToken cancellation)
    {
        Span<double> q = State;
        Contacts.Penalty = ContactNumber;
        Contacts.Interior = aim;
        Contacts.Starting = restart;
        double shift = restart ? BaseShift : _lastShift;
        if (Contacts.Locate(Mesh, q, Frames))
            Contacts.Freeze(Mesh, q, Frames);

        for (int pass = 0; pass < mostIterations; pass++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (!Evaluate(q, out double merit))
            {
                Log?.Invoke($"merit MISSED {Contacts.MissedSlot} {merit} {Residual}");
                return SearchEnd.Missed;
            }

            Contacts.Starting = false;
            double force = Math.Max(Contacts.LargestForce(), 0.1);
            double residual = TrueResidual();
            double enough = Math.Max((loose ? InsideLooseForce : InsideForce) * force, 1e-8);
            if (residual <= enough && Violation <= (loose ? LoosePlace : PlaceTolerance) && Contacts.Interior <= (loose ? LooseAim : LastAim))
            {
                Residual = residual;
                return SearchEnd.Converged;
            }

            if (residual <= 0.05 * force)
                Contacts.UpdateMultipliers(Gradient);

            Iterations++;
            Log?.Invoke($"I {pass} merit {merit:g10} res {residual:e2} viol {Violation:e2} force {force:g4} shift {shift:e1} share {LastShare} aim {Contacts.Interior:e1}");
            if (!Direction(ref shift))
            {
                Log?.Invoke($"merit NODIRECTION {shift}");
                return SearchEnd.Stalled;
            }

            StepInside(ref shift, residual, restart ? AimOfResidual : AimOfResidualAgain, loose ? LooseAim : LastAim);
        }

        return SearchEnd.OutOfIterations;
    }

    private void StepInside(ref double shift, double residual, double aimOfResidual, double leastAim)
    {
        Span<double> q = State;
        Span<double> step = _step.AsSpan(0, q.Length);
        (double slacks, double forces) = Contacts.InteriorStep(step);
        double share = StayWithinReach(Math.Min(slacks, StepLimit(step)));
        for (int i = 0; i < q.Length; i++)
            q[i] += share * step[i];

        double mean = Contacts.TakeInteriorStep(share, Math.Min(forces, share < slacks ? share : 1));
        double aim = Math.Max(leastAim, NextAim(Math.Min(share, forces)) * mean);

        // Never up again: a rise would undo what the last steps settled.
        Contacts.Interior = Math.Min(Contacts.Interior, Math.Max(aim, aimOfResidual * residual));
        bool relax = share > 0.3 || shift > InsideShift;
        shift = relax ? Math.Max(BaseShift, (shift > 1 ? 0.1 : 0.4) * shift) : Math.Min(InsideShift, 10 * shift);
        _lastShift = Math.Min(shift, 1);
        LastShare = share;
        _tracking.Follow(Mesh, Contacts, Rest, Frames, q);
        Contacts.Freeze(Mesh, q, Frames);
    }

    // A step after which the wire would run across a slot, or be strained beyond all reason, is cut.
    private double StayWithinReach(double share)
    {
        Span<double> trial = _trial.AsSpan(0, 8 * Mesh.Nodes);
        double before = RodAssembly.Energy(Mesh, _law, Stretch, State);
        for (int pass = 0; pass < 8; pass++)
        {
            for (int i = 0; i < trial.Length; i++)
                trial[i] = _q[i] + share * _step[i];

            if (Contacts.Locate(Mesh, trial, Frames)
                && RodAssembly.Energy(Mesh, _law, Stretch, trial) <= EnergyGrowth * before + EnergyRoom)
                return share;

            share *= 0.3;
        }

        return share;
    }

    private double TrueResidual()
    {
        Span<double> work = _trial.AsSpan(0, 8 * Mesh.Nodes);
        Gradient.CopyTo(work);
        Contacts.WithInteriorForces(work);
        return Largest(work);
    }

    // Long steps earn a bold fall.
    private static double NextAim(double share) => share > 0.98 ? 0.05 : share > 0.9 ? 0.1 : share > 0.5 ? 0.3 : share > 0.2 ? 0.6 : 1;

    /// <summary>Evaluates gradient, tangent and merit at a state.</summary>
    public bool Evaluate(ReadOnlySpan<double> q, out double merit)
    {
        merit = double.PositiveInfinity;
        if (!Contacts.Locate(Mesh, q, Frames))
            return false;

        Span<double> gradient = Gradient;
        gradient.Clear();
        _tangent.Clear(Mesh.Nodes);
        merit = RodAssembly.Add(Mesh, _law, Stretch, q, gradient, _tangent);
        foreach (DeadLoad load in Loads)
        {
            gradient[8 * load.Node] -= load.Force.X;
            gradient[8 * load.Node + 1] -= load.Force.Y;
            gradient[8 * load.Node + 2] -= load.Force.Z;
            merit -= Vector3.Dot(load.Force, RodAssembly.Position(q, load.Node));
        }

        merit += Contacts.Apply(q, Frames, gradient, _tangent, Mesh);
        Residual = Largest(gradient);
        Violation = Contacts.LargestViolation();
        return double.IsFinite(merit) && double.IsFinite(Residual);
    }

    public static Action<string>? Log { get; set; }
    public double LastShare { get; set; }

    // step = −(K + shift)⁻¹ gradient; the shift is raised until the factor exists.
    private bool Direction(ref double shift)
    {
        while (shift < LargestShift)
        {
            _factor.CopyFrom(_tangent);
            _factor.AddToDiagonal(shift);
            if (_factor.Factor())
            {
                Span<double> step = _step.AsSpan(0, 8 * Mesh.Nodes);
                for (int i = 0; i < step.Length; i++)
                    step[i] = -_gradient[i];

                _factor.Solve(step);
                return true;
            }

            shift = Math.Max(10 * shift, FirstShift);
        }

        return false;
    }

    private bool Advance(ref double merit, ref double shift)
    {
        Span<double> q = State;
        Span<double> trial = _trial.AsSpan(0, q.Length);
        Span<double> step = _step.AsSpan(0, q.Length);
        double slope = Dot(Gradient, step);
        double residual = Residual;
        double limit = StepLimit(step);
        double share = Math.Min(1, limit);
        for (int pass = 0; pass < 14; pass++)
        {
            for (int i = 0; i < q.Length; i++)
                trial[i] = q[i] + share * step[i];

            _tracking.Follow(Mesh, Contacts, Rest, Frames, trial);
            if (Evaluate(trial, out double value) && Accept(Reference(merit), value, share * slope, residual))
            {
                Remember(merit);
                trial.CopyTo(q);
                Contacts.Freeze(Mesh, q, Frames);
                merit = value;
                LastShare = share;
                shift = NextShift(shift, pass == 0 && limit >= 1 ? 1 : share);
                return true;
            }

            _tracking.TakeBack(Mesh, Contacts, Rest);
            share *= pass < 2 ? 0.5 : 0.25;
        }

        // No luck along this direction: come closer to steepest descent and try again, a few times.
        if (shift > 1e4)
            return false;

        shift = Math.Max(100 * shift, 1);
        return Evaluate(q, out merit);
    }

    private bool Accept(double merit, double value, double slope, double residual)
    {
        double noise = 1e-12 * (Math.Abs(merit) + 1);
        return value <= merit + 1e-4 * slope + noise || Residual < 0.3 * residual;
    }

    // A step that had to be cut short went along something floppy: a tail of the wire that stands free between the walls of its slots turns by
    // tenths of a millimetre at no cost, and runs into them. A larger shift holds what has no stiffness of its own, and leaves the rest.
    private static double NextShift(double shift, double share)
    {
        if (share < 0.3)
            return Math.Max(shift * 10, FirstShift);

        return share >= 1 ? Math.Max(BaseShift, shift > 10 ? shift / 10 : 0.4 * shift) : shift;
    }

    // Walls that come into play and let go make the merit function rise for a step or two on the way to the right set of contacts, so a step
    // is held against the worst of the last few, not against the last.
    private double Reference(double merit)
    {
        foreach (double past in _past)
            merit = Math.Max(merit, past);

        return merit;
    }

    private void Remember(double merit)
    {
        _past[_next] = merit;
        _next = (_next + 1) % _past.Length;
    }

    private void Forget()
    {
        Array.Fill(_past, double.NegativeInfinity);
        _next = 0;
    }

    private static double StepLimit(ReadOnlySpan<double> step)
    {
        double move = 0;
        double turn = 0;
        for (int i = 0; i < step.Length; i++)
        {
            double size = Math.Abs(step[i]);
            if (i % 8 < 3)
                move = Math.Max(move, size);
            else
                turn = Math.Max(turn, size);
        }

        return Math.Min(LargestMove / Math.Max(move, 1e-12), LargestSlopeStep / Math.Max(turn, 1e-12));
    }

    private static double Largest(ReadOnlySpan<double> x)
    {
        double largest = 0;
        foreach (double value in x)
        {
            if (!double.IsFinite(value))
                return double.PositiveInfinity;

            largest = Math.Max(largest, Math.Abs(value));
        }

        return largest;
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
            sum += a[i] * b[i];

        return sum;
    }
}
