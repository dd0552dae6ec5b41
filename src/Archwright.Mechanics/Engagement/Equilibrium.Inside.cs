using Archwright.Mechanics.Rods;

namespace Archwright.Mechanics.Engagement;

/// <content>The interior-point search, from afar.</content>
internal sealed partial class Equilibrium
{
    private const double EnergyGrowth = 3;
    private const double EnergyRoom = 20;

    // A step of this share of the longest one that is allowed is too short to go astray.
    private const double NearbyShare = 0.05;
    private const double AimOfResidual = 1e-4;
    private const double AimOfResidualAgain = 1e-5;
    private const double InsideShift = 0.1;

    // What has no stiffness of its own, as a tail of the wire that stands free, is held by this much [N/mm] while the
    // rest settles.
    private const double LeastInsideShift = 1e-4;
    private const double LooseAim = 1e-4;
    private const double LastAim = 1e-8;
    private const double SortedForce = 0.3;
    private const double SortedPlace = 1e-3;
    private const double InsideForce = 5e-8;

    /// <summary>Looks for equilibrium by a primal-dual interior-point method: every wall is felt from afar, in
    /// proportion as the wire comes near, so that the many walls of a full arch sort themselves out in some twenty
    /// iterations.</summary>
    /// <param name="mostIterations">Bound.</param>
    /// <param name="aim">First value of force times gap [N·mm].</param>
    /// <param name="restart">Slacks and forces are set anew.</param>
    /// <param name="loose">Stop early, as in <see cref="SearchNear"/>.</param>
    /// <param name="cancellation">To stop.</param>
    public SearchEnd SearchInside(int mostIterations, double aim, bool restart, bool loose,
        CancellationToken cancellation)
    {
        Span<double> q = State;
        Contacts.Penalty = SearchNumber;
        Contacts.Interior = aim;
        Contacts.Starting = restart;
        double shift = Math.Max(restart ? BaseShift : _lastShift, LeastInsideShift);
        if (Contacts.Locate(Mesh, q, Frames))
            Contacts.Freeze(Mesh, q, Frames);

        double before = double.PositiveInfinity;
        Law.Stiffening = 0;
        for (int pass = 0; pass < mostIterations; pass++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (!Evaluate(q, out _))
                return SearchEnd.Missed;

            Contacts.Starting = false;
            double force = Math.Max(Contacts.LargestForce(), 0.1);
            double residual = TrueResidual();
            if (Law.Remembers)
                Stiffen(residual, ref before);
            if (loose ? IsSorted(residual, force) : IsEnough(residual, force, pass) && Rests(force, loose: false))
            {
                Residual = residual;
                return SearchEnd.Converged;
            }

            if (residual <= 0.05 * force)
                Contacts.UpdateMultipliers(Gradient);

            Iterations++;
            if (!Direction(ref shift))
                return SearchEnd.Stalled;

            bool settling = !restart || (pass > 2 && _lastStepShare > 0.3);
            double slide = settling ? PlanSlide(force, exact: !loose, settled: false) : 0;
            StepInside(ref shift, slide, residual, restart ? AimOfResidual : AimOfResidualAgain,
                loose ? LooseAim : LastAim);
        }

        return SearchEnd.OutOfIterations;
    }

    // The walls have sorted themselves out: which of them are touched is found faster with the walls held from here on.
    private bool IsSorted(double residual, double force) =>
        residual <= SortedForce * force && Violation <= SortedPlace;

    // The bounds widen where the last digits come slowly (tails of the wire that stand nearly free), and again where
    // they hardly come at all: what was reached is in the result.
    private bool IsEnough(double residual, double force, int pass)
    {
        double wider = pass < 6 ? 1 : pass < 60 ? 20 : 100;
        return residual <= Math.Max(InsideForce * force, 5e-9) * wider && Violation <= PlaceTolerance * wider
            && Contacts.Interior <= LastAim;
    }

    private void StepInside(ref double shift, double slide, double residual, double aimOfResidual, double leastAim)
    {
        Span<double> q = State;
        Span<double> step = _step.AsSpan(0, q.Length);
        (double slacks, double forces) = Contacts.InteriorStep(step, slide);
        double share = StayWithinReach(Math.Min(slacks, StepLimit(step)));
        Tension.Foresee(Mesh, q, step, share);
        for (int i = 0; i < q.Length; i++)
            q[i] += share * step[i];

        TakeSlide(share * slide);
        double mean = Contacts.TakeInteriorStep(share, Math.Min(forces, share < slacks ? share : 1));
        double aim = Math.Max(leastAim, NextAim(Math.Min(share, forces)) * mean);

        // Never up again: a rise would undo what the last steps settled.
        Contacts.Interior = Math.Min(Contacts.Interior, Math.Max(aim, aimOfResidual * residual));
        bool relax = share > 0.3 || shift > InsideShift;
        shift = relax ? Math.Max(LeastInsideShift, (shift > 1 ? 0.1 : 0.4) * shift) : Math.Min(InsideShift, 10 * shift);
        _lastShift = Math.Min(shift, 1);
        _lastStepShare = share;
        if (NodesFollow)
            _tracking.Follow(Mesh, Contacts, Rest, Frames, q);
        Contacts.Freeze(Mesh, q, Frames);
    }

    // A step after which the wire would run across a slot, or be strained beyond all reason, is cut.
    private double StayWithinReach(double share)
    {
        Span<double> trial = _trial.AsSpan(0, 8 * Mesh.Nodes);
        if (share < NearbyShare * StepLimit(_step.AsSpan(0, 8 * Mesh.Nodes)))
            return share;

        double before = _energyOfWire;
        for (int pass = 0; pass < 8; pass++)
        {
            for (int i = 0; i < trial.Length; i++)
                trial[i] = _q[i] + share * _step[i];

            if (Contacts.Reaches(Mesh, trial, Frames)
                && Law.Energy(Mesh, Tie * Stretch, trial) <= EnergyGrowth * before + EnergyRoom)
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
    private static double NextAim(double share) => share > 0.98 ? 0.05 : share > 0.9 ? 0.1 : share > 0.5 ? 0.3
        : share > 0.2 ? 0.6 : 1;
}
