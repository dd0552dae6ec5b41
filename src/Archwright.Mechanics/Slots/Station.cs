using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;

namespace Archwright.Mechanics.Slots;

/// <summary>Where the wire crosses a plane across a slot: the touching point of a contact there.</summary>
/// <remarks>
/// The plane stands at <see cref="U"/> along the slot's axis e₁. The place s along the wire where it crosses is not
/// fixed: it follows from e₁·(r(s) − centre) = U, so ds = −e₁·δr/(e₁·r′). That is what makes a frictionless contact
/// force normal to the <b>wire</b>, not to the slot.
/// </remarks>
internal struct Station
{
    /// <summary>Index of the slot.</summary>
    public int Slot;

    /// <summary>Place of the plane along the slot's axis, from its centre [mm].</summary>
    public double U;

    /// <summary>Whether the section's turn in the slot is wanted (rectangular wires).</summary>
    public bool NeedsTurn;

    /// <summary>Place of the crossing along the wire [mm]; the start of the next search.</summary>
    public double S;

    /// <summary>Element that holds it.</summary>
    public int Element;

    /// <summary>The wire crosses the plane within its length.</summary>
    public bool Crosses;

    /// <summary>Shape functions there.</summary>
    public Hermite Shape;

    /// <summary>Point, slope and bend of the wire there.</summary>
    public Vector3 R, P, C;

    /// <summary>Rate e₁·r′ at which the wire advances along the slot.</summary>
    public double Advance;

    /// <summary>Turn φ of the section in the slot [rad]: that of the point <see cref="TurnAt"/> of the wire, carried on
    /// to the crossing by <see cref="TurnRate"/>.</summary>
    /// <remarks>A torque that enters at a node makes the twist jump there, so dφ/ds has two values, and φ as a function
    /// of the sliding place a kink. While a step is judged, the point and the rate (the mean of both sides, which is
    /// what does the work when the wire slides past the kink) are held; <see cref="Freeze"/> takes them anew after each
    /// step.</remarks>
    public double Turn;

    /// <summary>Sine and cosine of <see cref="Turn"/>.</summary>
    public double Sin, Cos;

    /// <summary>Point of the wire [mm] and rate [rad/mm] for <see cref="Turn"/>.</summary>
    public double TurnAt, TurnRate;

    /// <summary>∂φ/∂P at <see cref="TurnAt"/>; the derivative by θ is one.</summary>
    public Vector3 TurnByP;

    /// <summary>Slope of the wire and shape functions at <see cref="TurnAt"/>, in the same element as the
    /// crossing.</summary>
    public Vector3 TurnP;
    public Hermite TurnShape;

    /// <summary>Moment of the wire on the section for a unit of work-conjugate to φ: (t + e₁)/(1 + t·e₁).</summary>
    public Vector3 TurnAxis;

    /// <summary>Change of <see cref="Turn"/> when the wire slides under its shape by one: every point in space becomes
    /// the next point of the wire, with the rest frame of that one [rad/mm].</summary>
    public double TurnBySlide;

    /// <summary>Rest frame there.</summary>
    public RestPoint Rest;

    /// <summary>Finds the crossing and evaluates the wire there.</summary>
    /// <param name="mesh">Nodes.</param>
    /// <param name="q">State.</param>
    /// <param name="frame">The slot now.</param>
    /// <param name="turns">The section's turn too; not where <see cref="Freeze"/> follows at once.</param>
    public void Locate(RodMesh mesh, ReadOnlySpan<double> q, in SlotFrame frame, bool turns = true)
    {
        ReadOnlySpan<double> s = mesh.S;
        Crosses = false;
        for (int pass = 0; pass < MostPasses; pass++)
        {
            Element = mesh.Find(S, Element);
            double h = mesh.Length(Element);
            Shape = new Hermite((S - s[Element]) / h, h);
            Vector3 r0 = RodAssembly.Position(q, Element);
            Vector3 r1 = RodAssembly.Position(q, Element + 1);
            Vector3 t0 = RodAssembly.Slope(q, Element);
            Vector3 t1 = RodAssembly.Slope(q, Element + 1);
            R = Shape.Point(r0, t0, r1, t1);
            P = Shape.Slope(r0, t0, r1, t1);
            Advance = Vector3.Dot(frame.Along, P);
            double gap = U - Vector3.Dot(frame.Along, R - frame.Centre);
            if (Math.Abs(gap) < 1e-12)
            {
                C = Shape.Bend(r0, t0, r1, t1);
                Crosses = Advance > LeastAdvance && S >= s[0] && S <= s[^1];
                break;
            }

            // A wire that runs across the slot, or backwards, is far from any answer: go on with a safe slope.
            double step = gap / Math.Max(Advance, 0.2);
            S = Math.Clamp(S + Math.Clamp(step, -3, 3), s[0] - 1, s[^1] + 1);
        }

        if (Crosses && NeedsTurn && turns)
            EvaluateTurn(mesh, q, frame);
    }

