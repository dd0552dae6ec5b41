using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Engagement;

/// <content>Corrections of a step with the factors that are there already.</content>
/// <remarks>A step of Newton's method with the walls held leaves an error of second order, most of it stretch of a wire
/// that is thousands of times as stiff along as across. The factors of that step still say well how to mend it, and a
/// gradient and a solution with them cost a quarter of a new tangent and its factors. Each correction lowers the error
/// by the share by which the tangent has changed; one that does not lower it by much is taken back, and the next whole
/// step goes on from there. (Chord method: C. T. Kelley, <i>Iterative Methods for Linear and Nonlinear Equations</i>,
/// SIAM 1995, ch. 5, from memory.)</remarks>
internal sealed partial class Equilibrium
{
    private const int MostCorrections = 6;

    // Farther from balance than this share of the largest force, walls and bends decide, and a correction by old
    // factors does not help.
    private const double WithinCorrection = 0.3;

    // A correction that leaves more than this share of the error: the tangent has changed too much.
    private const double WorthIt = 0.3;

    private readonly double[] _corrected;
    private readonly double[] _multipliers;

    // Whether the wire came into balance. The step has been taken, whole.
    private bool TryCorrect(bool loose)
    {
        Span<double> q = State;
        double before = double.NaN;
        for (int pass = 0;; pass++)
        {
            EvaluateGradient(q);
            double force = Math.Max(Contacts.LargestForce(), 0.1);
            if (loose ? IsRoughlyBalanced(force) : Residual <= Polished * force && IsBalanced(force))
                return true;

            if (pass == 0 && !(Residual <= WithinCorrection * force))
                return false;

            double left = Residual / before;
            if (pass > 0 && !(left <= WorthIt))
            {
                TakeBackCorrection();
                return false;
            }

            // Two more have to be enough; else a whole step is cheaper. To the last digits: where the residual falls by
            // shares, what is soft is farther from its place than it says.
            double enough = (loose ? RoughForce : Polished) * force;
            if (pass == MostCorrections || (pass > 0 && Residual * left * left > enough))
                return false;

            before = Residual;
            if (!TakeCorrection())
            {
                TakeBackCorrection();
                return false;
            }
        }
    }

    // As Evaluate, with the tangent left as it is; the contacts have been located.
    private void EvaluateGradient(ReadOnlySpan<double> q)
    {
        Span<double> gradient = Gradient;
        gradient.Clear();
        Law.AddGradient(Mesh, Tie * Stretch, q, gradient);
        ApplyLoads(q, gradient);
        Contacts.Apply(q, Frames, gradient, tangent: null, Mesh);
        Residual = Largest(gradient);
        Violation = Contacts.LargestViolation();
    }

    // Whether the wire still reaches every slot after it.
    private bool TakeCorrection()
    {
        Span<double> q = State;
        Span<double> step = _step.AsSpan(0, q.Length);
        SolveStep();
        q.CopyTo(_corrected);
        for (int i = 0; i < Contacts.RowCount; i++)
            _multipliers[i] = Contacts.Rows[i].Multiplier;
        Contacts.TakeForces(step, slide: 0, share: 1);
        Spans.AddScaled(q, step, 1);
        return Contacts.LocateAndFreeze(Mesh, q, Frames);
    }

    private void TakeBackCorrection()
    {
        Span<double> q = State;
        _corrected.AsSpan(0, q.Length).CopyTo(q);
        for (int i = 0; i < Contacts.RowCount; i++)
            Contacts.Rows[i].Multiplier = _multipliers[i];
        Contacts.LocateAndFreeze(Mesh, q, Frames);
    }
}
