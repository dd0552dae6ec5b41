using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <content>The wire slides as a whole while it settles.</content>
/// <remarks>
/// A slide δ leaves every node where it is and makes it another point of the wire, δ farther along: only the rest
/// shape under the nodes changes. With b = ∂gradient/∂δ (a difference of gradients), x = −K⁻¹ b the wire's answer
/// and n, ρ the pin's direction and number, the pin's force changes by
/// <code>
///     dF/dδ = ρ n·x
/// </code>
/// so that F = 0 is one more equation of Newton's method, for one more solve with factors that are there already.
/// </remarks>
internal sealed partial class Equilibrium
{
    private const double SlideProbe = 1e-4;

    private readonly RodMesh _probe;
    private readonly double[] _bySlide;
    private readonly double[] _ofWire;
    private double _energyOfWire;
    private double _energyBySlide;

    /// <summary>Who decides how far the wire slides in a step; null where it does not.</summary>
    public Slide? Slide { get; set; }

    /// <summary>Force along the wire that a wire with history follows, as a share of the largest force.</summary>
    public double Felt { get; set; }

    /// <summary>Force along the wire that it follows in no case [N].</summary>
    public double LeastFelt { get; set; } = Unfelt;

    // Adds the wire's answer to a slide to the step, and returns the slide [mm]. The factors and the step are there.
    private double PlanSlide(double largestForce, bool exact, bool settled) =>
        Law.HasHistory ? 0 : PlanSlideNow(largestForce, exact, settled);

    /// <summary>Lets a wire with memory slide, between two searches: with its points its history moves, which a search
    /// must not meet on its way.</summary>
    /// <returns>Whether it slid.</returns>
    public bool SlideBetween()
    {
        double shift = BaseShift;
        double force = Math.Max(Contacts.LargestForce(), 0.1);
        double pin = Contacts.Rows[^1].Effective;
        if (Slide is not { Moves: true } slide || slide.Rests(pin, force) || IsUnfelt(pin, force))
        {
            return false;
        }

        if (!Evaluate(State, out _) || !Direction(ref shift))
            return false;

        Span<double> step = _step.AsSpan(0, 8 * Mesh.Nodes);
        step.Clear();
        double far = PlanSlideNow(force, exact: false, settled: true);
        if (far == 0)
            return false;

        Span<double> q = State;
        for (int i = 0; i < q.Length; i++)
            q[i] += step[i];

        TakeSlide(far);
        return true;
    }

    // Along the arch, a wire that lies in its slots almost passively finds no rest for hundreds of steps, driven to and
    // fro by less than anybody could measure; one with memory may rest at places tenths of a millimetre apart for less
    // than a thousandth of the largest force [N].
    internal const double Unfelt = 1e-4;

    // A wire that follows is moved by what is above the band, and comes to rest just inside its edge. Were it moved to
    // where no force is left, it would jump as the band is passed, and what follows it would go to and fro.
    private const double InsideBand = 0.95;
    private const double WithinBand = 0.9;

    private double Band(double largestForce) => Law.Remembers
        ? Math.Max(LeastFelt, Felt * largestForce)
        : Unfelt;

    private bool IsUnfelt(double force, double largestForce) => Math.Abs(force) <= Band(largestForce);

    /// <summary>What drives the wire along the arch is too little to be felt: it does not slide for small motions
    /// either. At the edge of the band it does.</summary>
    public bool IsHeldAlong => Law.HasHistory
        && Math.Abs(Contacts.Rows[^1].Effective) < WithinBand * Band(Contacts.LargestForce());

    private double PlanSlideNow(double largestForce, bool exact, bool settled)
    {
        if (Slide is not { Moves: true } slide)
            return 0;

        ref readonly ContactRow pin = ref Contacts.Rows[^1];
        (int element, ElementVector along) = Contacts.Derivative(Contacts.RowCount - 1);
        Span<double> step = _step.AsSpan(0, 8 * Mesh.Nodes);
        double force = pin.Effective + Contacts.Penalty * along.Dot(step, element);
        if (slide.IsHeldByNothing(force, largestForce, exact) || IsUnfelt(force, largestForce))
            return 0;

        if (!BySlide(largestForce))
        {
            slide.IsNeutral();
            return 0;
        }

        Span<double> answer = _bySlide.AsSpan(0, 8 * Mesh.Nodes);
        double rate = Contacts.Penalty * along.Dot(answer, element);
        double driving = Law.HasHistory ? force - Math.Sign(force) * InsideBand * Band(largestForce) : force;
        double shift = Contacts.WithinStops(answer, slide.Step(driving, rate, largestForce, exact, settled));
        for (int i = 0; i < step.Length; i++)
            step[i] += shift * answer[i];

        return shift;
    }

    // x = −K⁻¹ ∂gradient/∂δ, the difference to the gradient of the last evaluation; false for a wire that is alike all
    // along: it may be held anywhere.
    private bool BySlide(double largestForce)
    {
        Span<double> answer = _bySlide.AsSpan(0, 8 * Mesh.Nodes);
        Span<double> ahead = _trial.AsSpan(0, 8 * Mesh.Nodes);
        _ofWire.AsSpan(0, 8 * Mesh.Nodes).CopyTo(answer);
        ahead.Clear();
        _probe.BuildSlid(Mesh, Rest, SlideProbe);
        _energyBySlide = (Law.AddGradient(_probe, Tie * Stretch, State, ahead) - _energyOfWire) / SlideProbe;
        Contacts.AddSlidGradient(Mesh, 0, State, Frames, answer);
        Contacts.AddSlidGradient(_probe, SlideProbe, State, Frames, ahead);
        double largest = 0;
        for (int i = 0; i < answer.Length; i++)
        {
            answer[i] = (answer[i] - ahead[i]) / SlideProbe;
            largest = Math.Max(largest, Math.Abs(answer[i]));
        }

        if (largest <= 1e-7 * largestForce && !Contacts.HasFriction)
            return false;

        _energyBySlide += Contacts.AddSlideAnswer(answer);
        _factor.Solve(answer);
        return true;
    }

    /// <summary>Every node keeps its place in space and becomes another point of the wire.</summary>
    /// <param name="shift">[mm]</param>
    public void TakeSlide(double shift)
    {
        if (shift == 0)
            return;

        Mesh.BuildSlid(Mesh, Rest, shift);
        Contacts.Slide(shift);
        Slide!.Take(shift);
    }
}