    private const int MostPasses = 60;
    private const double LeastAdvance = 0.05;

    /// <summary>Takes the point and the rate of the turn from where the wire crosses now.</summary>
    public void Freeze(RodMesh mesh, ReadOnlySpan<double> q, in SlotFrame frame)
    {
        if (!NeedsTurn || !Crosses)
            return;

        TurnAt = S;
        TurnRate = AverageTurnRate(mesh, q, frame);
        EvaluateTurn(mesh, q, frame);
    }

    /// <summary>The station as it is once the wire has slid under its shape.</summary>
    /// <param name="slid">The mesh with the wire slid.</param>
    /// <param name="shift">How far [mm].</param>
    /// <param name="q">State.</param>
    /// <param name="frame">The slot now.</param>
    public readonly Station Slid(RodMesh slid, double shift, ReadOnlySpan<double> q, in SlotFrame frame)
    {
        Station at = this;
        at.S += shift;
        at.TurnAt += shift;
        at.TurnRate = at.AverageTurnRate(slid, q, frame);
        at.EvaluateTurn(slid, q, frame);
        return at;
    }

    // φ = θ + the difference of two smallest rotations, from the rest tangent and from the slot's axis to the tangent.
    private void EvaluateTurn(RodMesh mesh, ReadOnlySpan<double> q, in SlotFrame frame)
    {
        double h = mesh.Length(Element);
        double start = mesh.S[Element];
        double at = Math.Clamp(TurnAt, start, start + h);
        TurnShape = new Hermite((at - start) / h, h);
        Rest = mesh.RestAt(Element, (at - start) / h);
        TurnP = TurnShape.Slope(
            RodAssembly.Position(q, Element), RodAssembly.Slope(q, Element),
            RodAssembly.Position(q, Element + 1), RodAssembly.Slope(q, Element + 1));
        double l = TurnP.Length;
        Vector3 t = TurnP / l;
        double theta = NodalState.Turn(q, Element, TurnShape);

        // Section's directors: carried from the rest frame, then turned.
        double c0 = 1 + Vector3.Dot(t, Rest.D1);
        Vector3 n = t + Rest.D1;
        Vector3 u = Rest.D2 - n * (Vector3.Dot(Rest.D2, t) / c0);
        Vector3 w = Rest.D3 - n * (Vector3.Dot(Rest.D3, t) / c0);
        (double sin, double cos) = Math.SinCos(theta);
        Vector3 d2 = u * cos + w * sin;
        Vector3 d3 = w * cos - u * sin;
        Vector3 e1 = frame.Along;
        Vector3 e2 = frame.Outward;
        Vector3 e3 = frame.Third;
        double there = Math.Atan2(
            Vector3.Dot(d2, e3) - Vector3.Dot(d3, e2), Vector3.Dot(d2, e2) + Vector3.Dot(d3, e3));
        Turn = there + TurnRate * (S - at);
        (Sin, Cos) = Math.SinCos(Turn);
        TurnAxis = (t + e1) / (1 + Vector3.Dot(t, e1));
        TurnBySlide = SpinBySlide(Rest, t);
        TurnByP = (CarriedSpin(t, Rest.D1, Rest.D2, Rest.D3) - CarriedSpin(t, e1, e2, e3)) / l;
    }

    // A rest frame that turns by ω carries the section along by ω·(t + d₁)/(1 + t·d₁) about t, as the slot's axis does;
    // along the rest shape ω = τ d₁ + d₁ × d₁′.
    private static double SpinBySlide(in RestPoint rest, Vector3 t)
    {
        Vector3 bending = rest.D2 * rest.OverThickness + rest.D3 * rest.OverWidth;
        return rest.Stretch * (rest.Twist + Vector3.Dot(bending, t) / (1 + Vector3.Dot(t, rest.D1)));
    }

    // The mean of both sides where the crossing sits on a node.
    private readonly double AverageTurnRate(RodMesh mesh, ReadOnlySpan<double> q, in SlotFrame frame)
    {
        double h = mesh.Length(Element);
        double u = (S - mesh.S[Element]) / h;
        double here = RateIn(mesh, q, frame, Element, u);
        if (u < NodeShare && Element > 0)
            return (here + RateIn(mesh, q, frame, Element - 1, 1)) / 2;
        if (u > 1 - NodeShare && Element < mesh.Elements - 1)
            return (here + RateIn(mesh, q, frame, Element + 1, 0)) / 2;

        return here;
    }

