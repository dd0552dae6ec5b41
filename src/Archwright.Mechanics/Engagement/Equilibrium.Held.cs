using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Engagement;

/// <content>The last steps, with the touched walls known.</content>
/// <remarks>
/// Each pass is a step of Newton's method with the touched walls held, so that the equations are smooth; before it is
/// taken, <see cref="TouchingSet"/> says which walls will be touched after it, and those are held. So every step solves
/// the problem with the wire linear and the walls exact (sequential quadratic programming; J. Nocedal, S. J. Wright,
/// <i>Numerical Optimization</i>, 2nd ed., 2006, ch. 18, from memory), and close to the answer it converges
/// quadratically. There is no line search: a balance that gets worse, or does not come soon, ends it, and the slower
/// search takes over.
/// </remarks>
internal sealed partial class Equilibrium
{
    private double _shortShift;
    private const double NearBalance = 0.05;
    private const double Worse = 100;

    // Nodes go along with the touching places for so many steps while the shape is far from settled; then they stand,
    // so that the last digits come fast, but for moves [mm] that hardly disturb them.
    private const int FollowedSteps = 2;
    private const double NearMove = 1e-5;

    /// <summary>Settles the rest with the touched walls held as they are (see <c>ContactSet.HoldTouched</c>).</summary>
    /// <param name="mostIterations">Bound.</param>
    /// <param name="loose">Stop early, as in <see cref="SearchNear"/>.</param>
    /// <param name="cancellation">To stop.</param>
    public SearchEnd SearchHeld(int mostIterations, bool loose, CancellationToken cancellation)
    {
        Span<double> q = State;
        Contacts.Penalty = ContactNumber;
        Contacts.Interior = 0;
        Contacts.HoldsSet = true;
        Law.Stiffening = !loose || !Law.Remembers ? 0 : Law.HasHistory ? 1 : FirstStiffening;
        try
        {
            return Contacts.Locate(Mesh, q, Frames)
                ? SettleHeld(mostIterations, loose, cancellation)
                : SearchEnd.Missed;
        }
        finally
        {
            Contacts.HoldsSet = false;
        }
    }

    /// <summary>Evaluates and factors the tangent where the wire lies.</summary>
    /// <returns>False where the wire does not stand by itself.</returns>
    public bool TryFactorHere()
    {
        if (!Evaluate(State, out _))
            return false;

        _factor.CopyFrom(_tangent);
        _factor.AddToDiagonal(HereShift);
        return _factor.Factor();
    }

    /// <summary>Revises the touched walls for a step of the wire in slots that give way.</summary>
    /// <returns>Whether others are held now.</returns>
    public bool TryReviseTouched(ReadOnlySpan<double> step, GivingWire giving) =>
        _touching.TryRevise(this, step, giving) && _touching.Changes > 0;

    private SearchEnd SettleHeld(int mostIterations, bool loose, CancellationToken cancellation)
    {
        Span<double> q = State;
        Contacts.Freeze(Mesh, q, Frames);
        double shift = HeldShift;
        bool isPolished = false;
        bool slid = false;
        if (loose)
            _shortShift = 0;
        double last = double.PositiveInfinity;
        double lastButOne = double.PositiveInfinity;
        double first = double.PositiveInfinity;
        double before = double.PositiveInfinity;
        for (int pass = 0; pass <= mostIterations; pass++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (!Evaluate(q, out _))
                return SearchEnd.Missed;

            double force = Math.Max(Contacts.LargestForce(), 0.1);
            if (Law.Remembers)
                Stiffen(Residual, ref before);
            first = slid ? Math.Max(Residual, force) : Math.Min(first, Math.Max(Residual, force));
            if (Residual > Worse * first)
                return SearchEnd.Stalled;

            bool near = Residual <= NearBalance * force;
            _isNear = near;
            if (loose ? IsRoughlyBalanced(force) : IsBalanced(force) && !WantsPolish(force, last, ref isPolished))
                return SearchEnd.Converged;
            if (pass == mostIterations)
                return isPolished && IsBalanced(force) ? SearchEnd.Converged : SearchEnd.OutOfIterations;

            // Close to the answer nothing has to be held any more.
            if (pass == 0 && near)
                shift = LeastHeldShift;

            Iterations++;
            if (!TryPlan(ref shift, slides: near || pass > 0, force, exact: !loose, out double slide))
                return SearchEnd.Stalled;

            slid = slide != 0;
            shift = NextHeldShift(shift, pass < PatiencePasses || near || Residual < Falls * lastButOne);
            lastButOne = last;
            last = Residual;
            if (TryStepHeld(slide, pass < FollowedSteps ? FarthestFollowed(near) : 0, loose))
                return SearchEnd.Converged;
        }

        return SearchEnd.OutOfIterations;
    }

