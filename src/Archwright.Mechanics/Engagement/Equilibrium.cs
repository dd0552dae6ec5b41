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
/// Newton's method on energy plus the augmented Lagrangian of the contacts, with a line search on that same merit
/// function. Where the tangent is not positive definite, a share of its diagonal is added until it is, so that every
/// step goes down. Multipliers follow after steps that leave the gradient small; then one iteration lowers both the
/// gradient (quadratically) and the violation (by the ratio of the wire's own stiffness to ρ). Everything is allocated
/// once; an iteration allocates nothing.
/// </remarks>
internal sealed partial class Equilibrium
{
    private const double BaseShift = 1e-4;
    private const double FirstShift = 1e-3;
    private const double LargestShift = 1e7;
    private const double LargestSlopeStep = 0.5;
    private const double LargestMove = 3;
    private const double LoosePlace = 3e-6;

    // Stiffness of a clamped span of 3.4 mm, the usual gap between two slots, against a shift of its end: 12/l³
    // [1/mm³].
    private const double ByBending = 0.3;

    private readonly double[] _q;
    private readonly double[] _trial;
    private readonly double[] _gradient;
    private readonly double[] _step;
    private readonly BlockTridiagonal _tangent;
    private readonly BlockTridiagonal _tangentOfWire;
    private readonly BlockTridiagonal _factor;
    private readonly NodeTracking _tracking;
    private readonly TouchingSet _touching;
    private readonly double[] _unrestrained;
    private double _meritOfWire;
    private double _lastStepShare;
    private double _lastShift = BaseShift;

    public Equilibrium(int mostNodes, int mostStations, int mostRows, int mostSlots, RodLaw law, Room? room = null)
    {
        Mesh = new RodMesh(mostNodes, room);
        Contacts = new ContactSet(mostStations, mostRows, room);
        Frames = new SlotFrame[mostSlots];
        _q = Room.TakeCleared<double>(room, 8 * mostNodes);
        _trial = Room.TakeCleared<double>(room, 8 * mostNodes);
        _gradient = Room.TakeCleared<double>(room, 8 * mostNodes);
        _step = Room.TakeCleared<double>(room, 8 * mostNodes);
        _tangent = new BlockTridiagonal(mostNodes, room);
        _tangentOfWire = new BlockTridiagonal(mostNodes, room);
        _unrestrained = Room.TakeCleared<double>(room, 8 * mostNodes);
        _factor = new BlockTridiagonal(mostNodes, room);
        _tracking = new NodeTracking(mostStations);
        _touching = new TouchingSet(mostRows, mostNodes, room);
        _probe = new RodMesh(mostNodes, room);
        _corrected = Room.Take<double>(room, 8 * mostNodes);
        _multipliers = Room.Take<double>(room, mostRows);
        _bySlide = Room.TakeCleared<double>(room, 8 * mostNodes);
        _ofWire = Room.TakeCleared<double>(room, 8 * mostNodes);
        Law = law;
        law.Initial.Respond(0, default, out _, out SectionTangent stiff);
        Contacts.TouchedStiffness = ByBending * Math.Max(stiff.TT, stiff.WW);
        Tension = new Tension(mostNodes, room);
    }

    public RodMesh Mesh { get; }

    /// <summary>Forces along the wire that the tangent goes by.</summary>
    public Tension Tension { get; }

    /// <summary>Rest shape.</summary>
    public required RestCurve Rest { get; init; }

    public ContactSet Contacts { get; }

    /// <summary>Slots as they stand now.</summary>
    public SlotFrame[] Frames { get; }

    /// <summary>Initial EA [N].</summary>
    public double Stretch => Law.Stretch;

    /// <summary>γ of the tie of the nodal slopes.</summary>
    public double Tie { get; set; } = RodAssembly.FineTie;

    /// <summary>Nodes follow the touching places.</summary>
    public bool NodesFollow { get; set; } = true;

    /// <summary>Loads that do not follow (bench problems).</summary>
    public DeadLoad[] Loads { get; set; } = [];

    /// <summary>State, 8 a node.</summary>
    public Span<double> State => _q.AsSpan(0, 8 * Mesh.Nodes);

    /// <summary>How the wire answers.</summary>
    public RodLaw Law { get; }

    /// <summary>Newton iterations since the workspace was made.</summary>
    public int Iterations { get; private set; }

    /// <summary>Largest out-of-balance force of the last evaluation [N, N·mm].</summary>
    public double Residual { get; private set; }

    /// <summary>Largest violation of a restraint at the last evaluation [mm].</summary>
    public double Violation { get; private set; }