    // dφ/ds = τ + (e₁ × t)·t′/(1 + t·e₁), τ the twist of the wire.
    private static double RateIn(RodMesh mesh, ReadOnlySpan<double> q, in SlotFrame frame, int element, double u)
    {
        double h = mesh.Length(element);
        var shape = new Hermite(u, h);
        Vector3 r0 = RodAssembly.Position(q, element);
        Vector3 r1 = RodAssembly.Position(q, element + 1);
        Vector3 t0 = RodAssembly.Slope(q, element);
        Vector3 t1 = RodAssembly.Slope(q, element + 1);
        Vector3 p = shape.Slope(r0, t0, r1, t1);
        Vector3 c = shape.Bend(r0, t0, r1, t1);
        double theta = NodalState.Turn(q, element, shape);
        double thetaRate = shape.C0 * q[8 * element + 6] + shape.Cm * q[8 * element + 7] + shape.C1 * q[8 * element
            + 14];
        RestPoint rest = mesh.RestAt(element, u);
        double twist = PointKernel.StrainOf(rest, p, c, theta, thetaRate).Twist + rest.Twist;
        double l = p.Length;
        Vector3 t = p / l;
        Vector3 tRate = (c - t * Vector3.Dot(t, c)) / l;
        return twist + Vector3.Dot(Vector3.Cross(frame.Along, t), tRate) / (1 + Vector3.Dot(t, frame.Along));
    }

    // This near to a node, as a share of the element, a contact counts as sitting on it.
    private const double NodeShare = 0.05;

    /// <summary>(b e₂ − a e₃), a and b the stereographic coordinates of t in the frame: minus the spin about t of the
    /// smallest rotation e₁ → t, by t.</summary>
    private static Vector3 CarriedSpin(Vector3 t, Vector3 e1, Vector3 e2, Vector3 e3)
    {
        double m = 1 / (1 + Vector3.Dot(t, e1));
        return e2 * (m * Vector3.Dot(t, e3)) - e3 * (m * Vector3.Dot(t, e2));
    }

    /// <summary>∂²φ/∂P∂P, row-major 3 × 3, symmetric.</summary>
    /// <param name="frame">The slot now.</param>
    /// <param name="h">Length 9, overwritten.</param>
    public readonly void TurnByPByP(in SlotFrame frame, Span<double> h)
    {
        h.Clear();
        double l = TurnP.Length;
        AddSpinDerivative(TurnP, l, Rest.D1, Rest.D2, Rest.D3, 1 / l, h);
        AddSpinDerivative(TurnP, l, frame.Along, frame.Outward, frame.Third, -1 / l, h);
        Span<double> by = [TurnByP.X, TurnByP.Y, TurnByP.Z];
        Span<double> t = [TurnP.X / l, TurnP.Y / l, TurnP.Z / l];
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
                h[3 * i + j] -= by[i] * t[j] / l;
        }

        // The two carried spins are not gradients by themselves, their difference is: what is left of asymmetry is
        // rounding.
        for (int i = 0; i < 3; i++)
        {
            for (int j = i + 1; j < 3; j++)
                h[3 * i + j] = h[3 * j + i] = (h[3 * i + j] + h[3 * j + i]) / 2;
        }
    }

    // ∇(b e₂ − a e₃) with ∇a = m(e₂ − a n), ∇b = m(e₃ − b n), m = 1/(l + P·e₁), n = t + e₁.
    private static void AddSpinDerivative(Vector3 p, double l, Vector3 e1, Vector3 e2, Vector3 e3, double scale,
        Span<double> h)
    {
        double m = 1 / (l + Vector3.Dot(p, e1));
        Vector3 n = p / l + e1;
        Vector3 da = (e2 - n * (m * Vector3.Dot(p, e2))) * m;
        Vector3 db = (e3 - n * (m * Vector3.Dot(p, e3))) * m;
        Span<double> a = [da.X, da.Y, da.Z];
        Span<double> b = [db.X, db.Y, db.Z];
        Span<double> two = [e2.X, e2.Y, e2.Z];
        Span<double> three = [e3.X, e3.Y, e3.Z];
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
                h[3 * i + j] += scale * (two[i] * b[j] - three[i] * a[j]);
        }
    }
}
