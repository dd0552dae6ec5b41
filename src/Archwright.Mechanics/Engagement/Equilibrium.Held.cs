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
    private const double NearBalance = 0.05;
    private const double Worse = 100;

    // Nodes go along with the touching places for so many steps; then they stand, so that the last digits come fast.
    private const int FollowedSteps = 2;

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
        Law.Stiffening = 0;
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

    private SearchEnd SettleHeld(int mostIterations, bool loose, CancellationToken cancellation)
    {
        Span<double> q = State;
        Contacts.Freeze(Mesh, q, Frames);
        double forceTolerance = loose ? LooseForce : ForceTolerance;
        double placeTolerance = loose ? LoosePlace : PlaceTolerance;

        // What ends exactly starts from what has settled loosely.
        double shift = loose ? HeldShift : LastShift;
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
            first = Math.Min(first, Math.Max(Residual, force));
            if (Residual > Worse * first)
                return SearchEnd.Stalled;

            bool near = Residual <= NearBalance * force;
            bool settled = Residual <= Math.Max(forceTolerance * force, 1e-9) && Violation <= placeTolerance;
            if (settled && Contacts.IsConsistent(placeTolerance) && Rests(force, loose))
                return SearchEnd.Converged;
            if (pass == mostIterations)
                return SearchEnd.OutOfIterations;

            Iterations++;
            if (!TryPlan(ref shift, slides: near || pass > 0, force, exact: !loose, out double slide))
                return SearchEnd.Stalled;

            StepHeld(slide, follow: NodesFollow && pass < FollowedSteps);
            shift = NextHeldShift(shift, pass < PatiencePasses || near || Residual < Falls * lastButOne);
            lastButOne = last;
            last = Residual;
        }

        return SearchEnd.OutOfIterations;
    }

    // A step, and the walls that will be touched after it. Where the wire would give way without the walls that let go,
    // it is held a little, and more until it stands.
    private bool TryPlan(ref double shift, bool slides, double force, bool exact, out double slide)
    {
        slide = 0;
        while (shift <= LargestPlannedShift)
        {
            if (!Direction(ref shift))
                return false;

            if (_touching.TryRevise(this, _step.AsSpan(0, 8 * Mesh.Nodes)))
            {
                if (_touching.Changes > 0 && (!Evaluate(State, out _) || !Direction(ref shift)))
                    return false;

                slide = slides ? PlanSlide(force, exact) : 0;
                return true;
            }

            shift = Math.Max(ShiftGrowth * shift, HeldShift);
        }

        return false;
    }

    private void StepHeld(double slide, bool follow)
    {
        Span<double> q = State;
        Span<double> step = _step.AsSpan(0, q.Length);
        double share = Math.Min(1, StepLimit(step));
        Contacts.TakeForces(step, slide, share);
        for (int i = 0; i < q.Length; i++)
            q[i] += share * step[i];

        TakeSlide(share * slide);
        _lastStepShare = share;
        if (follow)
            _tracking.Follow(Mesh, Contacts, Rest, Frames, q);
        else
            Contacts.Locate(Mesh, q, Frames);
        Contacts.Freeze(Mesh, q, Frames);
    }

    // What is added to the diagonal [N/mm]: enough at first that tails that stand free do not swing, next to nothing at
    // last, for they would come to rest slowly; more again where the steps do not settle.
    private static double NextHeldShift(double shift, bool falls) => falls
        ? Math.Max(LastShift, 0.1 * shift)
        : Math.Min(LargestHeldShift, Math.Max(10 * shift, HeldShift));

    private const double HeldShift = 1e-2;
    private const double LastShift = 1e-7;
    private const double LargestHeldShift = 1;
    private const double LargestPlannedShift = 100;
    private const double ShiftGrowth = 30;
    private const int PatiencePasses = 4;
    private const double Falls = 0.3;
}