    /// <summary>The number ρ with the touched walls held [N/mm].</summary>
    public double ContactNumber { get; set; } = Engagement.ContactNumber.Usual;

    // While the set of touched walls is being looked for.
    private double SearchNumber => Law.Remembers ? ContactNumber * Engagement.ContactNumber.WithMemory : ContactNumber;

    /// <summary>Residual that counts as equilibrium: this share of the largest contact force, and never less than 1e-9
    /// N.</summary>
    public double ForceTolerance { get; set; } = 1e-7;

    /// <summary>Violation that counts as fulfilled [mm].</summary>
    public double PlaceTolerance { get; set; } = 2e-8;

    /// <summary>The tangent and its factors at the last converged state (for condensing).</summary>
    public BlockTridiagonal Factor => _factor;

    public BlockTridiagonal Tangent => _tangent;

    public Span<double> Gradient => _gradient.AsSpan(0, 8 * Mesh.Nodes);

    /// <summary>How the last search went: what was added to the diagonal, and the share of its last step. The next one
    /// starts from there.</summary>
    public (double Shift, double Share) Pace
    {
        get => (_lastShift, _lastStepShare);
        set => (_lastShift, _lastStepShare) = value;
    }

    /// <summary>Says again how well an earlier state, put back, was in balance.</summary>
    public void Stand(double residual) => Residual = residual;

    /// <summary>Evaluates gradient, tangent and merit at a state.</summary>
    public bool Evaluate(ReadOnlySpan<double> q, out double merit)
    {
        merit = double.PositiveInfinity;
        if (!Contacts.Locate(Mesh, q, Frames))
            return false;

        Span<double> gradient = Gradient;
        gradient.Clear();
        _tangent.Clear(Mesh.Nodes);
        merit = Law.Add(Mesh, Tie * Stretch, q, gradient, _tangent, Tension);
        _energyOfWire = merit;
        gradient.CopyTo(_ofWire);
        merit -= ApplyLoads(q, gradient);

        if (KeepsWire)
        {
            _meritOfWire = merit;
            gradient.CopyTo(_unrestrained);
            _tangentOfWire.CopyFrom(_tangent);
        }

        return ApplyContacts(q, ref merit);
    }

    // Returns their work [N·mm].
    private double ApplyLoads(ReadOnlySpan<double> q, Span<double> gradient)
    {
        double work = 0;
        foreach (DeadLoad load in Loads)
        {
            gradient[8 * load.Node] -= load.Force.X;
            gradient[8 * load.Node + 1] -= load.Force.Y;
            gradient[8 * load.Node + 2] -= load.Force.Z;
            work += Vector3.Dot(load.Force, RodAssembly.Position(q, load.Node));
        }

        return work;
    }

    // Other walls may be held at the same state: only while a set of walls is held. A wire with memory may be taken as
    // stiffer by then.
    private bool KeepsWire => Contacts.HoldsSet && !Law.Remembers;

    // The same state once other walls are held: what the wire itself does stays, where it was kept.
    private bool EvaluateAgain(ReadOnlySpan<double> q)
    {
        if (!KeepsWire)
            return Evaluate(q, out _);

        double merit = _meritOfWire;
        _unrestrained.AsSpan(0, q.Length).CopyTo(Gradient);
        _tangent.CopyFrom(_tangentOfWire);
        return ApplyContacts(q, ref merit);
    }

    private bool ApplyContacts(ReadOnlySpan<double> q, ref double merit)
    {
        merit += Contacts.Apply(q, Frames, Gradient, _tangent, Mesh);
        Residual = Largest(Gradient);
        Violation = Contacts.LargestViolation();
        return double.IsFinite(merit) && double.IsFinite(Residual);
    }

    // step = −(K + shift)⁻¹ gradient; the shift is raised until the factor exists.
    private bool Direction(ref double shift)
    {
        while (shift < LargestShift)
        {
            if (TryDirection(shift))
                return true;

            shift = Math.Max(10 * shift, FirstShift);
        }

        return false;
    }

    private bool TryDirection(double shift)
    {
        _factor.CopyFrom(_tangent);
        _factor.AddToDiagonal(shift);
        if (!_factor.Factor())
            return false;

        SolveStep();
        return true;
    }

    // step = −F⁻¹ gradient, F what was factored last.
    private void SolveStep()
    {
        Span<double> step = _step.AsSpan(0, 8 * Mesh.Nodes);
        for (int i = 0; i < step.Length; i++)
            step[i] = -_gradient[i];

        _factor.Solve(step);
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
}
