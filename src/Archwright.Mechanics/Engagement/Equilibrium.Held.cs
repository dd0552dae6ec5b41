namespace Archwright.Mechanics.Engagement;

/// <content>The last steps, with the touched walls known.</content>
/// <remarks>
/// Which walls are touched is held while Newton's method settles the rest, so that the equations are smooth and it
/// converges quadratically. Once the balance is near, the set is looked at after each step: a wall that would have to
/// pull lets go, one that has been run into is taken in (a primal-dual active set: M. Hintermüller, K. Ito, K. Kunisch,
/// SIAM J. Optim. 13 (2002) 865–888, from memory). There is no line search: a set that does not settle soon, or a
/// balance that gets worse, ends it, and the slower searches take over.
/// </remarks>
internal sealed partial class Equilibrium
{
    private const double NearBalance = 0.05;
    private const double Worse = 100;
    private const int MostRevisions = 12;

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
        double shift = HeldShift;
        double first = double.PositiveInfinity;
        int revisions = 0;
        for (int pass = 0; pass <= mostIterations; pass++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (!Evaluate(q, out _))
                return SearchEnd.Missed;

            double force = Math.Max(Contacts.LargestForce(), 0.1);
            first = Math.Min(first, Math.Max(Residual, force));
            if (Residual > Worse * first)
                return SearchEnd.Stalled;

            bool near = Residual <= NearBalance * force;
            bool revised = near && Contacts.ReviseTouched(placeTolerance);
            if (revised && ++revisions > MostRevisions)
                return SearchEnd.Stalled;
            if (revised && !Evaluate(q, out _))
                return SearchEnd.Missed;

            bool settled = Residual <= Math.Max(forceTolerance * force, 1e-9) && Violation <= placeTolerance;
            if (!revised && settled && Rests(force, loose))
                return SearchEnd.Converged;
            if (pass == mostIterations)
                return SearchEnd.OutOfIterations;
            if (near && !revised)
                Contacts.UpdateMultipliers(Gradient);

            Iterations++;
            if (!Direction(ref shift))
                return SearchEnd.Stalled;

            double slide = near ? PlanSlide(force, !loose) : 0;
            StepHeld(slide, follow: NodesFollow && pass < FollowedSteps);
            shift = Math.Max(LastShift, 0.1 * Math.Min(shift, HeldShift));
        }

        return SearchEnd.OutOfIterations;
    }

    private void StepHeld(double slide, bool follow)
    {
        Span<double> q = State;
        Span<double> step = _step.AsSpan(0, q.Length);
        double share = Math.Min(1, StepLimit(step));
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

    // Just enough for tails that stand free.
    private const double HeldShift = 1e-2;
    private const double LastShift = 1e-4;
}
