using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Engagement;

/// <content>Newton's method on energy and augmented Lagrangian, from near by.</content>
internal sealed partial class Equilibrium
{
    private const double LooseForce = 3e-4;

    private readonly double[] _past = new double[4];
    private int _next;

    /// <summary>Looks for equilibrium near the present state, with the walls that are touched known but for a few:
    /// Newton's method on energy and augmented Lagrangian.</summary>
    /// <param name="mostIterations">Bound.</param>
    /// <param name="loose">Stop early: good enough to see where nodes have to go and whether the wire slides.</param>
    /// <param name="cancellation">To stop.</param>
    public SearchEnd SearchNear(int mostIterations, bool loose, CancellationToken cancellation)
    {
        Span<double> q = State;
        if (Contacts.Locate(Mesh, q, Frames))
            Contacts.Freeze(Mesh, q, Frames);
        Contacts.Penalty = SearchNumber;
        Contacts.Interior = 0;
        if (!Evaluate(q, out double merit))
            return SearchEnd.Missed;

        Law.Stiffening = 0;
        double forceTolerance = loose ? LooseForce : ForceTolerance;
        double placeTolerance = loose ? LoosePlace : PlaceTolerance;
        double shift = _lastShift;
        Forget();
        for (int pass = 0; pass < mostIterations; pass++)
        {
            cancellation.ThrowIfCancellationRequested();
            double force = Math.Max(Contacts.LargestForce(), 0.1);
            bool balanced = Residual <= Math.Max(forceTolerance * force, 1e-9) && Violation <= placeTolerance;
            if (balanced && Rests(force, loose))
                return SearchEnd.Converged;

            if (Residual <= 0.05 * force && (_lastStepShare >= 0.25 || pass == 0))
                merit += Contacts.UpdateMultipliers(Gradient);

            Iterations++;
            if (!Direction(ref shift))
                return SearchEnd.Stalled;

            double slide = Residual <= 0.05 * force ? PlanSlide(force, exact: !loose, settled: true) : 0;
            if (!Advance(ref merit, ref shift, slide))
                return SearchEnd.Stalled;

            _lastShift = Math.Min(shift, 1);
        }

        return SearchEnd.OutOfIterations;
    }

    private bool Rests(double force, bool loose)
    {
        if (Slide is not { Moves: true } slide || Law.HasHistory)
            return true;

        double pin = Contacts.Rows[^1].Effective;
        return IsUnfelt(pin, force) || (loose ? slide.Rests(pin, force) : Engagement.Slide.IsGone(pin, force));
    }

    private bool Advance(ref double merit, ref double shift, double slide)
    {
        Span<double> q = State;
        Span<double> trial = _trial.AsSpan(0, q.Length);
        Span<double> step = _step.AsSpan(0, q.Length);
        double slope = Spans.Dot(Gradient, step) + slide * _energyBySlide;
        double residual = Residual;
        double limit = StepLimit(step);
        double share = Math.Min(1, limit);
        for (int pass = 0; pass < 14; pass++)
        {
            for (int i = 0; i < q.Length; i++)
                trial[i] = q[i] + share * step[i];

            TakeSlide(share * slide);
            if (NodesFollow)
                _tracking.Follow(Mesh, Contacts, Rest, Frames, trial);
            if (Evaluate(trial, out double value) && Accept(Reference(merit), value, share * slope, residual))
            {
                Remember(merit);
                Tension.Forget();
                trial.CopyTo(q);
                Contacts.Freeze(Mesh, q, Frames);
                merit = value;
                _lastStepShare = share;
                double taken = pass == 0 && limit >= 1 ? 1 : share;
                shift = Law.Remembers ? NextStiffening(shift, taken) : NextShift(shift, taken);
                return true;
            }

            if (NodesFollow)
                _tracking.TakeBack(Mesh, Contacts, Rest);
            TakeSlide(-share * slide);
            share *= pass < 2 ? 0.5 : 0.25;
        }

        // No luck along this direction: come closer to steepest descent and try again, a few times.
        if (shift > 1e4)
            return false;

        if (Law.Remembers && Law.Stiffening < 1)
            Law.Stiffening = 1;
        else
            shift = Math.Max(100 * shift, 1);

        return Evaluate(q, out merit);
    }

    private bool Accept(double merit, double value, double slope, double residual)
    {
        double noise = 1e-12 * (Math.Abs(merit) + 1);
        return value <= merit + 1e-4 * slope + noise || (!Law.Remembers && Residual < 0.3 * residual);
    }

    // A step that had to be cut short went along something floppy: a tail of the wire that stands free between the
    // walls of its slots turns by tenths of a millimetre at no cost, and runs into them. A larger shift holds what has
    // no stiffness of its own, and leaves the rest.
    private static double NextShift(double shift, double share)
    {
        if (share < 0.3)
            return Math.Max(shift * 10, FirstShift);

        return share >= 1 ? Math.Max(BaseShift, shift > 10 ? shift / 10 : 0.4 * shift) : shift;
    }

    // Walls that come into play and let go make the merit function rise for a step or two on the way to the right set
    // of contacts, so a step is held against the worst of the last few, not against the last.
    private double Reference(double merit)
    {
        if (Law.Remembers)
            return merit;

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
}