    private bool IsRoughlyBalanced(double force) => Residual <= RoughForce * force && Violation <= RoughPlace;

    private bool IsBalanced(double force) =>
        Residual <= Math.Max(ForceTolerance * force, 1e-9) && Violation <= PlaceTolerance
        && Contacts.IsConsistent(PlaceTolerance) && Rests(force, loose: false);

    // One step more where the balance still falls fast: it costs little, and leaves nothing but rounding.
    private bool WantsPolish(double force, double last, ref bool isPolished)
    {
        bool wants = !isPolished && Residual > Polished * force && Residual < Falls * last;
        isPolished = true;
        return wants;
    }

    // A step, and the walls that will be touched after it. Where the wire would give way without the walls that let go,
    // it is held a little, and more until it stands.
    private bool TryPlan(ref double shift, bool slides, double force, bool exact, out double slide)
    {
        slide = 0;
        while (shift <= LargestPlannedShift)
        {
            if (!HeldDirection(ref shift))
                return false;

            if (_touching.TryRevise(this, _step.AsSpan(0, 8 * Mesh.Nodes)))
            {
                if (_touching.Changes > 0 && (!EvaluateAgain(State) || !HeldDirection(ref shift)))
                    return false;

                slide = slides ? PlanSlide(force, exact, settled: true) : 0;
                return true;
            }

            shift = Math.Max(ShiftGrowth * shift, HeldShift);
        }

        return false;
    }

    // Where the wire has no stiffness of its own in some direction (it floats between the walls of all its slots), the
    // least that makes it stand is found once, and kept.
    private bool HeldDirection(ref double shift)
    {
        while (!TryDirection(shift))
        {
            if (_isNear)
                _shortShift = shift;
            shift *= 10;
            if (shift > LargestShift)
                return false;
        }

        if (shift > LastShift && _isNear)
            Refine();
        return true;
    }

    // What the shift holds back is asked again: without it each step would leave a share of what is soft.
    private void Refine()
    {
        Span<double> step = _step.AsSpan(0, 8 * Mesh.Nodes);
        Span<double> left = _bySlide.AsSpan(0, step.Length);
        for (int pass = 0; pass < Refinements; pass++)
        {
            _tangent.Multiply(step, left);
            for (int i = 0; i < left.Length; i++)
                left[i] = -_gradient[i] - left[i];
            _factor.Solve(left);
            Spans.AddScaled(step, left, 1);
        }
    }

    private const int Refinements = 2;
    private bool _isNear;

    private double FarthestFollowed(bool near) => !NodesFollow ? 0
        : !near ? double.PositiveInfinity
        : Law.Remembers || Contacts.HasFriction ? 0 : NearMove;

    // Whether the step, with what corrections of it bring, ends in balance.
    private bool TryStepHeld(double slide, double farthestFollowed, bool loose)
    {
        Span<double> q = State;
        Span<double> step = _step.AsSpan(0, q.Length);
        double share = Math.Min(1, StepLimit(step));
        Contacts.TakeForces(step, slide, share);
        Tension.Foresee(Mesh, q, step, share);
        for (int i = 0; i < q.Length; i++)
            q[i] += share * step[i];

        TakeSlide(share * slide);
        _lastStepShare = share;
        bool reaches = Contacts.LocateAndFreeze(Mesh, q, Frames);
        if (share == 1 && reaches && TryCorrect(loose))
            return true;
        if (farthestFollowed > 0)
        {
            _tracking.Follow(Mesh, Contacts, Rest, Frames, q, farthestFollowed);
            Contacts.Freeze(Mesh, q, Frames);
        }

        return false;
    }

    // What is added to the diagonal [N/mm]: enough at first that tails that stand free do not swing, next to nothing at
    // last, for they would come to rest slowly; more again where the steps do not settle.
    private double NextHeldShift(double shift, bool falls) => falls
        ? Math.Max(LeastHeldShift, 0.1 * shift)
        : Math.Min(LargestHeldShift, Math.Max(10 * shift, HeldShift));

    private double LeastHeldShift => Math.Max(LastShift, 10 * _shortShift);

    // A new wire comes from where it rests elastic, and has to give way; one with a history turns back.
    private const double FirstStiffening = 0.3;
    private const double HereShift = 1e-6;
    private const double Polished = 1e-9;
    private const double RoughForce = 0.02;
    private const double RoughPlace = 1e-4;
    private const double HeldShift = 1e-2;
    private const double LastShift = 1e-7;
    private const double LargestHeldShift = 1;
    private const double LargestPlannedShift = 100;
    private const double ShiftGrowth = 30;
    private const int PatiencePasses = 4;
    private const double Falls = 0.3;
}
